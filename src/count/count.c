#include "count/count.h"

#include <string.h>

#include "count/counting.h"

const char *count_row_what(struct arena *arena, const struct count_row *row,
                           const struct words *words)
{
	const char *key = arena_printf(arena, "count.what.%s", count_kind_name(row->kind));
	return words_fill(arena, words, key, {"size", row->size != NULL ? row->size : ""});
}

const char *count_row_where(const struct count_row *row, const struct words *words)
{
	return row->is_total ? words_find(words, "count.total") : row->where;
}

/* ---- totals ---- */

static bool is_before(const struct count_row *rows, size_t index)
{
	for (size_t i = 0; i < index; i++)
		if (strcmp(rows[i].what, rows[index].what) == 0)
			return true;
	return false;
}

/* How a row came about, and what that rests on: [R-Q25]. */
static const char *with_source(struct counting *c, const struct count_row *row)
{
	const char *source = count_kind_source(row->kind);
	if (strcmp(source, COUNT_COMMON_PRACTICE) == 0)
		source = words_find(c->words, "count.common-practice");
	return *source != '\0' ? arena_printf(c->arena, "%s [%s]", row->how, source) : row->how;
}

/* The rows of `what`, then their sum: the row that counts for all of the floor. */
static void move_group(struct counting *c, const char *what, struct count *count)
{
	struct count_row sum = {0};
	double scale = 1;
	for (size_t i = 0; i < c->rows.count; i++) {
		const struct count_row *row = &c->rows.items[i];
		if (strcmp(row->what, what) != 0)
			continue;
		count->rows[count->row_count] = *row;
		count->rows[count->row_count++].how = with_source(c, row);
		double amount = sum.amount + row->amount;
		int64_t cents = sum.cents + row->cents;
		bool is_priced = (sum.what == NULL || sum.is_priced) && row->is_priced;
		bool same_rate = sum.what == NULL || strcmp(sum.rate, row->rate) == 0;
		sum = *row;
		sum.amount = amount;
		sum.cents = cents;
		sum.is_priced = is_priced;
		if (!same_rate)
			sum.rate = "";
	}
	if (sum.is_total || sum.is_alone)
		return;
	for (int i = 0; i < sum.decimals; i++)
		scale *= 10;
	sum.amount = round(sum.amount * scale) / scale;
	sum.where = "total";
	sum.how = words_find(c->words, "count.how.total");
	sum.is_total = true;
	count->rows[count->row_count++] = sum;
}

static struct count *in_order(struct counting *c)
{
	const struct plan_rates *rates = c->placed->site->plan->rates;
	struct count *count = ARENA_NEW(c->arena, struct count);
	count->currency = rates != NULL ? rates->currency : NULL;
	count->rows = ARENA_ARRAY(c->arena, struct count_row, 2 * c->rows.count);
	for (int kind = 0; kind < COUNT_KIND_COUNT; kind++)
		for (size_t i = 0; i < c->rows.count; i++)
			if ((int)c->rows.items[i].kind == kind && !is_before(c->rows.items, i))
				move_group(c, c->rows.items[i].what, count);
	return count;
}

const struct count *count_in_units(struct arena *arena, const struct placed *placed,
                                   const struct words *words, bool inches)
{
	struct counting c = {arena, placed, words, .inches = inches};
	count_tile(&c);
	count_membrane(&c);
	count_setting(&c);
	count_joints(&c);
	count_time(&c);
	count_prices(&c);
	return in_order(&c);
}

const struct count *count_from_placed(struct arena *arena, const struct placed *placed,
                                      const struct words *words)
{
	return count_in_units(arena, placed, words, placed->site->inches);
}

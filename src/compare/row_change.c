#include "compare/row_change.h"

#include <math.h>
#include <string.h>

const struct count_row *row_change_row(const struct row_change *change)
{
	return change->after != NULL ? change->after : change->before;
}

/* ---- which rows count ---- */

static bool is_alternative(enum count_kind kind)
{
	return count_kind_scheme(kind) != COUNT_AS_DRAWN || kind == COUNT_SEALANT_SAUSAGE;
}

static bool is_money(enum count_kind kind)
{
	return kind == COUNT_PRICE_MATERIAL || kind == COUNT_PRICE_LABOUR ||
	       kind == COUNT_PRICE_MARKUP || kind == COUNT_PRICE_TOTAL;
}

/* A sum of rows that stand beside it. */
static bool is_sum(const struct count *count, const struct count_row *row)
{
	if (!row->is_total)
		return false;
	for (size_t i = 0; i < count->row_count; i++)
		if (!count->rows[i].is_total && strcmp(count->rows[i].what, row->what) == 0)
			return true;
	return false;
}

static bool is_quantity(const struct count *count, const struct count_row *row)
{
	return !is_alternative(row->kind) && !is_money(row->kind) && row->kind != COUNT_WAIT_DAYS &&
	       !is_sum(count, row);
}

static bool is_sum_of_money(const struct count *count, const struct count_row *row)
{
	return is_money(row->kind) && !is_sum(count, row);
}

static bool is_days(const struct count *count, const struct count_row *row)
{
	(void)count;
	return row->kind == COUNT_WAIT_DAYS;
}

/* ---- which rows belong together ---- */

static bool is_same(const struct count_row *a, const struct count_row *b)
{
	return a->kind == b->kind && strcmp(a->what, b->what) == 0 &&
	       strcmp(a->where, b->where) == 0 && strcmp(a->unit, b->unit) == 0 &&
	       a->is_total == b->is_total;
}

/* Of rows alike the n-th belongs to the n-th. */
static size_t place_among(const struct count *count, size_t index)
{
	size_t place = 0;
	for (size_t i = 0; i < index; i++)
		place += is_same(&count->rows[i], &count->rows[index]);
	return place;
}

static const struct count_row *fellow(const struct count *count, const struct count *other,
                                      size_t index)
{
	size_t place = place_among(count, index);
	for (size_t i = 0; i < other->row_count; i++)
		if (is_same(&other->rows[i], &count->rows[index]) && place-- == 0)
			return &other->rows[i];
	return NULL;
}

/* ---- differences ---- */

static bool is_one_currency(const struct count *a, const struct count *b)
{
	return a->currency != NULL && b->currency != NULL && strcmp(a->currency, b->currency) == 0;
}

static double amount_of(const struct count_row *row)
{
	return row != NULL ? row->amount : 0;
}

static double difference(double before, double after, int decimals)
{
	double scale = 1;
	for (int i = 0; i < decimals; i++)
		scale *= 10;
	return (double)(llround(after * scale) - llround(before * scale)) / scale;
}

static bool has_price(const struct count_row *row)
{
	return row == NULL || row->is_priced;
}

static struct row_change change_of(const struct count_row *before, const struct count_row *after,
                                   bool is_one)
{
	const struct count_row *row = after != NULL ? after : before;
	struct row_change change = {
		.before = before,
		.after = after,
		.amount_before = amount_of(before),
		.amount_after = amount_of(after),
		.decimals = row != NULL ? row->decimals : 0,
		.is_priced = is_one && row != NULL && has_price(before) && has_price(after),
	};
	change.amount_more = difference(change.amount_before, change.amount_after, change.decimals);
	if (change.is_priced) {
		change.cents_before = before != NULL ? before->cents : 0;
		change.cents_after = after != NULL ? after->cents : 0;
	}
	return change;
}

static bool is_priced(const struct count_row *row)
{
	return row != NULL && row->is_priced;
}

/* A price that came or went is a difference too. */
static bool differs(const struct row_change *change)
{
	bool both = change->before != NULL && change->after != NULL;
	return change->amount_more < 0 || change->amount_more > 0 ||
	       change->cents_before != change->cents_after ||
	       (both && is_priced(change->before) != is_priced(change->after));
}

/* Hours without a rate: what they cost is not known, and is not nothing. */
static bool is_unknown(const struct count *count, const struct count_row *other)
{
	for (size_t i = 0; other->kind == COUNT_PRICE_LABOUR && i < count->row_count; i++)
		if (count->rows[i].kind == COUNT_LABOUR && !count->rows[i].is_priced)
			return true;
	return false;
}

static bool has_total(const struct count *count)
{
	for (size_t i = 0; i < count->row_count; i++)
		if (count->rows[i].kind == COUNT_PRICE_TOTAL)
			return true;
	return false;
}

typedef bool row_filter(const struct count *, const struct count_row *);

/* Rows in the order of the later count; what is gone stands with its kind. */
static struct row_changes find(struct arena *arena, const struct count *before,
                               const struct count *after, row_filter *is_wanted)
{
	bool is_one = is_one_currency(before, after);
	struct row_changes changes = {0};
	for (int kind = 0; kind < COUNT_KIND_COUNT; kind++) {
		for (size_t i = 0; i < before->row_count; i++) {
			const struct count_row *row = &before->rows[i];
			if ((int)row->kind == kind && is_wanted(before, row) &&
			    fellow(before, after, i) == NULL)
				*array_push(arena, &changes.list) =
					change_of(row, NULL, is_one && !is_unknown(after, row));
		}
		for (size_t i = 0; i < after->row_count; i++) {
			const struct count_row *row = &after->rows[i];
			if ((int)row->kind != kind || !is_wanted(after, row))
				continue;
			const struct count_row *was = fellow(after, before, i);
			bool known = was != NULL || !is_unknown(before, row);
			*array_push(arena, &changes.list) = change_of(was, row, is_one && known);
		}
	}
	return changes;
}

struct row_changes row_changes_find(struct arena *arena, const struct count *before,
                                    const struct count *after)
{
	struct row_changes all = find(arena, before, after, is_quantity), some = {0};
	for (size_t i = 0; i < all.list.count; i++)
		if (differs(&all.list.items[i]))
			*array_push(arena, &some.list) = all.list.items[i];
	return some;
}

struct row_changes row_changes_money(struct arena *arena, const struct count *before,
                                     const struct count *after)
{
	struct row_changes none = {0};
	bool both = is_one_currency(before, after) && has_total(before) && has_total(after);
	return both ? find(arena, before, after, is_sum_of_money) : none;
}

struct row_change row_changes_days(struct arena *arena, const struct count *before,
                                   const struct count *after)
{
	struct row_changes days = find(arena, before, after, is_days);
	return days.list.count > 0 ? days.list.items[0] : (struct row_change){0};
}

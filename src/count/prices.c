/* prices.c - prices of the rows, hours of labour, markups and sums.
 * A row without a rate keeps its quantity and has no price. */
#include <math.h>
#include <string.h>

#include "count/counting.h"
#include "count/rates.h"
#include "units/number.h"

struct pricing {
	struct counting *c;
	const struct plan_rates *rates;
};

/* Tile is bought by what is in its boxes; hours go by what is laid. */
static bool has_price(enum count_kind kind)
{
	return kind != COUNT_TILE_LAID;
}

static bool takes_hours(enum count_kind kind)
{
	return kind != COUNT_TILE_AREA && kind != COUNT_LABOUR;
}

static bool is_labour(enum count_kind kind)
{
	return kind == COUNT_LABOUR || kind == COUNT_FULL_LABOUR || kind == COUNT_PARTIAL_LABOUR;
}

static void price_row(struct pricing *p, struct count_row *row)
{
	struct arena *arena = p->c->arena;
	struct decimal_factor factor;
	const struct plan_rate *rate = rates_find(p->rates, row, &factor);
	if (rate == NULL || !has_price(row->kind))
		return;
	const char *per = rates_per_unit(rate->per);
	row->rate = decimal_rate(arena, rate->each);
	if (strcmp(per, row->unit) != 0)
		row->rate = arena_printf(arena, "%s/%s", row->rate, per);
	row->cents = decimal_price(row->amount, row->decimals, factor, rate->each);
	row->is_priced = true;
}

/* ---- labour ---- */

/* Hours that go with the row at `index`; the array may move. */
static void add_labour(struct pricing *p, size_t index)
{
	static const enum count_kind kinds[COUNT_SCHEMES] = {
		[COUNT_AS_DRAWN] = COUNT_LABOUR,
		[COUNT_FULL_INSTEAD] = COUNT_FULL_LABOUR,
		[COUNT_STRIPS_INSTEAD] = COUNT_PARTIAL_LABOUR,
	};
	struct counting *c = p->c;
	struct count_row row = c->rows.items[index];
	struct decimal_factor factor;
	const struct plan_rate *rate = rates_find(p->rates, &row, &factor);
	if (rate == NULL || isnan(rate->hours) || rate->hours <= 0 || row.amount <= 0 ||
	    !takes_hours(row.kind))
		return;
	double amount = row.amount * (double)factor.num / (double)factor.den;
	struct count_row *hours = counting_hours(c, kinds[count_kind_scheme(row.kind)], row.where,
	                                         amount * rate->hours);
	struct strbuf each = strbuf_in(c->arena);
	number_add_short(&each, rate->hours, 6);
	const char *unit = arena_printf(c->arena, "unit.%s", rates_per_unit(rate->per));
	hours->of = row.element;
	hours->labour_of = row.kind;
	counting_how(c, hours, {"hours", each.text}, {"unit", words_find(c->words, unit)},
	             {"what", count_row_what(c->arena, &row, c->words)},
	             {"amount", number_text(c->arena, row.amount, row.decimals)},
	             {"of", words_find(c->words, arena_printf(c->arena, "unit.%s", row.unit))});
}

/* ---- sums ---- */

/* One row for all of the floor that is a sum of money. */
static struct count_row *add_money(struct pricing *p, enum count_kind kind, int64_t cents)
{
	struct count_row *row = counting_number(p->c, kind, "total", 1);
	row->unit = "sum";
	row->is_total = true;
	row->is_priced = true;
	row->cents = cents;
	return row;
}

/* Of all rows of one sort; without a price where none of them has one. */
struct price_sum {
	int64_t cents;
	bool is_priced;
};

static struct price_sum sum_of(const struct pricing *p, bool labour)
{
	struct price_sum sum = {0};
	for (size_t i = 0; i < p->c->rows.count; i++) {
		const struct count_row *row = &p->c->rows.items[i];
		if (!row->is_priced || is_labour(row->kind) != labour ||
		    count_kind_scheme(row->kind) != COUNT_AS_DRAWN)
			continue;
		sum.cents += row->cents;
		sum.is_priced = true;
	}
	return sum;
}

static struct price_sum both(struct price_sum a, struct price_sum b)
{
	return (struct price_sum){a.cents + b.cents, a.is_priced || b.is_priced};
}

/* Nothing is added to what has no price. */
static int64_t add_markup(struct pricing *p, const struct plan_markup *markup,
                          struct price_sum material, struct price_sum labour)
{
	static const char *const keys[] = {[PLAN_MARKUP_MATERIAL] = "count.base.material",
	                                   [PLAN_MARKUP_LABOUR] = "count.base.labour",
	                                   [PLAN_MARKUP_ALL] = "count.base.all"};
	struct counting *c = p->c;
	struct price_sum base = markup->of == PLAN_MARKUP_MATERIAL ? material
	                        : markup->of == PLAN_MARKUP_LABOUR ? labour
	                                                           : both(material, labour);
	if (!base.is_priced)
		return 0;
	struct count_row *row =
		add_money(p, COUNT_PRICE_MARKUP, decimal_share(base.cents, markup->share));
	row->where = markup->name;
	row->is_total = false;
	counting_how(c, row, {"name", markup->name},
	             {"share", counting_percent(c, share_value(markup->share))},
	             {"base", words_find(c->words, keys[markup->of])});
	return row->cents;
}

/* ---- what has no rate ---- */

/* What a row is priced as; strips are membrane. False: it is no row of the work, or is never
 * priced. */
static bool find_word(const struct count_row *row, enum plan_rate_word *out_word)
{
	struct rate_words words = rates_words(row->kind);
	if (words.count == 0 || count_kind_scheme(row->kind) != COUNT_AS_DRAWN)
		return false;
	*out_word = words.words[0] == PLAN_RATE_STRIP ? PLAN_RATE_MEMBRANE : words.words[0];
	return true;
}

static bool is_of(const struct count_row *row, enum plan_rate_word word, const char *element)
{
	enum plan_rate_word own;
	if (!find_word(row, &own) || own != word)
		return false;
	return row->element == NULL || element == NULL ? row->element == element
	                                               : strcmp(row->element, element) == 0;
}

/* Of rows of one word and element the first, where none of them has a price. */
static bool is_first_unpriced(const struct pricing *p, size_t index, enum plan_rate_word word)
{
	const struct count_row *rows = p->c->rows.items;
	const char *element = rows[index].element;
	for (size_t i = 0; i < p->c->rows.count; i++)
		if (is_of(&rows[i], word, element) && (i < index || rows[i].is_priced))
			return false;
	return is_of(&rows[index], word, element) && !rows[index].is_priced;
}

/* Words, and ids of materials, by commas. */
static const char *missing(const struct pricing *p)
{
	struct strbuf list = strbuf_in(p->c->arena);
	for (int word = PLAN_RATE_TILE; word <= PLAN_RATE_LABOUR; word++)
		for (size_t i = 0; i < p->c->rows.count; i++) {
			const char *element = p->c->rows.items[i].element;
			if (!is_first_unpriced(p, i, (enum plan_rate_word)word))
				continue;
			strbuf_printf(&list, "%s%s%s%s", list.length > 0 ? ", " : "",
			              rates_word((enum plan_rate_word)word),
			              element != NULL ? " " : "", element != NULL ? element : "");
		}
	return list.text;
}

static void add_sums(struct pricing *p)
{
	struct counting *c = p->c;
	struct price_sum material = sum_of(p, false), labour = sum_of(p, true);
	struct price_sum all = both(material, labour);
	if (!all.is_priced)
		return;
	if (material.is_priced)
		add_money(p, COUNT_PRICE_MATERIAL, material.cents);
	if (labour.is_priced)
		add_money(p, COUNT_PRICE_LABOUR, labour.cents);
	for (size_t i = 0; i < p->rates->markup_count; i++)
		all.cents += add_markup(p, &p->rates->markups[i], material, labour);
	const char *lacking = missing(p);
	struct count_row *row = add_money(p, COUNT_PRICE_TOTAL, all.cents);
	if (lacking != NULL && *lacking != '\0')
		counting_how(c, row, {"missing", lacking});
	else
		row->how = words_find(c->words, "count.how.price-total-whole");
}

/* ---- what is drawn against what might be laid instead ---- */

static bool is_membrane(enum count_kind kind)
{
	return kind == COUNT_STRIP || kind == COUNT_STRIP_PENDING || kind == COUNT_STRIP_LENGTH ||
	       kind == COUNT_MEMBRANE_FULL || kind == COUNT_MEMBRANE_PAIL ||
	       kind == COUNT_MEMBRANE_ROLL;
}

/* Of one membrane and the labour on it. */
struct membrane_price {
	int64_t cents;
	bool is_there, is_priced;
	const char *who; /* approves it */
};

static struct membrane_price price_of(const struct pricing *p, const char *membrane,
                                      enum count_scheme scheme)
{
	struct membrane_price price = {0};
	for (size_t i = 0; i < p->c->rows.count; i++) {
		const struct count_row *row = &p->c->rows.items[i];
		bool hours = is_labour(row->kind);
		enum count_kind kind = hours ? row->labour_of : row->kind;
		const char *of = hours ? row->of : row->element;
		if (of == NULL || strcmp(of, membrane) != 0 || count_kind_scheme(kind) != scheme ||
		    (scheme == COUNT_AS_DRAWN && !is_membrane(kind)))
			continue;
		price.is_there = true;
		price.is_priced = price.is_priced || (row->is_priced && !hours);
		price.cents += row->cents;
		if (row->who != NULL)
			price.who = row->who;
	}
	return price;
}

static void add_difference(struct pricing *p, const char *membrane, enum count_scheme scheme,
                           enum count_kind kind)
{
	struct membrane_price drawn = price_of(p, membrane, COUNT_AS_DRAWN),
			      other = price_of(p, membrane, scheme);
	/* Where nothing of it is drawn, or would be, that costs nothing. */
	if ((drawn.is_there && !drawn.is_priced) || (other.is_there && !other.is_priced) ||
	    (!drawn.is_priced && !other.is_priced))
		return;
	struct count_row *row = add_money(p, kind, other.cents - drawn.cents);
	row->where = membrane;
	row->is_total = false;
	row->is_alone = true;
	counting_how(p->c, row, {"other", decimal_text(p->c->arena, other.cents)},
	             {"drawn", decimal_text(p->c->arena, drawn.cents)}, {"who", other.who});
}

static bool is_offered(const struct pricing *p, const char *membrane, enum count_scheme scheme)
{
	return price_of(p, membrane, scheme).is_there;
}

static void add_differences(struct pricing *p)
{
	const struct plan *plan = p->c->placed->site->plan;
	for (size_t i = 0; i < plan->membrane_count; i++) {
		const char *id = plan->membranes[i].id;
		if (is_offered(p, id, COUNT_FULL_INSTEAD))
			add_difference(p, id, COUNT_FULL_INSTEAD, COUNT_PRICE_FULL);
		else if (is_offered(p, id, COUNT_STRIPS_INSTEAD))
			add_difference(p, id, COUNT_STRIPS_INSTEAD, COUNT_PRICE_PARTIAL);
	}
}

void count_prices(struct counting *c)
{
	struct pricing p = {.c = c, .rates = c->placed->site->plan->rates};
	size_t counted = c->rows.count;
	if (p.rates == NULL)
		return;
	for (size_t i = 0; i < counted; i++)
		add_labour(&p, i);
	for (size_t i = 0; i < c->rows.count; i++)
		price_row(&p, &c->rows.items[i]);
	add_sums(&p);
	add_differences(&p);
}

/* Money: exact products, rates by element and by word, hours, markups, what is missing. */
#include <math.h>
#include <string.h>

#include "count/count_cells.h"
#include "count/decimal.h"
#include "count/rates.h"
#include "support/floor.h"
#include "support/program.h"
#include "support/tables.h"

/* Worked by hand. 0.29 as a double is a little under; so is 1.005. */
static void products_are_exact_and_rounded_once(void **state)
{
	(void)state;
	const struct decimal_factor same = {1, 1};
	assert_int_equal(decimal_price(0.29, 2, same, (struct money){100, 0}), 2900);
	assert_int_equal(decimal_price(397.29, 2, same, (struct money){675, 2}), 268171);
	assert_int_equal(decimal_price(3, 0, same, (struct money){335, 3}), 101);
	assert_int_equal(decimal_price(1, 0, same, (struct money){1005, 3}), 101);
	assert_int_equal(decimal_price(1, 0, same, (struct money){1004999, 6}), 100);
	assert_int_equal(decimal_price(100, 2, (struct decimal_factor){3048, 10000},
	                               (struct money){3, 0}),
	                 9144);
	assert_int_equal(decimal_price(1, 2, (struct decimal_factor){100000000, 9290304},
	                               (struct money){1, 0}),
	                 1076);
	assert_int_equal(decimal_price(1e6, 2, same, (struct money){999999999, 0}),
	                 99999999900000000);
	assert_int_equal(decimal_share(602558, (struct share){1, 8}), 75320);
	assert_int_equal(decimal_share(-5, (struct share){1, 2}), -3);
}

static void money_is_written_as_it_is(void **state)
{
	(void)state;
	assert_string_equal(decimal_text(tables.arena, 123450), "1234.50");
	assert_string_equal(decimal_text(tables.arena, 7), "0.07");
	assert_string_equal(decimal_text(tables.arena, -150), "-1.50");
	assert_string_equal(decimal_rate(tables.arena, (struct money){1205, 2}), "12.05");
	assert_string_equal(decimal_rate(tables.arena, (struct money){7, 0}), "7");
	assert_string_equal(decimal_rate(tables.arena, (struct money){4, 3}), "0.004");
}

static const struct count_row *row_of(const struct count *count, const char *what,
                                      const char *where)
{
	const struct count_row *row = tables_row(count, what, where);
	if (row == NULL)
		fail_msg("no row %s, %s", what, where);
	return row;
}

static struct plan_rate rate_of(enum plan_rate_word word, int64_t cents, enum plan_per per)
{
	return (struct plan_rate){.of.word = word, .each = {cents, 2}, .per = per, .hours = NAN};
}

static const struct count *count_with(struct floor *f, struct plan_rates *rates)
{
	rates->currency = "EUR";
	f->plan.rates = rates;
	return count_from_placed(tables.arena, &f->placed, tables.en);
}

static void rows_go_by_their_rates(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	struct plan_rate list[] = {rate_of(PLAN_RATE_SEALANT, 450, PLAN_PER_M),
	                           rate_of(PLAN_RATE_STRIP, 1000, PLAN_PER_M2),
	                           rate_of(PLAN_RATE_MEMBRANE, 900, PLAN_PER_M2)};
	struct plan_rates rates = {.rates = list, .rate_count = 3};
	const struct count *count = count_with(f, &rates);
	assert_string_equal(count->currency, "EUR");
	assert_string_equal(row_of(count, "joint-soft", "hall K1.left")->rate, "4.50");
	assert_int_equal(row_of(count, "joint-soft", "hall K1.left")->cents,
	                 1346); /* 2.99 m: 13.455 */
	assert_int_equal(row_of(count, "joint-soft", "total")->cents, 2692);
	assert_int_equal(row_of(count, "membrane-strip", "hall K1.strip")->cents, 1350);
	/* A quantity without a rate has no price, and is named. */
	assert_false(row_of(count, "mortar", "total")->is_priced);
	const struct count_row *unpriced = row_of(count, "mortar", "total");
	assert_string_equal(count_cells_of(tables.arena, unpriced).texts[COUNT_IN_PRICE], "");
	assert_non_null(strstr(row_of(count, "price-total", "total")->how, "mortar"));
	assert_null(strstr(row_of(count, "price-total", "total")->how, "sealant"));
	/* 2692 and 540 for the perimeter (1.2 m) and 1350. */
	assert_int_equal(row_of(count, "price-material", "total")->cents, 2692 + 540 + 1350);
	/* 12 m2 of ground at 9 a m2, less the strip. */
	assert_int_equal(row_of(count, "full-membrane", "total")->cents, 10800);
	assert_int_equal(row_of(count, "price-full", "M1")->cents, 10800 - 1350);
}

static void a_rate_of_an_element_comes_first(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	struct plan_rate list[] = {rate_of(PLAN_RATE_STRIP, 1000, PLAN_PER_M2),
	                           rate_of(PLAN_RATE_TILE, 2000, PLAN_PER_SQFT)};
	list[1].of.element = (struct plan_ref){.kind = PLAN_REF_MEMBRANE, .id = "M1"};
	struct plan_rates rates = {.rates = list, .rate_count = 2};
	const struct count_row *row =
		row_of(count_with(f, &rates), "membrane-strip", "hall K1.strip");
	/* 1.35 m2 are 14.53128 sq ft. */
	assert_string_equal(row->rate, "20.00/sqft");
	assert_int_equal(row->cents, 29063);
}

static void hours_and_markups_are_added(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	struct plan_rate list[] = {rate_of(PLAN_RATE_STRIP, 1000, PLAN_PER_M2),
	                           rate_of(PLAN_RATE_LABOUR, 4000, PLAN_PER_HOUR)};
	list[0].hours = 0.5;
	struct plan_markup markups[] = {
		{.of = PLAN_MARKUP_MATERIAL, .share = {1, 10}, .name = "Delivery"},
		{.of = PLAN_MARKUP_LABOUR, .share = {1, 4}, .name = "Site"},
		{.of = PLAN_MARKUP_ALL, .share = {1, 8}, .name = "Overheads"}};
	struct plan_rates rates = {.rates = list,
	                           .rate_count = 2,
	                           .markups = markups,
	                           .markup_count = 3};
	const struct count *count = count_with(f, &rates);
	/* 1.35 m2 at half an hour: 0.68 h at 40.00. */
	assert_near(row_of(count, "labour", "hall K1.strip")->amount, 0.68, 1e-12);
	assert_int_equal(row_of(count, "price-labour", "total")->cents, 2720);
	assert_int_equal(row_of(count, "price-markup", "Delivery")->cents, 135);
	assert_int_equal(row_of(count, "price-markup", "Site")->cents, 680);
	assert_int_equal(row_of(count, "price-markup", "Overheads")->cents, 509); /* 508.75 */
	assert_int_equal(row_of(count, "price-total", "total")->cents,
	                 1350 + 2720 + 135 + 680 + 509);
}

static void without_rates_nothing_has_a_price(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	const struct count *count = count_from_placed(tables.arena, &f->placed, tables.en);
	assert_null(count->currency);
	for (size_t i = 0; i < count->row_count; i++) {
		assert_false(count->rows[i].is_priced);
		assert_string_equal(count->rows[i].rate, "");
	}
}

/* Hours without a rate of labour, and rates that serve nothing: no price, never zero. */
static void what_has_no_rate_costs_not_nothing(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	struct plan_rate list[] = {rate_of(PLAN_RATE_STRIP, 1000, PLAN_PER_M2)};
	list[0].hours = 0.5;
	struct plan_markup markups[] = {
		{.of = PLAN_MARKUP_LABOUR, .share = {1, 4}, .name = "Site"}};
	struct plan_rates rates = {.rates = list,
	                           .rate_count = 1,
	                           .markups = markups,
	                           .markup_count = 1};
	const struct count *count = count_with(f, &rates);
	assert_near(row_of(count, "labour", "total")->amount, 0.68, 1e-12);
	assert_false(row_of(count, "labour", "total")->is_priced);
	assert_null(tables_row(count, "price-labour", "total"));
	assert_null(tables_row(count, "price-markup", "Site"));
	assert_int_equal(row_of(count, "price-total", "total")->cents, 1350);
	assert_non_null(strstr(row_of(count, "price-total", "total")->how, "labour"));
	assert_non_null(strstr(row_of(count, "price-total", "total")->how, "tile T1"));
	assert_null(strstr(row_of(count, "price-total", "total")->how, "membrane"));
	list[0] = rate_of(PLAN_RATE_STRIP, 1000, PLAN_PER_BAG);
	count = count_with(f, &rates);
	assert_null(tables_row(count, "price-total", "total"));
	assert_null(tables_row(count, "price-material", "total"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(products_are_exact_and_rounded_once),
		cmocka_unit_test(money_is_written_as_it_is),
		cmocka_unit_test(rows_go_by_their_rates),
		cmocka_unit_test(a_rate_of_an_element_comes_first),
		cmocka_unit_test(hours_and_markups_are_added),
		cmocka_unit_test(what_has_no_rate_costs_not_nothing),
		cmocka_unit_test(without_rates_nothing_has_a_price),
	};
	return cmocka_run_group_tests(tests, tables_start, tables_end);
}

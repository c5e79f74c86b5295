/* The count of a floor built by hand: sums, units, and its three forms. */
#include <math.h>
#include <string.h>

#include "count/count.h"
#include "support/floor.h"
#include "support/program.h"
#include "support/tables.h"

static double amount(const struct count *count, const char *what, const char *where)
{
	const struct count_row *row = tables_row(count, what, where);
	if (row == NULL)
		fail_msg("no row %s, %s", what, where);
	return row->amount;
}

static void tile_and_membrane_and_joints(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	f->cracks.hold_count = 1;
	const struct count *count = count_from_placed(tables.arena, &f->placed, tables.en);
	assert_near(amount(count, "field", "hall"), 11.92, 1e-12);
	assert_near(amount(count, "tile-whole", "hall"), 190, 0);
	assert_near(amount(count, "tile-cut", "hall"), 2, 0);
	assert_near(amount(count, "tile-whole-held", "hall K1.hold"), 10, 0);
	assert_near(amount(count, "tile-cut-held", "hall K1.hold"), 1, 0);
	assert_near(amount(count, "membrane-strip", "hall K1.strip"), 1.35, 1e-12);
	assert_near(amount(count, "joint-soft", "hall K1.left"), 2.99, 1e-12);
	assert_near(amount(count, "joint-soft", "total"), 5.98, 1e-12);
	assert_near(amount(count, "joint-perimeter", "total"), 1.2, 1e-12);
	assert_null(tables_row(count, "joint-carried", "total"));
	assert_string_equal(tables_row(count, "joint-soft", "total")->unit, "m");
}

static void totals_add_up_what_is_printed(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	f->joint_list[0].length = f->joint_list[1].length = 1004.9;
	const struct count *count = count_from_placed(tables.arena, &f->placed, tables.en);
	assert_near(amount(count, "joint-soft", "total"), 2.0, 1e-12);
	for (size_t i = 0; i < count->row_count; i++) {
		if (!count->rows[i].is_total)
			continue;
		double sum = 0;
		size_t parts = 0;
		for (size_t k = 0; k < i; k++)
			if (strcmp(count->rows[k].what, count->rows[i].what) == 0) {
				sum += count->rows[k].amount;
				parts++;
			}
		if (parts > 0)
			assert_near(sum, count->rows[i].amount, 1e-9);
		else
			assert_near(count->rows[i].amount, round(count->rows[i].amount), 0);
	}
}

static void pending_open_full_and_alternate_stand_apart(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	f->strip.pending = true;
	f->joint_list[2].is_open = true;
	f->strips.cover.alternate_mm2 = 12e6;
	const struct count *count = count_from_placed(tables.arena, &f->placed, tables.en);
	assert_near(amount(count, "membrane-strip-pending", "hall K1.strip"), 1.35, 1e-12);
	assert_null(tables_row(count, "membrane-strip", "total"));
	assert_near(amount(count, "joint-perimeter-open", "hall C1.perimeter"), 1.2, 1e-12);
	assert_near(amount(count, "full-membrane", "hall"), 12, 1e-12);
	f->strips.cover.is_full = true;
	f->membrane.kind = PLAN_MEMBRANE_MAT;
	count = count_from_placed(tables.arena, &f->placed, tables.en);
	assert_near(amount(count, "membrane-full", "hall"), 1.35, 1e-12);
}

/* Joints of 6 by 3 mm: two of 2988 mm on a rod of 9 mm, one of 1200 mm on tape. */
static void joints_take_sealant_and_back_up(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	f->plan.sealant.per_tube_ml = 50;
	f->joint_list[0].back = f->joint_list[1].back = JOINT_BACK_ROD;
	f->joint_list[2].back = JOINT_BACK_TAPE;
	f->joint_list[2].depth = 3;
	const struct count *count = count_from_placed(tables.arena, &f->placed, tables.en);
	assert_near(amount(count, "sealant", "hall K1.left"), 53.78, 1e-12);
	assert_near(amount(count, "sealant", "hall C1.perimeter"), 21.6, 1e-12);
	assert_near(amount(count, "sealant", "total"), 129.16, 1e-12);
	/* 129.16 ml and 5 % are 135.6 ml. */
	assert_near(amount(count, "sealant-tube", "total"), 3, 0);
	assert_near(amount(count, "sealant-sausage", "total"), 1, 0);
	assert_near(amount(count, "rod-9.2mm", "total"), 5.98, 1e-12);
	assert_near(amount(count, "tape", "total"), 1.2, 1e-12);
	f->joint_list[2].is_open = true;
	count = count_from_placed(tables.arena, &f->placed, tables.en);
	assert_null(tables_row(count, "sealant", "hall C1.perimeter"));
	assert_null(tables_row(count, "tape", "total"));
}

/* 11.916 m2 of field, 11 m2 of it tile, two soft joints of 2988 by 6 mm; tile 10 mm thick. */
static void ground_takes_mortar_and_grout(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	f->tile.thick_nm = 10000000;
	f->plan.grout.density_kg_l = 1.6;
	f->plan.grout.bag_kg = 5;
	f->plan.mortar.covers_m2 = 4;
	const struct count *count = count_from_placed(tables.arena, &f->placed, tables.en);
	double joints = f->field.area_mm2 - 11e6 - 2 * 2988 * 6;
	assert_near(amount(count, "grout", "hall"), round(joints * 1.6e-3) / 100, 1e-12);
	assert_near(amount(count, "grout", "hall"), 14.08, 1e-12);
	/* 14.08 kg and 10 % are 15.49 kg. */
	assert_near(amount(count, "grout-bag", "total"), 4, 0);
	assert_near(amount(count, "mortar", "hall"), 11.92, 1e-12);
	assert_near(amount(count, "mortar-bag", "hall"), 3, 0);
	/* A hold of 0.5 m2 with 0.46 m2 of tile waits. */
	f->cracks.hold_count = 1;
	count = count_from_placed(tables.arena, &f->placed, tables.en);
	assert_near(amount(count, "mortar", "hall"), 11.42, 1e-12);
	assert_near(amount(count, "grout", "hall"), 13.44, 1e-12);
}

/* A crack of 3000 mm, 2 mm wide, is opened 12 mm deep. */
static void cracks_are_filled_where_the_rule_says(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	f->crack.width = 2;
	const struct count *count = count_from_placed(tables.arena, &f->placed, tables.en);
	assert_near(amount(count, "patch", "hall K1"), 3, 1e-12);
	assert_near(amount(count, "patch-volume", "hall K1"), 76.2, 1e-12);
	f->placed_crack.state = CRACK_HOLD;
	assert_null(tables_row(count_from_placed(tables.arena, &f->placed, tables.en), "patch",
	                       "hall K1"));
	f->placed_crack.state = CRACK_ISOLATE;
	f->crack.width = 1;
	assert_null(tables_row(count_from_placed(tables.arena, &f->placed, tables.en), "patch",
	                       "hall K1"));
}

static void plans_in_inches_count_in_feet(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	f->site.inches = true;
	f->joint_list[0].length = 3048;
	f->strip.region = floor_rectangle(tables.arena, 0, 0, 304.8, 3048);
	const struct count *count = count_from_placed(tables.arena, &f->placed, tables.en);
	assert_near(amount(count, "joint-soft", "hall K1.left"), 10, 1e-12);
	assert_near(amount(count, "membrane-strip", "hall K1.strip"), 10, 1e-12);
	assert_string_equal(tables_row(count, "membrane-strip", "total")->unit, "sqft");
	assert_string_equal(tables_row(count, "joint-soft", "total")->unit, "ft");
}

static void csv_guards_formulas_and_quotes(void **state)
{
	(void)state;
	struct count_row rows[] = {
		{.what = "=1+1",
	         .where = "a,b",
	         .amount = 2,
	         .unit = "each",
	         .rate = "",
	         .how = "say \"x\""},
		{.what = "-a",
	         .where = "@b",
	         .amount = 1.5,
	         .decimals = 2,
	         .unit = "m",
	         .rate = "3/ft",
	         .is_priced = true,
	         .cents = 1476,
	         .how = "+"},
	};
	struct count count = {.rows = rows, .row_count = 2};
	assert_string_equal((const char *)count_csv(tables.arena, &count).data,
	                    "what,where,amount,unit,rate,price,how\r\n"
	                    "\"'=1+1\",\"a,b\",2,each,,,\"say \"\"x\"\"\"\r\n"
	                    "\"'-a\",\"'@b\",1.50,m,3/ft,14.76,\"'+\"\r\n");
}

static void xml_escapes(void **state)
{
	(void)state;
	struct count_row rows[] = {{.what = "a",
	                            .where = "x<y",
	                            .amount = 2,
	                            .unit = "each",
	                            .rate = "",
	                            .how = "\"&\""}};
	struct count count = {.rows = rows, .row_count = 1};
	assert_string_equal(
		(const char *)count_xml(tables.arena, &count).data,
		"<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<count version=\"1\">\n"
		"  <row what=\"a\" where=\"x&lt;y\" amount=\"2\" unit=\"each\" rate=\"\" "
		"price=\"\" how=\"&quot;&amp;&quot;\"/>\n</count>\n");
}

static void text_stands_in_columns(void **state)
{
	(void)state;
	struct count_row rows[] = {{.kind = COUNT_JOINT_SOFT,
	                            .what = "joint-soft",
	                            .where = "hall K1.left",
	                            .amount = 2.99,
	                            .decimals = 2,
	                            .unit = "m2",
	                            .rate = "",
	                            .how = "x"},
	                           {.kind = COUNT_TILE_WHOLE,
	                            .what = "tile-whole",
	                            .where = "total",
	                            .amount = 1234,
	                            .unit = "each",
	                            .rate = "",
	                            .how = "y",
	                            .is_total = true}};
	struct count count = {.rows = rows, .row_count = 2};
	assert_string_equal((const char *)count_text(tables.arena, &count, tables.en).data,
	                    "What         Where         Amount  Unit  How\n"
	                    "soft joint   hall K1.left    2.99  m²    x\n"
	                    "tile, whole  total           1234  each  y\n");
}

static void every_row_has_its_words(void **state)
{
	(void)state;
	struct floor *f = floor_new(tables.arena, tables.us);
	f->cracks.hold_count = 1;
	f->strips.cover.alternate_mm2 = 12e6;
	const struct count *count = count_from_placed(tables.arena, &f->placed, tables.en);
	for (size_t i = 0; i < count->row_count; i++) {
		const struct count_row *row = &count->rows[i];
		assert_true(words_has(tables.en,
		                      arena_printf(tables.arena, "count.what.%s", row->what)));
		assert_true(words_has(tables.en,
		                      arena_printf(tables.arena, "count.how.%s", row->what)));
		assert_true(words_has(tables.en, arena_printf(tables.arena, "unit.%s", row->unit)));
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(tile_and_membrane_and_joints),
		cmocka_unit_test(totals_add_up_what_is_printed),
		cmocka_unit_test(pending_open_full_and_alternate_stand_apart),
		cmocka_unit_test(joints_take_sealant_and_back_up),
		cmocka_unit_test(ground_takes_mortar_and_grout),
		cmocka_unit_test(cracks_are_filled_where_the_rule_says),
		cmocka_unit_test(plans_in_inches_count_in_feet),
		cmocka_unit_test(csv_guards_formulas_and_quotes),
		cmocka_unit_test(xml_escapes),
		cmocka_unit_test(text_stands_in_columns),
		cmocka_unit_test(every_row_has_its_words),
	};
	return cmocka_run_group_tests(tests, tables_start, tables_end);
}

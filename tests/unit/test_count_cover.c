/* Strips beside full coverage, whichever is drawn, with what the other would cost and who
 * approves it; mats and mortar beds with what they raise and weigh. */
#include <math.h>
#include <string.h>

#include "geometry/region.h"
#include "support/program.h"
#include "support/rooms.h"
#include "support/tables.h"

/* A hall of 4 by 3 m with one crack, under 200 mm tile. */
static const struct count *count_of(const char *membrane, const char *more)
{
	const char *text = arena_printf(
		tables.arena,
		"<floor version='1' unit='mm'>"
		"<slab id='S1' thickness='125mm' support='ground' exposure='indoor'/>"
		"<room id='hall' slab='S1' needs='%s'><corners><corner x='0' y='0'/>"
		"<corner x='4000' y='0'/><corner x='4000' y='3000'/><corner x='0' y='3000'/>"
		"</corners></room>"
		"<crack id='K1' width='1'><at x='2000' y='0'/><at x='2000' y='3000'/></crack>"
		"<tile id='T1' kind='porcelain' wide='197' thick='10'/>"
		"<lay id='L1' rooms='hall' tile='T1' joint='3' pattern='grid'/>"
		"<membrane id='M1' %s %s/>%s</floor>",
		strstr(membrane, "offers") != NULL ? "waterproof" : "",
		strstr(membrane, "rooms") != NULL ? "" : "rooms='hall'", membrane, more);
	const struct site *site = site_from_text(tables.arena, text);
	return count_from_placed(tables.arena, placed_from_site(tables.arena, site, tables.us),
	                         tables.en);
}

static const struct count_row *row_of(const struct count *count, const char *what,
                                      const char *where)
{
	const struct count_row *row = tables_row(count, what, where);
	if (row == NULL)
		fail_msg("no row %s, %s", what, where);
	return row;
}

static const char RATES[] =
	"<rates currency='EUR'><rate of='M1' each='10.00' per='m2' hours='0.5'/>"
	"<rate of='labour' each='40.00' per='hour'/></rates>";
#define APPROVED "<answer about='M1' decision='proceed' by='Owner' on='2026-03-01'/>"

/* 12 m2 of ground at 10.00, and six hours of 40.00; the strip at the same rates. */
static void full_stands_beside_strips(void **state)
{
	(void)state;
	const struct count *count = count_of("kind='sheet' movement='3mm' cover='partial'", RATES);
	const struct count_row *strip = row_of(count, "membrane-strip", "hall K1.strip");
	int64_t drawn = strip->cents + row_of(count, "labour", "hall K1.strip")->cents;
	assert_near(row_of(count, "full-membrane", "hall")->amount, 12, 1e-9);
	assert_int_equal(row_of(count, "full-membrane", "hall")->cents, 12000);
	assert_int_equal(row_of(count, "full-labour", "hall")->cents, 24000);
	assert_int_equal(row_of(count, "price-full", "M1")->cents, 36000 - drawn);
	assert_non_null(strstr(row_of(count, "price-full", "M1")->how, "approved by: owner"));
	assert_non_null(strstr(row_of(count, "full-membrane", "hall")->how, "owner"));
	assert_null(tables_row(count, "partial-membrane", "total"));
	/* What might be laid instead is no part of the price. */
	assert_int_equal(row_of(count, "price-total", "total")->cents, drawn);
}

static void strips_stand_beside_approved_full(void **state)
{
	(void)state;
	const struct count *strips = count_of("kind='sheet' movement='3mm' cover='partial'", RATES),
			   *full = count_of("kind='sheet' movement='3mm' cover='full' "
	                                    "offers='waterproof'",
	                                    arena_printf(tables.arena, "%s%s", APPROVED, RATES));
	const struct count_row *drawn = row_of(strips, "membrane-strip", "hall K1.strip");
	const struct count_row *instead = row_of(full, "partial-membrane", "hall K1.strip");
	assert_near(row_of(full, "membrane-full", "hall")->amount, 12, 1e-9);
	assert_near(instead->amount, drawn->amount, 1e-9);
	assert_near(row_of(full, "partial-membrane-length", "hall K1.strip")->amount,
	            row_of(strips, "membrane-strip-length", "hall K1.strip")->amount, 1e-9);
	assert_non_null(strstr(instead->how, "owner, designer"));
	assert_null(tables_row(full, "full-membrane", "total"));
	assert_int_equal(row_of(full, "price-partial", "M1")->cents,
	                 -row_of(strips, "price-full", "M1")->cents);
	assert_int_equal(row_of(full, "price-total", "total")->cents, 36000);
}

/* EN 1991-1-1: 12 m2 of 40 mm at 2.35 kg to a litre are 1128 kg. */
static void beds_raise_and_load_the_floor(void **state)
{
	(void)state;
	const struct count *count = count_of("kind='mortar-bed' cover='full' thick='40'", "");
	assert_near(row_of(count, "added-height", "hall")->amount, 40, 1e-9);
	assert_string_equal(row_of(count, "added-height", "hall")->unit, "mm");
	assert_null(tables_row(count, "added-height", "total"));
	assert_near(row_of(count, "added-weight", "hall")->amount, 1128, 0.01);
	assert_near(row_of(count, "bed-mortar", "hall")->amount, 1128, 0.01);
	assert_near(row_of(count, "bed-mesh", "hall")->amount, 12, 1e-9);
	assert_near(row_of(count, "bed-cleavage", "hall")->amount, 12, 1e-9);
	count = count_of("kind='mat' cover='full' thick='4'", "");
	assert_near(row_of(count, "added-weight", "hall")->amount, 112.8, 0.01);
	assert_null(tables_row(count, "bed-mortar", "total"));
	assert_null(tables_row(count, "bed-cleavage", "total"));
	assert_null(tables_row(count, "partial-membrane", "total"));
	assert_null(tables_row(count, "full-membrane", "total"));
}

/* Two lays of 4 by 3 m: four lanes of 4 m each, 32 m in all, out of one roll of 40 m. */
static void what_is_bought_is_rounded_up_once(void **state)
{
	(void)state;
	static const char den[] =
		"<room id='den' slab='S1'><corners><corner x='5000' y='0'/>"
		"<corner x='9000' y='0'/><corner x='9000' y='3000'/><corner x='5000' y='3000'/>"
		"</corners></room><lay id='L2' rooms='den' tile='T1' joint='3' pattern='grid'/>";
	const struct count *count = count_of("kind='mat' cover='full' thick='3' roll-wide='1m' "
	                                     "roll-long='40m' lap='50mm' rooms='hall den'",
	                                     den);
	assert_near(row_of(count, "membrane-full", "hall")->amount, 12, 1e-9);
	assert_near(row_of(count, "membrane-full", "den")->amount, 12, 1e-9);
	assert_near(row_of(count, "membrane-roll", "M1")->amount, 1, 0);
	assert_near(row_of(count, "membrane-roll", "total")->amount, 1, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(full_stands_beside_strips),
		cmocka_unit_test(strips_stand_beside_approved_full),
		cmocka_unit_test(beds_raise_and_load_the_floor),
		cmocka_unit_test(what_is_bought_is_rounded_up_once),
	};
	return cmocka_run_group_tests(tests, tables_start, tables_end);
}

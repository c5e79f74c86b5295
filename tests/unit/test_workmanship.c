/* Printed values of workmanship and of the width of joints: docs/sources.md, "Workmanship". */
#include "layout/placed.h"
#include "rules/joint_width.h"
#include "rules/workmanship.h"
#include "support/program.h"
#include "support/rooms.h"

static const double IN = 25.4, KELVIN = 1 / 1.8; /* of a degree F */

static struct arena *arena;
static const struct rules *us_in_inches(void)
{
	struct diag_list diags = diag_list_in(arena, "");
	return rules_load(arena, "us", true, &diags);
}

static int open_arena(void **state)
{
	(void)state;
	arena = arena_new();
	return 0;
}

static int close_arena(void **state)
{
	(void)state;
	arena_free(arena);
	return 0;
}

/* T07: a joint of 1/8 in and a warpage of 1/16 in, 3/32 in. R-W14: from 1/4 in on, 1/16 in. */
static void lippage(void **state)
{
	(void)state;
	const struct rules *us = us_in_inches();
	assert_near(workmanship_lippage(us, IN / 8, IN / 16), 3 * IN / 32, 1e-9);
	assert_near(workmanship_lippage(us, IN / 4, 0), IN / 16, 1e-9);
}

/* T08: an average of 8 in, sides from 7.98 to 8.02. T09: of 24 in, 0.03 either way, not 0.06. */
static void calibre(void **state)
{
	(void)state;
	const struct rules *us = us_in_inches();
	assert_near(workmanship_spread(us, 8 * IN), (8.02 - 7.98) * IN, 1e-9);
	assert_near(workmanship_spread(us, 24 * IN), 2 * 0.03 * IN, 1e-9);
}

/* T12: a wheel of 5 in takes 125 cubic feet a minute. */
static void air(void **state)
{
	(void)state;
	assert_near(workmanship_air_cfm(us_in_inches(), 5), 125, 1e-9);
}

/* T11: 115 F between summer and winter, 1/16 in; 100 F, nothing; a degree more, all of a step. */
static void increment(void **state)
{
	(void)state;
	const struct rules *us = us_in_inches();
	assert_near(joint_width_increment(us, 115 * KELVIN), IN / 16, 1e-9);
	assert_near(joint_width_increment(us, 100 * KELVIN), 0, 1e-9);
	assert_near(joint_width_increment(us, 117 * KELVIN), IN / 8, 1e-9);
}

/* T11 on a floor: outdoors 1/2 in, and 9/16 in where the slab states 115 F. */
static void increment_on_a_floor(void **state)
{
	(void)state;
	static const char *const STATED[] = {"", "coldest='0F' hottest='115F'"};
	for (int i = 0; i < 2; i++) {
		const char *text = arena_printf(
			arena,
			"<floor version='1' unit='in'><slab id='S1' thickness='5in' "
			"support='ground' exposure='outdoor' %s/><room id='deck' slab='S1'>"
			"<corners><corner x='0' y='0'/><corner x='20ft' y='0'/>"
			"<corner x='20ft' y='9ft'/><corner x='0' y='9ft'/></corners></room>"
			"<tile id='T1' kind='porcelain' "
			"wide='11 7/8in' thick='3/8in'/><lay id='L1' rooms='deck' tile='T1' "
			"joint='1/8in' pattern='grid'/></floor>",
			STATED[i]);
		const struct site *site = site_from_text(arena, text);
		const struct placed *placed = placed_from_site(arena, site, us_in_inches());
		const struct movement *movement = placed->lays[0].movement;
		assert_true(movement->line_count > 0);
		assert_near(movement->lines[0].width, (8 + i) * IN / 16, 1e-9);
	}
}

/* V-W-1: 3.6e-6 a degree F, 240 in, 95 F, moisture 0.0002, drift 1/8 in, class 50 %, 1/8 in to
 * build it: 0.635 in. V-T-1, V-T-2: expansion alone. V-T-3: 0.06 % of moisture is 0.6 mm a metre.
 * V-T-4: 4.1 to 8.1 millionths are as many thousandths of a millimetre, a metre and a degree. */
static void widths(void **state)
{
	(void)state;
	static const struct {
		const char *id;
		struct joint_movement movement;
		double printed, near;
	} ROWS[] = {
		{"V-W-1", {3.6e-6, 95, 240, 0.0002, 0.125, 0.5, 0.125}, 0.635, 0.0005},
		{"V-T-1", {3.38e-5, 120, 90 * 12, 0, 0, 1, 0}, 4.38, 0.005},
		{"V-T-2", {0.000001, 100, 120, 0, 0, 1, 0}, 0.012, 1e-9},
		{"V-T-3", {0, 0, 1000, 0.0006, 0, 1, 0}, 0.6, 1e-9},
		{"V-T-4", {4.1e-6, 1, 1000, 0, 0, 1, 0}, 0.0041, 1e-9},
		{"V-T-4", {8.1e-6, 1, 1000, 0, 0, 1, 0}, 0.0081, 1e-9},
	};
	for (size_t i = 0; i < sizeof ROWS / sizeof *ROWS; i++) {
		double width = joint_width_of(ROWS[i].movement);
		if (fabs(width - ROWS[i].printed) > ROWS[i].near)
			fail_msg("%s: %f", ROWS[i].id, width);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(lippage),
		cmocka_unit_test(calibre),
		cmocka_unit_test(air),
		cmocka_unit_test(increment),
		cmocka_unit_test(increment_on_a_floor),
		cmocka_unit_test(widths),
	};
	return cmocka_run_group_tests(tests, open_arena, close_arena);
}

/* A hatch over tile runs neither along its joints nor along the sheet (R-D10). */
#include "support/program.h"

#include <math.h>

#include "sheets/hatch_turn.h"
#include "support/rooms.h"

static const struct placed *floor_at(struct arena *arena, const char *pattern, const char *shape,
                                     int angle)
{
	const char *text = arena_printf(
		arena,
		"<floor version='1' unit='mm'>"
		"<slab id='S1' thickness='125mm' support='ground' exposure='indoor'/>"
		"<room id='hall' slab='S1'><corners><corner x='0' y='0'/><corner x='4000' y='0'/>"
		"<corner x='4000' y='3000'/><corner x='0' y='3000'/></corners></room>"
		"<tile id='T1' kind='porcelain' wide='297mm' thick='9mm'%s/>"
		"<lay id='L1' rooms='hall' tile='T1' joint='3mm' pattern='%s' angle='%d'/></floor>",
		shape, pattern, angle);
	const struct site *site = site_from_text(arena, text);
	return placed_from_site(arena, site, rules_for_tests(arena));
}

static struct style style_at(int angle)
{
	struct style style = {.name = "plain"};
	style.areas[AREA_HOLD].angle_deg = style.areas[AREA_STRIP].angle_deg = angle;
	style.areas[AREA_OBSTACLE].angle_deg = 135;
	return style;
}

static double apart(double a, double b)
{
	return fabs(remainder(a - b, 90));
}

static void test_as_the_style_has_it_where_that_reads(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct style style = style_at(45);
	const struct placed *square = floor_at(arena, "grid", "", 0),
			    *quarter = floor_at(arena, "grid", "", 90),
			    *hexagon = floor_at(arena, "hexagon", " shape='hexagon'", 0);
	assert_int_equal(hatch_turned(arena, &style, square)->areas[AREA_HOLD].angle_deg, 45);
	assert_int_equal(hatch_turned(arena, &style, quarter)->areas[AREA_HOLD].angle_deg, 45);
	assert_int_equal(hatch_turned(arena, &style, hexagon)->areas[AREA_STRIP].angle_deg, 45);
	arena_free(arena);
}

/* What stands beside the tile keeps its hatch. */
static void test_an_obstacle_keeps_its_hatch(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct style style = style_at(45);
	const struct placed *slanted = floor_at(arena, "grid", "", 45);
	assert_int_equal(hatch_turned(arena, &style, slanted)->areas[AREA_OBSTACLE].angle_deg, 135);
	arena_free(arena);
}

static void test_never_along_the_tile_or_the_sheet(void **state)
{
	(void)state;
	for (int angle = -90; angle <= 90; angle += 5)
		for (int own = 0; own < 180; own += 15) {
			struct arena *arena = arena_new();
			struct style style = style_at(own);
			int turned = hatch_turned(arena, &style, floor_at(arena, "grid", "", angle))
			                     ->areas[AREA_STRIP]
			                     .angle_deg;
			assert_true(turned >= 0 && turned < 180 && turned % 15 == 0);
			assert_true(apart(turned, angle) > 14.9);
			assert_true(apart(turned, 0) > 14.9);
			arena_free(arena);
		}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_as_the_style_has_it_where_that_reads),
		cmocka_unit_test(test_an_obstacle_keeps_its_hatch),
		cmocka_unit_test(test_never_along_the_tile_or_the_sheet),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

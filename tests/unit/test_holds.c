/* Holds of stepped cracks in a room of 297 mm tile with a joint of 3 mm: joint centres lie at
 * x and y of 100, 400, 700 …; the field runs from 6 mm inside the walls. */
#include "support/program.h"

#include "geometry/overlay.h"
#include "support/laid.h"

/* Tile within 297 + 12.5 mm of a crack at x 1450 from y 850 to 1150: columns 1000 to 1900 (the
 * next begins at 1901.5), rows 400 to 1600; the corners of that block are tile as well
 * (1301.5 - 309.5 < 998.5 at the crack's height, at its ends by the round distance). */
static void test_in_the_field(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay =
		laid_room(arena, 3200, 2400, 297, "",
	                  "<crack id='K1' width='1mm' step='2mm'><at x='1450' y='850'/>"
	                  "<at x='1450' y='1150'/></crack>");
	const struct hold *hold = &lay->cracks->holds[0];
	struct box box = region_box(&hold->region);
	assert_near(box.x0, 1000, 1e-6);
	assert_near(box.x1, 1900, 1e-6);
	assert_near(box.y0, 400, 1e-6);
	assert_near(box.y1, 1600, 1e-6);
	assert_int_equal(hold->whole_count, 12);
	assert_int_equal(hold->cut_count, 0);
	assert_near(hold->tile_mm2, 12 * 297.0 * 297, 1e-6);
	assert_near(hold->area_mm2, 12 * 300.0 * 300, 1e-3);
	arena_free(arena);
}

/* At a wall it ends on the field's edge, and its cut tile is told apart. */
static void test_at_wall(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay =
		laid_room(arena, 3200, 2400, 297, "",
	                  "<crack id='K1' width='1mm' step='2mm'><at x='1450' y='0'/>"
	                  "<at x='1450' y='300'/></crack>");
	const struct hold *hold = &lay->cracks->holds[0];
	struct box box = region_box(&hold->region);
	assert_near(box.y0, 6, 1e-6);
	assert_near(box.y1, 700, 1e-6);
	assert_int_equal(hold->whole_count, 6);
	assert_int_equal(hold->cut_count, 3);
	assert_near(hold->area_mm2, 900 * (700.0 - 6), 1e-3);
	arena_free(arena);
}

/* It does not reach over a carried joint, and no strip reaches into it. */
static void test_stays_in_its_panel(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(
		arena, 3200, 2400, 297, "",
		"<crack id='K1' width='1mm' step='2mm'><at x='1450' y='0'/>"
		"<at x='1450' y='1150'/></crack>"
		"<crack id='K2' width='1mm'><at x='2350' y='0'/><at x='2350' y='2400'/></crack>"
		"<slab-joint id='J1' kind='construction' width='10mm'><at x='0' y='1250'/>"
		"<at x='3200' y='1250'/></slab-joint>");
	assert_int_equal(lay->cracks->hold_count, 1);
	struct box box = region_box(&lay->cracks->holds[0].region);
	assert_true(box.y1 <= 1245 + 1e-6);
	struct region both = overlay_intersection(arena, &lay->cracks->holds[0].region,
	                                          &lay->strips->strips[0].region);
	assert_near(region_area(&both), 0, 1e-3);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_in_the_field),
		cmocka_unit_test(test_at_wall),
		cmocka_unit_test(test_stays_in_its_panel),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

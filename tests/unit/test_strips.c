/* Strips and soft joints of small rooms worked out by hand. Tile of 297 mm with a joint of
 * 3 mm: joint centres lie at x and y of 100, 400, 700 … */
#include "support/program.h"

#include <string.h>

#include "geometry/overlay.h"
#include "support/laid.h"

static const char *const STRAIGHT = "<crack id='K1' width='1mm' wander='12mm'><at x='1450' y='0'/>"
				    "<at x='1450' y='2400'/></crack>";

static const struct soft_joint *soft_find(const struct strips *strips, const char *id)
{
	for (size_t k = 0; k < strips->soft_count; k++)
		if (strcmp(strips->softs[k].id, id) == 0)
			return &strips->softs[k];
	fail_msg("no soft joint %s", id);
	return NULL;
}

static void assert_on(const struct soft_joint *joint, double x0, double y0, double x1, double y1)
{
	struct line line = joint->line;
	assert_true(line.count >= 2);
	struct point from = line.points[0], to = line.points[line.count - 1];
	assert_near(from.x, x0, 1e-6);
	assert_near(from.y, y0, 1e-6);
	assert_near(to.x, x1, 1e-6);
	assert_near(to.y, y1, 1e-6);
}

/* From wall to wall in the middle of a column of tile: a joint on each side of it. Joints at
 * 1000 and 1300 cost the same to the left: the lesser address is taken. */
static void test_straight(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(arena, 3200, 2400, 297, "", STRAIGHT);
	const struct strips *strips = lay->strips;
	assert_int_equal(strips->strip_count, 1);
	assert_string_equal(strips->strips[0].id, "K1.strip");
	/* 891 / 2 to the right, to the left 50 beyond the joint at 1000: 947, in steps of 25. */
	assert_near(strips->strips[0].width, 950, 1e-6);
	assert_near(region_area(&strips->strips[0].region), 950.0 * 2400, 1e-3);
	assert_int_equal(strips->strips[0].piece_count, 1);
	assert_near(strips->strips[0].pieces[0].length, 2400, 1e-6);

	assert_int_equal(strips->soft_count, 2);
	assert_on(soft_find(strips, "K1.left"), 1000, 6, 1000, 2394);
	assert_on(soft_find(strips, "K1.right"), 1600, 6, 1600, 2394);
	assert_near(soft_find(strips, "K1.left")->length, 2388, 1e-6);
	assert_near(soft_find(strips, "K1.left")->turns, 0, 0);
	assert_string_equal(soft_find(strips, "K1.left")->ends, "south north");
	arena_free(arena);
}

/* An end in the field: 400 mm of overrun are less than half a width, which the ground round
 * the end needs. */
static void test_end_in_field(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(
		arena, 3200, 4000, 297, "",
		"<crack id='K1' width='1mm'><at x='1450' y='0'/><at x='1450' y='1600'/></crack>");
	const struct strips *strips = lay->strips;
	struct box box = region_box(&strips->strips[0].region);
	assert_near(box.y0, 0, 1e-6);
	/* 1600 + 891 / 2, the whole length rounded up to 25 mm. */
	assert_near(box.y1, 1600 + 445.5 + 9, 25);
	assert_int_equal(strips->soft_count, 2);
	/* The last corners on the strip: 1900 lies on it, 2200 does not. */
	assert_on(soft_find(strips, "K1.left"), 1000, 6, 1000, 1900);
	assert_on(soft_find(strips, "K1.right"), 1600, 6, 1600, 1900);
	assert_string_equal(soft_find(strips, "K1.left")->ends, "south K1.strip");
	arena_free(arena);
}

/* Within a tile of the wall: its perimeter joint serves that side. */
static void test_beside_wall(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(
		arena, 3200, 2400, 297, "",
		"<crack id='K1' width='1mm'><at x='250' y='0'/><at x='250' y='2400'/></crack>");
	const struct strips *strips = lay->strips;
	const struct soft_joint *left = soft_find(strips, "K1.left");
	assert_string_equal(left->uses, "west.perimeter");
	assert_int_equal(left->place_count, 0);
	assert_on(soft_find(strips, "K1.right"), 400, 6, 400, 2394);
	size_t softs = 0;
	for (size_t k = 0; k < lay->joints->joint_count; k++)
		softs += lay->joints->joints[k].kind == JOINT_SOFT;
	assert_int_equal(softs, 1);
	for (size_t k = 0; k < lay->joints->joint_count; k++) {
		const struct joint *joint = &lay->joints->joints[k];
		assert_string_equal(joint->serves,
		                    strcmp(joint->id, "west.perimeter") == 0 ? "K1.left" : "");
	}
	arena_free(arena);
}

/* The way on from the crack's end meets the wall above the joint at 1300, which serves below it
 * and above: the joint goes straight on to the wall. */
static void test_straight_on_to_the_wall(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(
		arena, 3200, 2400, 297, "",
		"<crack id='K1' width='1mm'><at x='3200' y='1080'/><at x='1200' y='1080'/>"
		"<at x='290' y='1250'/></crack>");
	assert_on(soft_find(lay->strips, "K1.right"), 3194, 1300, 6, 1300);
	assert_on(soft_find(lay->strips, "K1.left"), 3194, 1000, 6, 1000);
	arena_free(arena);
}

static const struct strips *strips_with(struct arena *arena, const char *soft_joints)
{
	const char *plan = arena_printf(
		arena,
		"<floor version='1' unit='mm'>"
		"<slab id='S1' thickness='125mm' support='ground' exposure='indoor'/>"
		"<room id='room' slab='S1'><corners><corner x='0' y='0'/><corner x='3200' y='0'/>"
		"<corner x='3200' y='2400'/><corner x='0' y='2400'/></corners></room>"
		"<crack id='K1' width='1mm'><at x='1350' y='0'/><at x='1850' y='1200'/>"
		"<at x='1150' y='2400'/></crack>"
		"<tile id='T1' kind='porcelain' wide='297mm' thick='10mm'/>"
		"<lay id='L1' rooms='room' tile='T1' joint='3mm' pattern='grid'>"
		"<start x='100' y='100'/></lay>"
		"<membrane id='M1' rooms='room' kind='sheet' movement='3mm' cover='partial' "
		"soft-joints='%s'/></floor>",
		soft_joints);
	return laid_from_text(arena, plan)->strips;
}

static void test_one_side(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct strips *both = strips_with(arena, "both"), *one = strips_with(arena, "one");
	assert_int_equal(both->soft_count, 2);
	assert_int_equal(one->soft_count, 1);
	double left = soft_find(both, "K1.left")->cost, right = soft_find(both, "K1.right")->cost;
	assert_true(fabs(left - right) > 1);
	assert_string_equal(one->softs[0].id, left < right ? "K1.left" : "K1.right");
	assert_near(one->softs[0].cost, fmin(left, right), 1e-6);
	arena_free(arena);
}

/* The crack runs in a joint and no tile comes within its reach: that joint, and no other. */
static void test_in_joint(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay =
		laid_room(arena, 3200, 2400, 297, "",
	                  "<crack id='K1' width='1mm' wander='0.5mm'><at x='1580' y='0'/>"
	                  "<at x='1580' y='2400'/></crack>");
	assert_int_equal(lay->cracks->cracks[0].crossed_count, 9);
	lay = laid_room(arena, 3200, 2400, 297, "",
	                "<crack id='K1' width='1mm' wander='0.5mm'><at x='1600' y='0'/>"
	                "<at x='1600' y='2400'/></crack>");
	assert_int_equal(lay->cracks->cracks[0].crossed_count, 0);
	assert_int_equal(lay->strips->soft_count, 1);
	assert_on(soft_find(lay->strips, "K1.on"), 1600, 6, 1600, 2394);
	arena_free(arena);
}

/* A carried joint across the crack: each side of it has its own soft joints. */
static void test_over_carried_joint(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const char *plan = arena_printf(
		arena,
		"%s<slab-joint id='J1' kind='construction' width='10mm'><at x='0' y='1250'/>"
		"<at x='3200' y='1250'/></slab-joint>",
		STRAIGHT);
	const struct placed_lay *lay = laid_room(arena, 3200, 2400, 297, "", plan);
	assert_int_equal(lay->strips->soft_count, 4);
	assert_on(soft_find(lay->strips, "K1.left"), 1000, 6, 1000, 1245);
	/* Beyond the joint the courses start anew and end one joint short of the wall's gap. */
	assert_on(soft_find(lay->strips, "K1.left.2"), 1000, 1255, 1000, 2392.5);
	assert_string_equal(soft_find(lay->strips, "K1.left")->ends, "south J1");
	struct region on_joint = overlay_intersection(arena, &lay->field->carried[0].band,
	                                              &lay->strips->strips[0].region);
	assert_near(region_area(&on_joint), 0, 1e-3);
	arena_free(arena);
}

/* Strips of two cracks that do not touch but overlap become one; the joints stay apart. */
static void test_merge(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(
		arena, 3200, 2400, 297, "",
		"<crack id='K1' width='1mm'><at x='1150' y='0'/><at x='1150' y='2400'/></crack>"
		"<crack id='K2' width='1mm'><at x='1750' y='0'/><at x='1750' y='2400'/></crack>");
	assert_int_equal(lay->cracks->group_count, 2);
	assert_int_equal(lay->strips->strip_count, 1);
	assert_string_equal(lay->strips->strips[0].id, "K1.strip");
	assert_int_equal(lay->strips->strips[0].crack_count, 2);
	assert_int_equal(lay->strips->soft_count, 4);
	assert_on(soft_find(lay->strips, "K1.right"), 1300, 6, 1300, 2394);
	assert_on(soft_find(lay->strips, "K2.left"), 1300, 6, 1300, 2394);
	arena_free(arena);
}

/* A strip wider than the roll is laid in lanes; the seam keeps clear of the crack. */
static void test_lanes(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(
		arena, 6000, 3000, 597, "",
		"<crack id='K1' width='1mm'><at x='2800' y='0'/><at x='2800' y='3000'/></crack>");
	const struct strip *strip = &lay->strips->strips[0];
	assert_int_equal(strip->piece_count, 3);
	assert_near(strip->pieces[1].wide, 1000, 1e-6);
	assert_near(strip->pieces[1].lap, 50, 1e-6);
	for (size_t k = 0; k < strip->piece_count; k++) {
		struct box box = ring_box(strip->pieces[k].shape.outline);
		bool over = box.x0 < 2800 && 2800 < box.x1;
		double clear = fmin(fabs(box.x0 - 2800), fabs(box.x1 - 2800));
		assert_true(clear >= 6 * 25.4 - 1e-6 || !over);
		assert_true(clear >= 6 * 25.4 - 1e-6);
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_straight),
		cmocka_unit_test(test_end_in_field),
		cmocka_unit_test(test_beside_wall),
		cmocka_unit_test(test_straight_on_to_the_wall),
		cmocka_unit_test(test_one_side),
		cmocka_unit_test(test_in_joint),
		cmocka_unit_test(test_over_carried_joint),
		cmocka_unit_test(test_merge),
		cmocka_unit_test(test_lanes),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

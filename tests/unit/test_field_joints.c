/* Field joints of long rooms, worked by hand: place, width, moved tile, cuts, holds, courses,
 * and the joints that end on them. Tile of 297 with a joint of 3, a crossing of joints at
 * 100,100. */
#include "support/program.h"

#include <stdlib.h>
#include <string.h>

#include "layout/courses.h"
#include "support/laid.h"

static const struct joint *joint_find(const struct joints *joints, const char *id)
{
	for (size_t k = 0; k < joints->joint_count; k++)
		if (strcmp(joints->joints[k].id, id) == 0)
			return &joints->joints[k];
	fail_msg("no joint %s", id);
	return NULL;
}

static const struct border_cut *cut_at(const struct placed_lay *lay, const char *wall)
{
	for (size_t k = 0; k < lay->position->cut_count; k++)
		if (strcmp(lay->field->borders[lay->position->cuts[k].border].of, wall) == 0)
			return &lay->position->cuts[k];
	fail_msg("no cut at %s", wall);
	return NULL;
}

/* 7.6 m and the gaps need no joint. */
static void test_within_the_limit(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(arena, 7612, 2400, 297, "", "");
	assert_int_equal(lay->movement->line_count, 0);
	assert_int_equal(lay->tiling->panel_count, 1);
	arena_free(arena);
}

/* 9 m: the field is from 6 to 8994, its middle at 4500. Tile joints lie at 100 + 300 k: of
 * them 4600 leaves panels of 4594 and 4394, 4300 of 4294 and 4694. The first is the more
 * even. The start lies before it: tile beyond is moved by 6 - 3. */
static void test_one_line(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(arena, 9000, 2400, 297, "", "");
	const struct joint *joint = joint_find(lay->joints, "room.m1");
	assert_int_equal(joint->kind, JOINT_MOVEMENT);
	assert_true(joint->on_joint);
	assert_near(joint->width, 6, 1e-9);
	assert_near(joint->line.points[0].x, 4600 + 1.5, 1e-6);
	assert_near(joint->length, 2400 - 12, 1e-6);
	assert_string_equal(joint->ends, "south north");
	assert_int_equal(lay->tiling->panel_count, 2);
	assert_near(lay->tiling->panels[0].position.x, lay->position->parts[0].x, 1e-9);
	assert_near(lay->tiling->panels[1].position.x - lay->position->parts[0].x, 3, 1e-9);
	/* To the east wall: tile starts at 104.5 + 300 k, the last at 8804.5, and ends at 8994. */
	assert_near(cut_at(lay, "east")->least, 8994 - 8804.5, 1e-6);
	assert_near(cut_at(lay, "west")->least, 98.5 - 6, 1e-6);
	arena_free(arena);
}

/* The lesser side moves where the start lies on the greater. */
static void test_start_beyond(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const char *text =
		"<floor version='1' unit='mm'>"
		"<slab id='S1' thickness='125mm' support='ground' exposure='indoor'/>"
		"<room id='room' slab='S1'><corners>"
		"<corner id='south' x='0' y='0'/><corner id='east' x='9000' y='0'/>"
		"<corner id='north' x='9000' y='2400'/><corner id='west' x='0' y='2400'/>"
		"</corners></room>"
		"<tile id='T1' kind='porcelain' wide='297mm' thick='10mm'/>"
		"<lay id='L1' rooms='room' tile='T1' joint='3mm' pattern='grid'>"
		"<start x='7600' y='100'/></lay></floor>";
	const struct placed_lay *lay = laid_from_text(arena, text);
	assert_int_equal(lay->tiling->panel_count, 2);
	assert_near(lay->tiling->panels[1].position.x, lay->position->parts[0].x, 1e-9);
	assert_near(lay->tiling->panels[0].position.x - lay->position->parts[0].x, -3, 1e-9);
	arena_free(arena);
}

/* A stepped crack across the line: the joint stops on both sides of the hold. */
static void test_hold(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay =
		laid_room(arena, 9000, 4000, 297, "",
	                  "<crack id='K1' width='1mm' step='2mm'><at x='4300' y='2050'/>"
	                  "<at x='4900' y='2050'/></crack>");
	const struct joint *below = joint_find(lay->joints, "room.m1");
	const struct joint *above = joint_find(lay->joints, "room.m1.part.2");
	assert_string_equal(below->ends, "south K1.hold");
	assert_string_equal(above->ends, "K1.hold north");
	const struct hold *hold = &lay->cracks->holds[0];
	for (double y = below->line.points[1].y + 3.1; y < above->line.points[0].y - 3.1; y += 10) {
		struct point at = {below->line.points[0].x, y};
		assert_true(region_distance(&hold->region, at) < 3);
	}
	arena_free(arena);
}

/* A crack from wall to wall over the line: two joints beside it in each panel, and every one
 * of them ends on the line. */
static void test_soft_joints_end_on_it(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(arena, 9000, 4000, 297, "",
	                                         "<crack id='K1' width='1mm'><at x='0' y='2050'/>"
	                                         "<at x='9000' y='2050'/></crack>");
	static const char *const ids[] = {"K1.left", "K1.right", "K1.left.2", "K1.right.2"};
	static const char *const ends[] = {"west room.m1", "west room.m1", "room.m1 east",
	                                   "room.m1 east"};
	for (size_t k = 0; k < 4; k++)
		assert_string_equal(joint_find(lay->joints, ids[k])->ends, ends[k]);
	assert_int_equal(lay->strips->strip_count, 1);
	arena_free(arena);
}

/* A crack that runs within a tile of the line has no joint of its own on that side. */
static void test_line_serves_a_crack_beside_it(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(arena, 9000, 4000, 297, "",
	                                         "<crack id='K1' width='1mm'><at x='4750' y='0'/>"
	                                         "<at x='4750' y='4000'/></crack>");
	size_t served = 0;
	for (size_t k = 0; k < lay->strips->soft_count; k++)
		if (lay->strips->softs[k].uses) {
			assert_string_equal(lay->strips->softs[k].uses, "room.m1");
			assert_string_equal(lay->strips->softs[k].side, "left");
			served++;
		}
	assert_int_equal(served, 1);
	arena_free(arena);
}

/* Over the line as on this side of it: rows count, not millimetres. */
static void test_courses(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = laid_room(arena, 9000, 2400, 297, "", "");
	const struct first_tile *first = &lay->controls->firsts[0];
	assert_true(first->panel < 2);
	double moved[] = {0, 3}, other = moved[1 - first->panel];
	/* The border of a row in the other panel, and one in this. */
	double there = 100 + other + 300 * (first->panel == 0 ? 20 : 5);
	double here = first->at.x - (first->towards_u ? 1.5 : -1.5) - moved[first->panel];
	long row = lround((here - 100) / 300), count = -1;
	struct segment run = {{there, 100}, {there, 2000}};
	assert_true(courses_between(lay->tiling, first, false, run, 3, &count));
	assert_int_equal(count, labs((first->panel == 0 ? 20 : 5) - row));
	/* The field joint itself: 15 tiles from the first border. */
	run = (struct segment){{4601.5, 100}, {4601.5, 2000}};
	assert_true(courses_between(lay->tiling, first, false, run, 6, &count));
	assert_int_equal(count, labs(15 - row));
	run = (struct segment){{there + 100, 100}, {there + 100, 2000}};
	assert_false(courses_between(lay->tiling, first, false, run, 3, &count));
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_within_the_limit),
		cmocka_unit_test(test_one_line),
		cmocka_unit_test(test_start_beyond),
		cmocka_unit_test(test_hold),
		cmocka_unit_test(test_soft_joints_end_on_it),
		cmocka_unit_test(test_line_serves_a_crack_beside_it),
		cmocka_unit_test(test_courses),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

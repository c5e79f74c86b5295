/* Modules of lays, worked by hand: faces, lattice, and where each course starts. */
#include "support/program.h"

#include "pattern/module.h"

static struct arena *arena;

static int set_up(void **state)
{
	(void)state;
	arena = arena_new();
	return 0;
}

static int tear_down(void **state)
{
	(void)state;
	arena_free(arena);
	return 0;
}

enum { LONG = 600, WIDE = 300, JOINT = 3, PITCH = LONG + JOINT, COURSE = WIDE + JOINT };

static const struct module *module_for(enum plan_pattern pattern, struct share shift,
                                       enum plan_stagger stagger)
{
	static const struct plan_tile tile = {.long_nm = LONG * 1000000LL,
	                                      .wide_nm = WIDE * 1000000LL};
	static const struct plan_tile *tiles[] = {&tile};
	struct plan_lay lay = {.tiles = tiles,
	                       .tile_count = 1,
	                       .joint_nm = JOINT * 1000000LL,
	                       .pattern = pattern,
	                       .shift = shift,
	                       .stagger = stagger};
	return module_from_lay(arena, &lay);
}

static void assert_point(struct point p, double x, double y)
{
	assert_near(p.x, x, 1e-9);
	assert_near(p.y, y, 1e-9);
}

static void test_grid(void **state)
{
	(void)state;
	const struct module *m =
		module_for(PLAN_PATTERN_GRID, (struct share){1, 3}, PLAN_STAGGER_STAIR);
	assert_int_equal(m->face_count, 1);
	assert_point(m->a, PITCH, 0);
	assert_point(m->b, 0, COURSE);
	assert_int_equal(m->offset_count, 1);
	assert_near(m->offsets[0], 0, 0);
	assert_point(m->faces[0].ring.points[0], JOINT / 2.0, JOINT / 2.0);
	assert_near(ring_area(m->faces[0].cell), PITCH * COURSE, 1e-6);
	assert_near(m->faces[0].area_mm2, LONG * WIDE, 1e-6);
}

/* Each course goes on by two fifths: five courses until one starts where the first did. */
static void test_courses_go_on(void **state)
{
	(void)state;
	const struct module *m =
		module_for(PLAN_PATTERN_RUNNING, (struct share){4, 10}, PLAN_STAGGER_STAIR);
	static const int fifths[] = {0, 2, 4, 1, 3};
	assert_int_equal(m->face_count, 1);
	assert_point(m->b, PITCH * 0.4, COURSE);
	assert_int_equal(m->offset_count, 5);
	for (int r = 0; r < 5; r++)
		assert_near(m->offsets[r], PITCH * fifths[r] / 5.0, 1e-9);
}

/* Every second course starts where the first did. */
static void test_courses_alternate(void **state)
{
	(void)state;
	const struct module *m =
		module_for(PLAN_PATTERN_RUNNING, (struct share){1, 3}, PLAN_STAGGER_ALTERNATE);
	assert_int_equal(m->face_count, 2);
	assert_point(m->b, 0, 2 * COURSE);
	assert_point(m->faces[1].ring.points[0], PITCH / 3.0 + JOINT / 2.0, COURSE + JOINT / 2.0);
	assert_int_equal(m->offset_count, 2);
	assert_near(m->offsets[0], 0, 0);
	assert_near(m->offsets[1], PITCH / 3.0, 1e-9);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_grid),
		cmocka_unit_test(test_courses_go_on),
		cmocka_unit_test(test_courses_alternate),
	};
	return cmocka_run_group_tests(tests, set_up, tear_down);
}

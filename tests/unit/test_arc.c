/* Arcs as inscribed polygons, against circles worked by hand. */
#include "geometry/arc.h"

#include "geometry/tolerance.h"
#include "support/program.h"

/* Chord 8, rise 2: radius 5, centre 3 below the chord; rise 8 of the same circle is its rest. */
static void test_points_lie_on_the_circle(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (int greater = 0; greater < 2; greater++) {
		double rise = greater ? -8000 : 2000;
		struct line line =
			arc_line(arena, (struct point){1000, 500}, (struct point){9000, 500}, rise);
		struct point centre = {5000, 500 - 3000};
		assert_true(line.count > 8);
		for (size_t i = 0; i < line.count; i++)
			assert_near(point_distance(line.points[i], centre), 5000, 1e-9);
		double side = point_distance(line.points[0], line.points[1]);
		for (size_t i = 1; i + 1 < line.count; i++)
			assert_near(point_distance(line.points[i], line.points[i + 1]), side, 1e-9);
		double sagitta = 5000 - sqrt(5000.0 * 5000 - side * side / 4);
		assert_true(sagitta <= TOLERANCE_SAGITTA && sagitta > TOLERANCE_SAGITTA / 4.01);
		assert_near(line.points[line.count / 2].y, 500 + rise, 1e-9);
	}
	arena_free(arena);
}

static void test_ends_are_kept(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct point from = {0.1, 0.2}, to = {-3000.7, 1234.5};
	const double rises[] = {0, 0.1, -0.1, 0.11, 50, -1600};
	for (size_t i = 0; i < sizeof rises / sizeof *rises; i++) {
		struct line line = arc_line(arena, from, to, rises[i]);
		assert_true(line.points[0].x == from.x && line.points[0].y == from.y);
		struct point last = line.points[line.count - 1];
		assert_true(last.x == to.x && last.y == to.y);
		assert_int_equal(line.count == 2, fabs(rises[i]) <= TOLERANCE_SAGITTA);
	}
	arena_free(arena);
}

/* The two rooms at a curved edge must see one line. */
static void test_same_line_from_either_end(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct point from = {12.5, 7}, to = {2600, 1900};
	struct line there = arc_line(arena, from, to, 310), back = arc_line(arena, to, from, -310);
	assert_int_equal(there.count, back.count);
	for (size_t i = 0; i < there.count; i++)
		assert_near(point_distance(there.points[i], back.points[back.count - 1 - i]), 0,
		            TOLERANCE_SAME / 10);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_points_lie_on_the_circle),
		cmocka_unit_test(test_ends_are_kept),
		cmocka_unit_test(test_same_line_from_either_end),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

/* Lines cut to a region: parts in their order, a border that is only touched, and nothing lost
 * between a region and the rest of the floor, which the overlay computes. */
#include "support/program.h"
#include "support/shapes.h"

#include "geometry/clip.h"
#include "geometry/line.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"

static void assert_line(struct line line, const struct point *points, size_t count)
{
	assert_int_equal(line.count, count);
	for (size_t i = 0; i < count; i++)
		assert_true(point_distance(line.points[i], points[i]) <= TOLERANCE_SAME);
}

static void test_clip_line_in_its_order(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct region room = shape_rectangle(arena, 0, 0, 100, 50);
	struct region hole = shape_rectangle(arena, 40, 0, 60, 30);
	struct region ground = overlay_difference(arena, &room, &hole);
	size_t count = 0;
	struct line line = LINE({120, 10}, {-20, 10}, {-20, 40}, {50, 40}, {50, 70});
	struct line *parts = clip_line(arena, line, &ground, &count);
	assert_int_equal(count, 3);
	assert_line(parts[0], (struct point[]){{100, 10}, {60, 10}}, 2);
	assert_line(parts[1], (struct point[]){{40, 10}, {0, 10}}, 2);
	assert_line(parts[2], (struct point[]){{0, 40}, {50, 40}, {50, 50}}, 3);
	arena_free(arena);
}

static void test_clip_line_that_touches(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct region room = shape_rectangle(arena, 0, 0, 100, 50);
	struct region peg = region_from_ring(arena, RING({50, 25}, {55, 30}, {45, 30}));
	struct region ground = overlay_difference(arena, &room, &peg);
	size_t count = 0;
	struct line *parts = clip_line(arena, LINE({10, 25}, {90, 25}), &ground, &count);
	assert_int_equal(count, 1);
	assert_line(parts[0], (struct point[]){{10, 25}, {90, 25}}, 2);
	clip_line(arena, LINE({-10, 60}, {110, 60}), &ground, &count);
	assert_int_equal(count, 0);
	clip_line(arena, LINE({-50, 0}, {0, -50}), &ground, &count);
	assert_int_equal(count, 0);
	struct line *eight =
		clip_line(arena, LINE({10, 10}, {20, 20}, {20, 10}, {10, 20}), &ground, &count);
	assert_int_equal(count, 1);
	assert_line(eight[0], (struct point[]){{10, 10}, {20, 20}, {20, 10}, {10, 20}}, 4);
	arena_free(arena);
}

/* A zigzag over a floor with a notch and a slanted hole. */
static void test_parts_and_the_rest_are_the_line(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct region floor = shape_rectangle(arena, 0, 0, 1000, 700);
	struct region notch = shape_rectangle(arena, 300, 0, 400, 450);
	struct region hole = region_from_ring(arena, RING({600, 100}, {900, 300}, {650, 500}));
	struct region taken = overlay_union(arena, &notch, &hole);
	struct region ground = overlay_difference(arena, &floor, &taken);
	for (int step = 1; step < 60; step++) {
		struct point points[30];
		for (int i = 0; i < 30; i++)
			points[i] = (struct point){i % 2 ? 1000 : 0, (i * step * 37) % 700};
		struct line line = {points, 30};
		size_t on, off;
		struct line *parts = clip_line(arena, line, &ground, &on);
		struct line *rest = clip_line(arena, line, &taken, &off);
		assert_near(line_length_of_all(parts, on) + line_length_of_all(rest, off),
		            line_length(line), 1e-6);
		assert_true(on > 0 && off > 0);
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_clip_line_in_its_order),
		cmocka_unit_test(test_clip_line_that_touches),
		cmocka_unit_test(test_parts_and_the_rest_are_the_line),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

/* Seeded: windows over random areas agree with the general overlay, in ground and in the number
 * of parts, also where borders run along the window's sides, touch them, and corners lie on
 * corners. */
#include <stdlib.h>

#include "geometry/overlay.h"
#include "geometry/window.h"
#include "support/program.h"
#include "support/seed.h"

/* A star-shaped ring on whole steps of a coarse grid: many coincidences with windows. */
static struct region random_area(struct arena *arena, struct seed *seed)
{
	struct region areas[3];
	for (int i = 0; i < 3; i++) {
		double x = seed_below(seed, 20), y = seed_below(seed, 20);
		double wide = 1 + seed_below(seed, 12), deep = 1 + seed_below(seed, 12);
		double skew = seed_below(seed, 3) - 1;
		struct point corners[] = {{x, y},
		                          {x + wide, y + skew},
		                          {x + wide + skew, y + deep},
		                          {x, y + deep}};
		areas[i] = region_from_ring(arena, (struct ring){corners, 4});
	}
	struct region both = overlay_union(arena, &areas[0], &areas[1]);
	return overlay_difference(arena, &both, &areas[2]);
}

static struct ring random_window(struct arena *arena, struct seed *seed)
{
	double x = seed_below(seed, 28), y = seed_below(seed, 28);
	double wide = 1 + seed_below(seed, 6), deep = 1 + seed_below(seed, 6);
	double slant = seed_below(seed, 4) == 0 ? 1 : 0;
	struct point corners[] = {{x, y},
	                          {x + wide, y + slant},
	                          {x + wide - slant, y + deep + slant},
	                          {x - slant, y + deep}};
	return ring_copy(arena, corners, 4);
}

static double area_of_parts(const struct window_work *work)
{
	double area = 0;
	for (size_t i = 0; i < work->parts.count; i++) {
		const struct window_part *part = &work->parts.items[i];
		assert_near(part->area_mm2, polygon_area(&part->shape), 1e-9);
		area += part->area_mm2;
	}
	return area;
}

/* `out_parts`: how many parts, NULL if nobody asks. */
static double area_by_window(struct arena *arena, struct ring window, const struct polygon *polygon,
                             size_t *out_parts)
{
	struct border_edges edges = border_edges_from_polygon(arena, polygon);
	size_t *near = ARENA_ARRAY(arena, size_t, edges.count);
	for (size_t i = 0; i < edges.count; i++)
		near[i] = i;
	struct window_work work = {.arena = arena};
	assert_true(window_clip(&work, window, &edges, near, edges.count));
	if (out_parts)
		*out_parts = work.parts.count;
	if (work.loops.count == 0) {
		struct point middle = point_between(window.points[0], window.points[2], 0.5);
		bool is_whole = polygon_holds(polygon, middle);
		if (out_parts)
			*out_parts = is_whole;
		return is_whole ? ring_area(window) : 0;
	}
	return area_of_parts(&work);
}

static void test_agrees_with_the_overlay(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_window");
	long compared = 0;
	for (int round = 0; round < 4000; round++) {
		struct arena *arena = arena_new();
		struct region area = random_area(arena, &seed);
		struct ring window = random_window(arena, &seed);
		struct region seen = region_from_ring(arena, window);
		for (size_t i = 0; i < area.count; i++) {
			struct region one = {&area.polygons[i], 1};
			struct region expected = overlay_intersection(arena, &one, &seen);
			size_t parts;
			assert_near(area_by_window(arena, window, &area.polygons[i], &parts),
			            region_area(&expected), 1e-4);
			assert_int_equal(parts, expected.count);
			compared++;
		}
		arena_free(arena);
	}
	assert_true(compared > 3000);
}

/* Most columns are smaller than a tile: the whole border of a hole lies in the window. */
static void test_holes_within_a_window(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_window");
	struct arena *arena = arena_new();
	struct point outer[] = {{-50, -50}, {50, -50}, {50, 50}, {-50, 50}};
	struct region slab = region_from_ring(arena, (struct ring){outer, 4});
	for (int round = 0; round < 200; round++) {
		double x = seed_below(&seed, 5), y = seed_below(&seed, 5);
		double wide = seed_between(&seed, 0.5, 2), deep = seed_between(&seed, 0.5, 2);
		struct point hole[] = {{x, y}, {x + wide, y}, {x + wide, y + deep}, {x, y + deep}};
		struct point tile[] = {{-1, -1}, {9, -1}, {9, 9}, {-1, 9}};
		struct region column = region_from_ring(arena, (struct ring){hole, 4});
		struct region ground = overlay_difference(arena, &slab, &column);
		assert_int_equal(ground.polygons[0].hole_count, 1);
		assert_near(area_by_window(arena, (struct ring){tile, 4}, &ground.polygons[0],
		                           NULL),
		            100 - wide * deep, 1e-9);
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {cmocka_unit_test(test_agrees_with_the_overlay),
	                                   cmocka_unit_test(test_holes_within_a_window)};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

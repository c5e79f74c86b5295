/* Outlines moved inwards, by hand and point by point. */
#include "support/program.h"

#include "geometry/segment.h"
#include "layout/inset.h"
#include "support/seed.h"

enum { CORNERS_MOST = 8 };

struct shape {
	const char *what;
	struct point corners[CORNERS_MOST];
	size_t count;
	double gaps[CORNERS_MOST]; /* of the edge from each corner */
	double area;               /* by hand; 0: nothing is left */
	size_t points;
};

static const struct shape SHAPES[] = {
	{"rectangle", {{0, 0}, {40, 0}, {40, 30}, {0, 30}}, 4, {5, 5, 5, 5}, 600, 4},
	{"one wall alone", {{0, 0}, {40, 0}, {40, 30}, {0, 30}}, 4, {5, 0, 0, 0}, 1000, 4},
	{"L, corner into the room",
         {{0, 0}, {40, 0}, {40, 20}, {20, 20}, {20, 40}, {0, 40}},
         6,
         {2, 2, 2, 2, 2, 2},
         36 * 16 + 16 * 20,
         6},
	{"doorway in line with its wall",
         {{0, 0}, {10, 0}, {20, 0}, {40, 0}, {40, 30}, {0, 30}},
         6,
         {5, 0, 5, 5, 5, 5},
         600 + 10 * 5,
         8},
	{"obtuse corner beside an open edge: the gap ends square",
         {{0, 0}, {40, 0}, {60, 20}, {60, 50}, {0, 50}},
         5,
         {10, 0, 0, 0, 0},
         60 * 50 - 20 * 20 / 2 - 40 * 10,
         6},
	{"sharp corner beside an open edge: the gap ends on it",
         {{0, 0}, {60, 0}, {40, 20}, {0, 20}},
         4,
         {10, 0, 0, 0},
         40 * 20 + 20 * 20 / 2 - (60 * 10 - 10 * 10 / 2),
         4},
	{"corridor narrower than two gaps: the room remains",
         {{0, 0}, {40, 0}, {40, 12}, {70, 12}, {70, 18}, {40, 18}, {40, 30}, {0, 30}},
         8,
         {4, 4, 4, 4, 4, 4, 4, 4},
         32 * 22,
         4},
	/* The walls above, moved by 9, fall below y = 9 in the middle; at x = 9 they stand
	 * h = 17 - 180/n + 0.15 (11 - 27/n) - 9 above it, n = sqrt(409): h h / 0.15 is left. */
	{"a waist closes: two triangles remain",
         {{0, 0}, {40, 0}, {40, 20}, {20, 17}, {0, 20}},
         5,
         {9, 9, 9, 9, 9},
         2.011633371194644,
         3},
	{"no room for two gaps", {{0, 0}, {40, 0}, {40, 9}, {0, 9}}, 4, {5, 5, 5, 5}, 0, 0},
};

static double gap_of(const void *context, struct ring ring, size_t i)
{
	(void)ring;
	return ((const double *)context)[i];
}

static void test_by_hand(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (size_t k = 0; k < sizeof SHAPES / sizeof *SHAPES; k++) {
		const struct shape *shape = &SHAPES[k];
		struct polygon polygon = {ring_copy(arena, shape->corners, shape->count), NULL, 0};
		struct region inset =
			inset_region(arena, &(struct region){&polygon, 1}, gap_of, shape->gaps);
		size_t points = inset.count ? inset.polygons[0].outline.count : 0;
		if (fabs(region_area(&inset) - shape->area) > 1e-9 || points != shape->points)
			fail_msg("%s: area %g, %zu corners", shape->what, region_area(&inset),
			         points);
	}
	arena_free(arena);
}

static double even_gap(const void *context, struct ring ring, size_t i)
{
	(void)ring;
	(void)i;
	return *(const double *)context;
}

static struct region walk_round(struct arena *arena, struct point *column)
{
	static struct point room[] = {{0, 0}, {100, 0}, {100, 100}, {0, 100}};
	struct ring *hole = ARENA_NEW(arena, struct ring);
	*hole = (struct ring){column, 4};
	struct polygon *polygon = ARENA_NEW(arena, struct polygon);
	*polygon = (struct polygon){{room, 4}, hole, 1};
	return (struct region){polygon, 1};
}

/* A walk of 10 all round a column: gaps of 4 leave 2 of it, gaps of 6 nothing, though the
 * moved borders then lie within each other and cross nowhere. */
static void test_round_a_column(void **state)
{
	(void)state;
	struct point column[] = {{10, 10}, {10, 90}, {90, 90}, {90, 10}};
	struct arena *arena = arena_new();
	struct region walk = walk_round(arena, column);
	double narrow = 4, wide = 6;
	struct region left = inset_region(arena, &walk, even_gap, &narrow);
	assert_near(region_area(&left), 92 * 92 - 88 * 88, 1e-9);
	assert_int_equal(inset_region(arena, &walk, even_gap, &wide).count, 0);
	arena_free(arena);
}

/* ---- point by point ---- */

static bool is_within(struct point p, const struct point *corners, size_t count)
{
	return ring_holds((struct ring){(struct point *)corners, count}, p);
}

/* The gap beside an edge, and at a corner that points into the area the kite up to the
 * crossing of the moved edges, are no field. */
static bool is_taken(struct ring ring, const double *gaps, struct point p)
{
	for (size_t i = 0; i < ring.count; i++) {
		size_t before = (i + ring.count - 1) % ring.count;
		struct segment edge = segment_of_ring(ring, i),
			       last = segment_of_ring(ring, before);
		struct point along = point_unit(point_sub(edge.to, edge.from));
		struct point was = point_unit(point_sub(last.to, last.from));
		struct point in = point_scale(point_left(along), gaps[i]);
		struct point other = point_scale(point_left(was), gaps[before]);
		struct point band[] = {edge.from, edge.to, point_add(edge.to, in),
		                       point_add(edge.from, in)};
		if (is_within(p, band, 4))
			return true;
		bool ends_square = gaps[i] != gaps[before] && point_dot(was, along) > 0;
		if (ends_square || point_cross(was, along) >= 0)
			continue;
		double ahead = point_cross(point_sub(in, other), along) / point_cross(was, along);
		struct point tip = point_add(point_add(edge.from, other), point_scale(was, ahead));
		struct point kite[] = {edge.from, point_add(edge.from, other), tip,
		                       point_add(edge.from, in)};
		if (is_within(p, kite, 4))
			return true;
	}
	return false;
}

static void check_star(struct arena *arena, struct seed *seed)
{
	enum { CORNERS = 9, POINTS = 200 };
	struct point corners[CORNERS];
	double gaps[CORNERS], gap = seed_between(seed, 1, 25);
	for (int i = 0; i < CORNERS; i++) {
		double turn = 2 * 3.14159265358979 * i / CORNERS, far = seed_between(seed, 20, 100);
		corners[i] = (struct point){far * cos(turn), far * sin(turn)};
		gaps[i] = seed_between(seed, 0, 1) < 0.25 ? 0 : gap;
	}
	struct polygon polygon = {{corners, CORNERS}, NULL, 0};
	struct region inset = inset_region(arena, &(struct region){&polygon, 1}, gap_of, gaps);
	for (int i = 0; i < POINTS; i++) {
		struct point p = {seed_between(seed, -100, 100), seed_between(seed, -100, 100)};
		if (region_distance(&inset, p) < 1e-6)
			continue;
		bool is_left = polygon_holds(&polygon, p) && !is_taken(polygon.outline, gaps, p);
		if (region_holds(&inset, p) != is_left)
			fail_msg("seed %llu: (%.6f, %.6f)", (unsigned long long)seed->state, p.x,
			         p.y);
	}
}

static void test_point_by_point(void **state)
{
	(void)state;
	struct seed seed = {20261201};
	for (int i = 0; i < 300; i++) {
		struct arena *arena = arena_new();
		check_star(arena, &seed);
		arena_free(arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_by_hand),
		cmocka_unit_test(test_round_a_column),
		cmocka_unit_test(test_point_by_point),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

/* Inscribed circles and segments. */
#include "support/program.h"

#include "geometry/overlay.h"
#include "geometry/round.h"
#include "geometry/segment.h"
#include "geometry/tolerance.h"

static const double RADII[] = {0.05, 6.35, 25.4, 50, 228.6, 1000, 12345.678, 2e6};
#define RADIUS_COUNT (sizeof RADII / sizeof *RADII)

static void test_inscribed(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (size_t k = 0; k < RADIUS_COUNT; k++) {
		double radius = RADII[k];
		struct point centre = {3810, -1219.2};
		struct ring ring = round_ring(arena, centre, radius);
		assert_true(ring.count % 4 == 0);
		assert_true(overlay_is_simple(ring));
		assert_true(ring_area(ring) > 0);
		for (size_t i = 0; i < ring.count; i++) {
			struct segment side = segment_of_ring(ring, i);
			struct point middle = point_between(side.from, side.to, 0.5);
			assert_near(point_distance(side.from, centre), radius, 1e-8);
			assert_true(radius - point_distance(middle, centre) <
			            TOLERANCE_SAGITTA + 1e-9);
		}
	}
	arena_free(arena);
}

/* One side fewer a quarter would break the sagitta. */
static void test_no_more_sides_than_needed(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	assert_int_equal(round_ring(arena, (struct point){0, 0}, 0.3).count, 4);
	assert_int_equal(round_ring(arena, (struct point){0, 0}, 50).count, 52);
	assert_int_equal(round_ring(arena, (struct point){0, 0}, 1000).count, 224);
	arena_free(arena);
}

static void test_alike_in_all_octants(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (size_t k = 0; k < RADIUS_COUNT; k++) {
		struct ring ring = round_ring(arena, (struct point){0, 0}, RADII[k]);
		size_t quarter = ring.count / 4;
		for (size_t i = 0; i < ring.count; i++) {
			struct point turned = point_left(ring.points[i]);
			struct point next = ring.points[(i + quarter) % ring.count];
			assert_true(turned.x == next.x && turned.y == next.y);
			struct point mirrored =
				ring.points[(ring.count + quarter - i) % ring.count];
			assert_true(ring.points[i].x == mirrored.y &&
			            ring.points[i].y == mirrored.x);
		}
	}
	arena_free(arena);
}

struct pair {
	struct segment a, b;
	int meets, crosses;
	double share;
};

static const struct pair PAIRS[] = {
	{{{0, 0}, {10, 0}}, {{5, -1}, {5, 1}}, 1, 1, 0.5},
	{{{0, 0}, {10, 0}}, {{5, 1}, {5, 3}}, 0, 0, 0},
	{{{0, 0}, {10, 0}}, {{2, 0}, {2, 3}}, 1, 1, 0.2},        /* touches from the side */
	{{{0, 0}, {10, 0}}, {{10, 0}, {12, 3}}, 1, 1, 1},        /* end to end */
	{{{0, 0}, {10, 0}}, {{10 + 1e-8, 0}, {12, 3}}, 1, 1, 1}, /* as good as end to end */
	{{{0, 0}, {10, 0}}, {{10 + 1e-6, 0}, {12, 3}}, 0, 0, 0},
	{{{0, 0}, {10, 0}}, {{2, 0}, {7, 0}}, 1, 0, 0}, /* one on the other */
	{{{0, 0}, {10, 0}}, {{11, 0}, {12, 0}}, 0, 0, 0},
	{{{0, 0}, {10, 0}}, {{0, 1}, {10, 1}}, 0, 0, 0},
};

static void test_pairs(void **state)
{
	(void)state;
	for (size_t k = 0; k < sizeof PAIRS / sizeof *PAIRS; k++) {
		const struct pair *pair = &PAIRS[k];
		double share = 0;
		assert_int_equal(segment_meets(pair->a, pair->b), pair->meets);
		assert_int_equal(segment_meets(pair->b, pair->a), pair->meets);
		assert_int_equal(segment_crossing(pair->a, pair->b, &share), pair->crosses);
		assert_near(share, pair->share, 1e-7);
	}
}

static void test_nearest(void **state)
{
	(void)state;
	const struct segment s = {{0, 0}, {3, 4}};
	assert_near(segment_length(s), 5, 0);
	assert_near(segment_distance(s, (struct point){4, -3}), 5, 0);    /* abeam of the start */
	assert_near(segment_distance(s, (struct point){6, 8}), 5, 1e-12); /* past the end */
	assert_near(segment_distance(s, (struct point){-3, -4}), 5, 0);   /* before the start */
	struct point foot = segment_nearest(s, (struct point){1.5 - 4, 2 + 3});
	assert_near(foot.x, 1.5, 1e-12);
	assert_near(foot.y, 2, 1e-12);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_inscribed),
		cmocka_unit_test(test_no_more_sides_than_needed),
		cmocka_unit_test(test_alike_in_all_octants),
		cmocka_unit_test(test_pairs),
		cmocka_unit_test(test_nearest),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

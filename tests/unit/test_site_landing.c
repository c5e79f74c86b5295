/* Where the ends of cracks and joints come to lie: reach 25 throughout. */
#include "support/program.h"

#include "base/arena.h"
#include "geometry/foot.h"
#include "site/landing.h"

enum { POINTS_MOST = 4 };
static const double REACH = 25;

static struct region square_room(struct arena *arena)
{
	struct point corners[] = {{0, 0}, {1000, 0}, {1000, 1000}, {0, 1000}};
	return region_from_ring(arena, (struct ring){corners, 4});
}

struct on_border {
	const char *what;
	struct point points[POINTS_MOST];
	size_t count;
	struct point start, end;
	int start_fixed, end_fixed;
};

static const struct on_border ON_BORDER[] = {
	{"far from walls", {{100, 100}, {500, 500}}, 2, {100, 100}, {500, 500}, 0, 0},
	{"just inside reach", {{25, 300}, {500, 975}}, 2, {0, 300}, {500, 1000}, 1, 1},
	{"just outside reach",
         {{25.001, 300}, {500, 974.999}},
         2,
         {25.001, 300},
         {500, 974.999},
         0,
         0},
	{"from outside", {{-20, 300}, {500, 1020}}, 2, {0, 300}, {500, 1000}, 1, 1},
	{"into a corner", {{-20, -15}, {500, 500}}, 2, {0, 0}, {500, 500}, 1, 0},
	{"on the wall already", {{0, 300}, {500, 500}}, 2, {0, 300}, {500, 500}, 1, 0},
	{"square to the wall, all within reach",
         {{5, 300}, {20, 300}},
         2,
         {0, 300},
         {20, 300},
         1,
         0},
	{"along the wall, all within reach", {{5, 300}, {6, 310}}, 2, {0, 300}, {0, 310}, 1, 1},
	{"closed", {{10, 10}, {500, 10}, {500, 500}, {10, 10}}, 4, {10, 10}, {10, 10}, 1, 1},
};

static void test_on_border(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct region room = square_room(arena);
	for (size_t k = 0; k < sizeof ON_BORDER / sizeof *ON_BORDER; k++) {
		const struct on_border *c = &ON_BORDER[k];
		struct ring copy = ring_copy(arena, c->points, c->count);
		struct landing landing = landing_from_line((struct line){copy.points, copy.count});
		landing_on_region(&landing, &room, REACH);
		if (landing.start_fixed != c->start_fixed || landing.end_fixed != c->end_fixed)
			fail_msg("%s: fixed %d %d", c->what, landing.start_fixed,
			         landing.end_fixed);
		struct point start = copy.points[0], end = copy.points[c->count - 1];
		if (point_distance(start, c->start) > 1e-9 || point_distance(end, c->end) > 1e-9)
			fail_msg("%s: (%g,%g) to (%g,%g)", c->what, start.x, start.y, end.x, end.y);
	}
	arena_free(arena);
}

static struct landing straight(struct arena *arena, double x0, double y0, double x1, double y1)
{
	const struct point ends[] = {{x0, y0}, {x1, y1}};
	struct ring copy = ring_copy(arena, ends, 2);
	return landing_from_line((struct line){copy.points, 2});
}

static void test_on_nearest_target(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct landing targets[] = {straight(arena, 0, 0, 0, 1000),
	                            straight(arena, 30, 0, 30, 1000)};
	struct landing crack = straight(arena, 12, 500, 500, 700);
	landing_on_others(arena, &crack, 1, targets, 2, REACH);
	assert_true(crack.start_fixed && !crack.end_fixed);
	assert_near(crack.line.points[0].x, 0, 0);
	crack = straight(arena, 18, 500, 500, 700);
	landing_on_others(arena, &crack, 1, targets, 2, REACH);
	assert_near(crack.line.points[0].x, 30, 0);
	crack = straight(arena, 15, 500, 500, 700);
	landing_on_others(arena, &crack, 1, targets, 2, REACH);
	assert_near(crack.line.points[0].x, 0, 0); /* the first of two as near */
	arena_free(arena);
}

/* Ends that look for each other meet, and do not change places. */
static void test_two_ends_meet(void **state)
{
	(void)state;
	const struct point nudges[] = {{0, 0}, {10, 0}, {-10, 0}, {0, 14}, {12, -12}, {-12, 12}};
	struct arena *arena = arena_new();
	for (size_t k = 0; k < sizeof nudges / sizeof *nudges; k++) {
		struct point n = nudges[k];
		struct landing cracks[] = {
			straight(arena, 0, 0, 500, 500),
			straight(arena, 500 + n.x, 500 + n.y, 900, 300),
		};
		landing_on_others(arena, cracks, 2, cracks, 2, REACH);
		struct line first = cracks[0].line, second = cracks[1].line;
		double apart = fmin(foot_on_line(second, first.points[1]).distance,
		                    foot_on_line(first, second.points[0]).distance);
		assert_near(apart, 0, 1e-9);
		assert_near(point_distance(first.points[1], (struct point){500, 500}), 0, REACH);
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_on_border),
		cmocka_unit_test(test_on_nearest_target),
		cmocka_unit_test(test_two_ends_meet),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

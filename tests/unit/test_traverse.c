/* Printed traverses and areas of docs/sources.md: TV1 to TV7, AR1 to AR4. */
#include "support/program.h"

#include <math.h>
#include <stdio.h>

#include "geometry/region.h"
#include "site/traverse.h"

enum { LEGS_MOST = 5 };

static double deg(double degrees, double minutes, double seconds)
{
	return degrees + minutes / 60 + seconds / 3600;
}

static void assert_prints(double got, double expected, double tolerance, const char *what)
{
	if (fabs(got - expected) <= tolerance)
		return;
	fail_msg("%s: %.6f where %.6f was expected", what, got, expected);
}

struct leg {
	double azimuth[3]; /* degrees, minutes, seconds from north, clockwise */
	double length;
	double north, east; /* after closing */
};

struct printed_traverse {
	const char *id;
	struct leg legs[LEGS_MOST];
	size_t count;
	double north_sum, east_sum, sum_tolerance;
	double perimeter, tolerance;
};

static const struct printed_traverse TRAVERSES[] = {
	{"TV1",
         {{{26, 10, 0}, 285.10, 255.96, 125.66},
          {{104, 35, 0}, 610.45, -153.52, 590.65},
          {{195, 30, 0}, 720.48, -694.07, -192.69},
          {{358, 18, 0}, 203.00, 202.97, -6.07},
          {{306, 54, 0}, 647.02, 388.66, -517.55}},
         5,
         -0.7043,
         0.5332,
         0.0001,
         2466.05,
         0.011},
	{"TV2",
         {{{248, 5, 35}, 472.68, -176.386, -438.574},
          {{340, 14, 0}, 216.13, 203.382, -73.105},
          {{45, 55, 20}, 276.52, 192.340, 198.635},
          {{125, 0, 45}, 382.24, -219.336, 313.044}},
         4,
         0.083,
         0.075,
         0.001,
         1347.57,
         0.0011},
	{"TV3",
         {{{226, 54, 23}, 639.15, -436.631, -466.761},
          {{0, 0, 0}, 523.69, 523.715, -0.023},
          {{235, 2, 29}, 409.54, -234.640, -335.663},
          {{79, 35, 2}, 815.93, 147.556, 802.447}},
         4,
         -0.115,
         0.107,
         0.001,
         2388.31,
         0.0011},
	{"TV4",
         {{{144, 0, 0}, 379.25, -306.862, 222.954},
          {{255, 23, 18}, 408.90, -103.197, -395.637},
          {{345, 16, 31}, 298.65, 288.809, -75.881},
          {{63, 59, 20}, 276.55, 121.250, 248.564}},
         4,
         0.1501,
         -0.1292,
         0.0001,
         1363.35,
         0.0011},
	{"TV5",
         {{{0, 42, 0}, 372.222, 372.425, 4.922},
          {{94, 3, 0}, 164.988, -11.551, 164.742},
          {{183, 4, 0}, 242.438, -241.94, -12.726},
          {{232, 51, 0}, 197.145, -118.934, -156.938}},
         4,
         -0.606,
         -0.983,
         0.001,
         976.793,
         0.0016},
	{"TV6",
         {{{76, 0, 0}, 80.40, 19.3653, 78.1055},
          {{144, 0, 0}, 46.30, -37.5063, 27.2678},
          {{241, 0, 0}, 72.80, -35.3716, -63.5874},
          {{322, 0, 0}, 68.00, 53.5126, -41.7859}},
         4,
         0.285,
         -0.311,
         0.0015,
         267.5,
         0.0015},
};

static struct traverse_closing close_printed(struct arena *arena, const struct printed_traverse *t)
{
	double lengths[LEGS_MOST], headings[LEGS_MOST];
	for (size_t i = 0; i < t->count; i++) {
		const struct leg *leg = &t->legs[i];
		lengths[i] = leg->length;
		headings[i] = 90 - deg(leg->azimuth[0], leg->azimuth[1], leg->azimuth[2]);
	}
	const struct traverse run = {{0, 0}, lengths, headings, t->count};
	return traverse_close(arena, &run);
}

static void test_printed_traverses(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (size_t k = 0; k < sizeof TRAVERSES / sizeof *TRAVERSES; k++) {
		const struct printed_traverse *t = &TRAVERSES[k];
		struct traverse_closing closing = close_printed(arena, t);
		assert_prints(closing.perimeter, t->perimeter, 1e-9, t->id);
		assert_prints(closing.error.y, t->north_sum, t->sum_tolerance, t->id);
		assert_prints(closing.error.x, t->east_sum, t->sum_tolerance, t->id);
		for (size_t i = 0; i < t->count; i++) {
			struct point to = closing.corners[(i + 1) % t->count];
			struct point leg = point_sub(to, closing.corners[i]);
			assert_prints(leg.y, t->legs[i].north, t->tolerance, t->id);
			assert_prints(leg.x, t->legs[i].east, t->tolerance, t->id);
		}
	}
	arena_free(arena);
}

/* TV7: azimuths carried round by interior angles; the last one misses the first by 1'40". */
static void test_headings_from_turns(void **state)
{
	(void)state;
	const double interior[] = {deg(106, 11, 20), deg(59, 44, 40), deg(254, 16, 20),
	                           deg(38, 17, 20), deg(81, 28, 40)};
	const double azimuths[] = {deg(62, 0, 0),    deg(135, 48, 40), deg(256, 4, 0),
	                           deg(181, 47, 40), deg(323, 30, 20), deg(62, 1, 40)};
	enum { COUNT = 6 };
	double turns[COUNT] = {0};
	for (size_t i = 0; i + 1 < COUNT; i++)
		turns[i] = interior[i] - 180; /* clockwise round: a left turn is negative */
	struct arena *arena = arena_new();
	double *headings = traverse_headings(arena, 90 - azimuths[0], turns, COUNT);
	for (size_t i = 0; i < COUNT; i++) {
		double azimuth = fmod(90 - headings[i] + 720, 360);
		assert_prints(azimuth, azimuths[i], 1e-9, "TV7");
	}
	arena_free(arena);
}

/* Whole numbers of nanometres in, whole numbers out: nothing is lost round a square room. */
static void test_square_room_closes_exactly(void **state)
{
	(void)state;
	const double lengths[] = {3822.7e6, 2438.4e6 + 396875, 3822.7e6, 2438.4e6 + 396875};
	const double turns[] = {90, 90, 90, 90};
	struct arena *arena = arena_new();
	double *headings = traverse_headings(arena, 270, turns, 4);
	const struct traverse run = {{17, -3}, lengths, headings, 4};
	struct traverse_closing closing = traverse_close(arena, &run);
	assert_true(closing.error_length == 0);
	assert_true(closing.corners[2].x == 17 + lengths[1]);
	assert_true(closing.corners[2].y == -3 - lengths[0]);
	arena_free(arena);
}

/* ---- lengths across ---- */

enum { CORNERS_MOST = 4, TIES_MOST = 2 };

/* Shapes fixed by lengths alone; the headings given are well off. Points are measured from
 * the first one, with the first leg as it lies. */
struct braced {
	const char *id;
	struct point corners[CORNERS_MOST];
	size_t count;
	double lengths[CORNERS_MOST];
	struct traverse_tie ties[TIES_MOST];
	size_t tie_count;
	double off_deg[CORNERS_MOST]; /* added to the true headings */
	double tolerance, misfit_most;
};

/* Trilateration of docs/sources.md: the known points and the point tied to them. */
static const struct braced BRACED[] = {
	{"TR1",
         {{-0.1, -0.2}, {2.0, 1.0}, {0.055856, 1.793918}},
         3,
         {2.418677, 2.1, 2.0},
         {{0}},
         0,
         {0, 8, -8},
         2e-6,
         1e-6},
	{"TR2",
         {{1, 1}, {2, 2}, {2, 3}, {1, 2}},
         4,
         {1.41421356, 1, 1.414, 1},
         {{0, 2, 2.236}, {1, 3, 1}},
         2,
         {0, 5, -5, 9},
         0.001,
         0.0005},
	{"TR4",
         {{973.23, -123.221}, {12.345, 892.234}, {-176.92, 0}, {-12.123, -98.001}},
         4,
         {1398.016, 912.087, 191.7348, 985.6757},
         {{1, 3, 990.537}, {0, 2, 1156.7318}},
         2,
         {0, 4, -6, 3},
         0.01,
         0.005},
	{"TR5",
         {{2000, 1000}, {1450.051, 836.445}, {1811.082, 480.951}, {2435.613, 463.846}},
         4,
         {573.754, 506.6748, 624.7652, 690.811},
         {{0, 2, 552.360}, {1, 3, 1053.642}},
         2,
         {0, 7, 7, -7},
         0.002,
         0.001},
};

static double heading_deg(struct point from, struct point to)
{
	struct point leg = point_sub(to, from);
	return atan2(leg.y, leg.x) * 180 / 3.14159265358979323846;
}

static void test_ties_fix_the_shape(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (size_t k = 0; k < sizeof BRACED / sizeof *BRACED; k++) {
		const struct braced *b = &BRACED[k];
		double headings[CORNERS_MOST];
		for (size_t i = 0; i < b->count; i++)
			headings[i] = b->off_deg[i] +
			              heading_deg(b->corners[i], b->corners[(i + 1) % b->count]);
		const struct traverse run = {b->corners[0], b->lengths, headings, b->count};
		struct traverse_closing fitted =
			traverse_adjust(arena, &run, b->ties, b->tie_count);
		for (size_t i = 0; i < b->count; i++) {
			assert_prints(fitted.corners[i].x, b->corners[i].x, b->tolerance, b->id);
			assert_prints(fitted.corners[i].y, b->corners[i].y, b->tolerance, b->id);
		}
		assert_true(fitted.misfit <= b->misfit_most);
	}
	arena_free(arena);
}

/* SQ3: sides 6 and 4 at 89.9 degrees, taped as if square, with one diagonal. */
static void test_a_diagonal_leans_the_room(void **state)
{
	(void)state;
	const double lengths[] = {6, 4, 6, 4}, headings[] = {0, 90, 180, 270};
	const struct traverse run = {{0, 0}, lengths, headings, 4};
	const struct traverse_tie tie = {0, 2, 7.216909};
	struct arena *arena = arena_new();
	struct traverse_closing fitted = traverse_adjust(arena, &run, &tie, 1);
	assert_prints(point_distance(fitted.corners[1], fitted.corners[3]), 7.205291, 1e-6, "SQ3");
	assert_prints(fitted.corners[3].x, 0.00698, 1e-5, "SQ3");
	assert_prints(fitted.corners[1].y, 0, 0, "SQ3");
	assert_prints(fitted.misfit, 0, 1e-12, "SQ3");
	arena_free(arena);
}

/* TR6: a triangle whose sides cannot meet keeps a misfit; nothing is invented to hide it. */
static void test_lengths_that_cannot_meet(void **state)
{
	(void)state;
	const double lengths[] = {9, 3, 3}, headings[] = {0, 160, 200};
	const struct traverse run = {{0, 0}, lengths, headings, 3};
	struct arena *arena = arena_new();
	struct traverse_closing fitted = traverse_adjust(arena, &run, NULL, 0);
	assert_prints(fitted.misfit, 1, 1e-3, "TR6");
	arena_free(arena);
}

/* Without ties the lengths of a square room leave its lean free: it stays square. */
static void test_headings_decide_what_is_free(void **state)
{
	(void)state;
	const double lengths[] = {6000, 4000, 6004, 4000}, headings[] = {0, 90, 180, 270};
	const struct traverse run = {{0, 0}, lengths, headings, 4};
	struct arena *arena = arena_new();
	struct traverse_closing fitted = traverse_adjust(arena, &run, NULL, 0);
	assert_prints(fitted.corners[1].x, 6000, 3, "east");
	assert_prints(fitted.corners[3].x, 0, 3, "lean");
	assert_prints(fitted.corners[2].y, 4000, 1e-2, "north");
	arena_free(arena);
}

struct printed_area {
	const char *id;
	struct point points[LEGS_MOST]; /* north, east */
	size_t count;
	double area, tolerance;
};

static const struct printed_area AREAS[] = {
	{"AR1",
         {{406.31, 1259.97},
          {235.12, 1489.47},
          {65.81, 1126.40},
          {317.89, 942.04},
          {675.32, 1282.54}},
         5,
         140493.107,
         0.001},
	{"AR2",
         {{1541.207, 2215.890},
          {1373.915, 2336.574},
          {1299.818, 2350.205},
          {1343.189, 2523.212},
          {1569.360, 2359.080}},
         5,
         38965.816,
         0.001},
	{"AR3",
         {{600.000, 1000.000}, {254.542, 1209.288}, {97.543, 566.876}, {470.303, 397.969}},
         4,
         250552.089,
         0.001},
	{"AR4", {{0, 0}, {0, 300}, {200, 300}, {200, 0}}, 4, 60000, 0},
	/* TV2 after closing, printed to the foot. */
	{"TV2",
         {{500.000, 2000.000}, {323.614, 1561.426}, {526.996, 1488.321}, {719.336, 1686.956}},
         4,
         102935.7,
         0.5},
};

static void test_printed_areas(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (size_t k = 0; k < sizeof AREAS / sizeof *AREAS; k++) {
		const struct printed_area *a = &AREAS[k];
		struct ring ring = {ARENA_ARRAY(arena, struct point, a->count), a->count};
		for (size_t i = 0; i < a->count; i++)
			ring.points[i] = (struct point){a->points[i].y, a->points[i].x};
		assert_prints(fabs(ring_area(ring)), a->area, a->tolerance, a->id);
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_printed_traverses),
		cmocka_unit_test(test_headings_from_turns),
		cmocka_unit_test(test_square_room_closes_exactly),
		cmocka_unit_test(test_ties_fix_the_shape),
		cmocka_unit_test(test_a_diagonal_leans_the_room),
		cmocka_unit_test(test_lengths_that_cannot_meet),
		cmocka_unit_test(test_headings_decide_what_is_free),
		cmocka_unit_test(test_printed_areas),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

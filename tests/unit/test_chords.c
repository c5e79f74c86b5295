/* Runs that are too long, worked by hand: where each must be cut. */
#include "support/program.h"

#include "layout/chords.h"

static struct polygon polygon_of(struct point *points, size_t count)
{
	return (struct polygon){.outline = {points, count}};
}

static void assert_window(const struct chords *chords, size_t k, double low, double high)
{
	assert_near(chords->windows[k].low, low, 1e-9);
	assert_near(chords->windows[k].high, high, 1e-9);
}

/* 10 by 4, limit 6: every 6 from 0..4 on must hold a cut, which 4..6 all do. Across: none. */
static void test_rectangle(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct point points[] = {{0, 0}, {10, 0}, {10, 4}, {0, 4}};
	struct polygon polygon = polygon_of(points, 4);
	struct chords chords = chords_over(arena, &polygon, true, 6);
	assert_int_equal(chords.count, 1);
	assert_window(&chords, 0, 0, 4);
	assert_int_equal(chords_over(arena, &polygon, false, 6).count, 0);
	assert_int_equal(chords_over(arena, &polygon, true, 10).count, 0);
	double start;
	assert_true(chords_next_window(&chords, -INFINITY, &start));
	assert_near(start, 0, 1e-9);
	assert_true(chords_next_window(&chords, 3, &start));
	assert_near(start, 3, 1e-9);
	assert_false(chords_next_window(&chords, 4, &start));
	arena_free(arena);
}

/* A trapezoid 4 long at the top, 10 at the bottom, limit 7: it is 7 long at half its height,
 * where it runs from 1.5 to 8.5; below that windows begin from 0 to 3. */
static void test_trapezoid(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct point points[] = {{0, 0}, {10, 0}, {7, 6}, {3, 6}};
	struct polygon polygon = polygon_of(points, 4);
	struct chords chords = chords_over(arena, &polygon, true, 7);
	assert_int_equal(chords.count, 1);
	assert_window(&chords, 0, 0, 3);
	/* Along y: 6 high from 3 to 7; limit 5: windows from 0 to 1. */
	chords = chords_over(arena, &polygon, false, 5);
	assert_int_equal(chords.count, 1);
	assert_window(&chords, 0, 0, 1);
	arena_free(arena);
}

/* 20 by 6 with a hole from 8 to 10 and 2 to 4, limit 9: beside the hole 20 are one run,
 * windows 0..11; the runs at its height are 8 and 10 long: the second from 10 to 11. */
static void test_hole(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct point points[] = {{0, 0}, {20, 0}, {20, 6}, {0, 6}};
	struct point hole[] = {{8, 2}, {8, 4}, {10, 4}, {10, 2}};
	struct ring holes[] = {{hole, 4}};
	struct polygon polygon = {.outline = {points, 4}, .holes = holes, .hole_count = 1};
	struct chords chords = chords_over(arena, &polygon, true, 9);
	assert_int_equal(chords.count, 1);
	assert_window(&chords, 0, 0, 11);
	/* Along y: 6 beside the hole, 2 above and below it; limit 5: windows 0..1. */
	chords = chords_over(arena, &polygon, false, 5);
	assert_int_equal(chords.count, 1);
	assert_window(&chords, 0, 0, 1);
	arena_free(arena);
}

/* A Z of two bars that overlap from 8 to 9, 9 and 12 long, limit 7: a window each. */
static void test_two_windows(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct point points[] = {{0, 0}, {9, 0}, {9, 4}, {20, 4}, {20, 8}, {8, 8}, {8, 4}, {0, 4}};
	struct polygon polygon = polygon_of(points, 8);
	struct chords chords = chords_over(arena, &polygon, true, 7);
	assert_int_equal(chords.count, 2);
	assert_window(&chords, 0, 0, 2);
	assert_window(&chords, 1, 8, 13);
	double start;
	assert_true(chords_next_window(&chords, 2, &start));
	assert_near(start, 8, 1e-9);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_rectangle),
		cmocka_unit_test(test_trapezoid),
		cmocka_unit_test(test_hole),
		cmocka_unit_test(test_two_windows),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

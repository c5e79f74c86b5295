/* Paths cut to a box: what is left of lines and areas, and what a clipped list takes in. */
#include "support/program.h"

#include <math.h>

#include "drawing/clip.h"

static const struct paper_box BOX = {10, 10, 30, 20};

/* Even-odd area of closed lines that do not cross each other; holes count against it. */
static double area_of(struct paper_path path)
{
	double sum = 0;
	for (size_t i = 0; i < path.count; i++) {
		struct paper_line line = path.lines[i];
		for (size_t k = 0; k < line.count; k++) {
			struct paper_point a = line.points[k],
					   b = line.points[(k + 1) % line.count];
			sum += (a.x * b.y - b.x * a.y) / 2;
		}
	}
	return fabs(sum);
}

static double length_of(struct paper_path path)
{
	double sum = 0;
	for (size_t i = 0; i < path.count; i++) {
		struct paper_line line = path.lines[i];
		size_t last = line.kind == PAPER_CLOSED ? line.count : line.count - 1;
		for (size_t k = 0; k < last; k++)
			sum += paper_distance(line.points[k], line.points[(k + 1) % line.count]);
	}
	return sum;
}

static struct paper_path closed(struct arena *arena, const struct paper_point *points, size_t count)
{
	return paper_path_line(arena, points, count, PAPER_CLOSED);
}

static void test_lines_are_cut_at_the_edge(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct paper_path line = paper_path_segment(arena, paper_at(0, 15), paper_at(100, 15));
	struct paper_path cut = clip_stroke(arena, line, BOX);
	assert_int_equal(cut.count, 1);
	assert_near(cut.lines[0].points[0].x, 10, 1e-9);
	assert_near(cut.lines[0].points[1].x, 30, 1e-9);
	struct paper_path away = paper_path_segment(arena, paper_at(0, 5), paper_at(100, 5));
	assert_int_equal(clip_stroke(arena, away, BOX).count, 0);
	arena_free(arena);
}

/* A zigzag that leaves and comes back is in parts, and nothing joins them at the edge. */
static void test_a_line_that_comes_back_is_in_parts(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct paper_point points[] = {{12, 12}, {12, 40}, {16, 40}, {16, 12}};
	struct paper_path line = paper_path_line(arena, points, 4, PAPER_OPEN);
	struct paper_path cut = clip_stroke(arena, line, BOX);
	assert_int_equal(cut.count, 2);
	assert_near(length_of(cut), 16, 1e-9);
	arena_free(arena);
}

static void test_a_closed_line_inside_stays_closed(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct paper_path inside = paper_path_box(arena, (struct paper_box){12, 12, 18, 18});
	struct paper_path cut = clip_stroke(arena, inside, BOX);
	assert_int_equal(cut.count, 1);
	assert_int_equal(cut.lines[0].kind, PAPER_CLOSED);
	struct paper_path over = paper_path_box(arena, (struct paper_box){12, 12, 40, 40});
	cut = clip_stroke(arena, over, BOX);
	for (size_t i = 0; i < cut.count; i++)
		assert_int_equal(cut.lines[i].kind, PAPER_OPEN);
	assert_near(length_of(cut), 18 + 8, 1e-9);
	arena_free(arena);
}

static void test_areas_keep_what_is_inside(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct paper_point diamond[] = {{20, 0}, {35, 15}, {20, 30}, {5, 15}};
	struct paper_path cut = clip_area(arena, closed(arena, diamond, 4), BOX);
	/* The diamond of 450 less a triangle of 10 by 10 over and under, 5 by 5 at the sides. */
	assert_near(area_of(cut), 450 - 2 * 100 - 2 * 25, 1e-9);
	struct paper_path all = paper_path_box(arena, (struct paper_box){0, 0, 100, 100});
	assert_near(area_of(clip_area(arena, all, BOX)), 200, 1e-9);
	struct paper_path away = paper_path_box(arena, (struct paper_box){40, 0, 100, 100});
	assert_int_equal(clip_area(arena, away, BOX).count, 0);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_lines_are_cut_at_the_edge),
		cmocka_unit_test(test_a_line_that_comes_back_is_in_parts),
		cmocka_unit_test(test_a_closed_line_inside_stays_closed),
		cmocka_unit_test(test_areas_keep_what_is_inside),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

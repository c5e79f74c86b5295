#include <stdlib.h>
#include <string.h>

#include "support/ink.h"
#include "support/program.h"

#include "drawing/hatch.h"
#include "geometry/region.h"

static struct paper_path box_path(struct arena *arena, double x0, double y0, double x1, double y1)
{
	return paper_path_box(arena, (struct paper_box){x0, y0, x1, y1});
}

static double length_of(struct paper_path path)
{
	double sum = 0;
	for (size_t i = 0; i < path.count; i++)
		for (size_t j = 0; j + 1 < path.lines[i].count; j++)
			sum += paper_distance(path.lines[i].points[j], path.lines[i].points[j + 1]);
	return sum;
}

/* Rows at multiples of the pitch from the sheet's origin: y = 2, 4 ... 20. */
static void test_rows_are_anchored_to_the_sheet(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct area_style level = {.hatch = HATCH_LINES, .width = 0.25, .pitch = 2};
	struct paper_path lines = hatch_cut(arena, &level, box_path(arena, 10, 1, 40, 21));
	assert_int_equal(lines.count, 10);
	for (size_t i = 0; i < lines.count; i++) {
		double y = lines.lines[i].points[0].y;
		assert_near(y / 2, round(y / 2), 1e-9);
		assert_near(fabs(lines.lines[i].points[1].x - lines.lines[i].points[0].x), 30,
		            1e-9);
	}
	arena_free(arena);
}

/* Lines a pitch apart have area / pitch of length, at any angle, as area goes to large. */
static void test_length_follows_area(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct paper_path ring = box_path(arena, 3, 5, 203, 155);
	struct paper_path hole = box_path(arena, 50, 50, 100, 100);
	struct paper_path area = paper_path_join(arena, ring, hole);
	double expected = (200 * 150 - 50 * 50) / 2.0;
	for (int angle = 0; angle < 180; angle += 15) {
		const struct area_style style = {.hatch = HATCH_LINES,
		                                 .width = 0.25,
		                                 .pitch = 2,
		                                 .angle_deg = angle};
		assert_near(length_of(hatch_cut(arena, &style, area)) / expected, 1, 0.01);
	}
	const struct area_style cross = {.hatch = HATCH_CROSS,
	                                 .width = 0.25,
	                                 .pitch = 2,
	                                 .angle_deg = 45};
	assert_near(length_of(hatch_cut(arena, &cross, area)) / expected, 2, 0.02);
	const struct area_style dashes = {.hatch = HATCH_DASHES,
	                                  .width = 0.25,
	                                  .pitch = 2,
	                                  .angle_deg = 30,
	                                  .dash = 3,
	                                  .gap = 1};
	assert_near(length_of(hatch_cut(arena, &dashes, area)) / expected, 0.75, 0.01);
	const struct area_style dots = {.hatch = HATCH_DOTS, .width = 0.5, .pitch = 2.5};
	assert_near((double)hatch_cut(arena, &dots, area).count, expected * 2 / 6.25, 200);
	arena_free(arena);
}

static void test_nothing_outside_the_area(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct paper_path circle = paper_path_circle(arena, paper_at(50, 50), 20);
	for (int kind = HATCH_LINES; kind < HATCH_KIND_COUNT; kind++) {
		const struct area_style style = {.hatch = (enum hatch_kind)kind,
		                                 .width = 0.5,
		                                 .pitch = 4,
		                                 .angle_deg = 30,
		                                 .dash = 2,
		                                 .gap = 2};
		struct paper_path lines = hatch_cut(arena, &style, circle);
		assert_true(lines.count >= 8);
		for (size_t i = 0; i < lines.count; i++)
			for (size_t j = 0; j < lines.lines[i].count; j++)
				assert_true(paper_distance(lines.lines[i].points[j],
				                           paper_at(50, 50)) < 20.1);
	}
	arena_free(arena);
}

/* A hatch says its lines: as many dark runs across the rendered swatch as strokes cut
 * there, at 300 dpi and half of it. */
static int strokes_across(const struct list *list, double y, double x0, double x1)
{
	int count = 0;
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *op = &list->ops.items[i];
		if (op->kind != OP_HATCH)
			continue;
		for (size_t j = 0; j < op->path.count; j++) {
			struct paper_point a = op->path.lines[j].points[0];
			struct paper_point b = op->path.lines[j].points[1];
			if ((a.y > y) == (b.y > y))
				continue;
			double x = a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y);
			count += x > x0 && x < x1;
		}
	}
	return count;
}

static void check_swatch(const char *style, enum area area)
{
	struct ink ink = ink_sheet(style, 100, 40);
	if (ink.style.areas[area].hatch == HATCH_LINES) {
		const double y = 20.03, x0 = 12, x1 = 88;
		list_area(ink.list, LAYER_SHEET, area, NULL, box_path(ink.arena, 10, 10, 90, 30));
		list_finish(ink.list, (struct paper_box){0, 0, 100, 40});
		int expected = strokes_across(ink.list, y, x0, x1);
		assert_true(expected > 10);
		for (int dpi = 300; dpi >= 150; dpi -= 150) {
			struct pixels pixels = ink_pixels(&ink, dpi);
			int runs = pixels_runs(&pixels, (int)(y * dpi / 25.4),
			                       (int)(x0 * dpi / 25.4), (int)(x1 * dpi / 25.4));
			/* One stroke at each end may be cut by the ends of the scan. */
			assert_in_range(runs, expected - 1, expected + 1);
		}
	}
	ink_release(&ink);
}

static void test_swatches_keep_their_strokes(void **state)
{
	(void)state;
	static const char *const styles[] = {"paper", "copier", "screen"};
	for (int i = 0; i < 3; i++)
		for (int area = 0; area < AREA_COUNT; area++)
			check_swatch(styles[i], (enum area)area);
}

/* Hatches of one legend differ in kind, or by 30 degrees, or in tone (R-D12). */
static void test_hatches_are_told_apart(void **state)
{
	(void)state;
	static const char *const styles[] = {"paper", "copier", "screen"};
	static const enum area plan[] = {AREA_HOLD,  AREA_STRIP,    AREA_STRIP_PENDING,
	                                 AREA_COVER, AREA_OBSTACLE, AREA_NOT_TILED};
	enum { COUNT = sizeof plan / sizeof *plan };
	for (int s = 0; s < 3; s++) {
		struct ink ink = ink_sheet(styles[s], 10, 10);
		for (int i = 0; i < COUNT; i++)
			for (int j = 0; j < i; j++) {
				const struct area_style *a = &ink.style.areas[plan[i]];
				const struct area_style *b = &ink.style.areas[plan[j]];
				int turn = abs(a->angle_deg - b->angle_deg) % 180;
				turn = turn > 90 ? 180 - turn : turn;
				assert_true(a->hatch != b->hatch || turn >= 30 ||
				            fabs(a->width / a->pitch - b->width / b->pitch) >=
				                    0.08);
			}
		ink_release(&ink);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_rows_are_anchored_to_the_sheet),
		cmocka_unit_test(test_length_follows_area),
		cmocka_unit_test(test_nothing_outside_the_area),
		cmocka_unit_test(test_swatches_keep_their_strokes),
		cmocka_unit_test(test_hatches_are_told_apart),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

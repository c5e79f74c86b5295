/* The rules of legibility beside what their source works out (docs/sources.md R-D12): a set of
 * hatches with their tones, and how near joints of tile may be. */
#include "drawing/hatch.h"
#include "sheets/tile_lines.h"
#include "support/ink.h"
#include "support/program.h"
#include "support/sample_floor.h"

enum { FULL = 300 };

/* X13: the set of hatches that the source works out, drawn by this hatch, has the tones that
 * it prints. */
static void test_worked_example(void **state)
{
	(void)state;
	static const struct {
		struct area_style style;
		double tone;
	} set[] = {
		{{.hatch = HATCH_LINES, .angle_deg = 45, .width = 0.25, .pitch = 2}, 0.125},
		{{.hatch = HATCH_LINES, .angle_deg = 135, .width = 0.25, .pitch = 3}, 0.083},
		{{.hatch = HATCH_CROSS, .angle_deg = 45, .width = 0.25, .pitch = 2.5}, 0.19},
		{{.hatch = HATCH_DASHES, .width = 0.25, .pitch = 2, .dash = 4, .gap = 1.5}, 0.09},
		{{.hatch = HATCH_DOTS, .width = 0.5, .pitch = 2}, 0.049},
		{{.hatch = HATCH_PAIRS, .angle_deg = 45, .width = 0.25, .pitch = 5, .gap = 1.65},
	         0.10},
	};
	const struct paper_box box = {5, 5, 95, 95};
	for (size_t i = 0; i < sizeof set / sizeof *set; i++) {
		struct ink ink = ink_sheet("copier", 100, 100);
		struct style *style = ARENA_NEW(ink.arena, struct style);
		*style = ink.style;
		style->areas[AREA_HOLD] = set[i].style;
		ink.list = list_new(ink.arena, style, ink.text, 100, 100);
		list_area(ink.list, LAYER_SHEET, AREA_HOLD, NULL, paper_path_box(ink.arena, box));
		list_finish(ink.list, (struct paper_box){0, 0, 100, 100});
		struct pixels pixels = ink_pixels(&ink, FULL);
		assert_near(pixels_tone(&pixels, FULL, paper_box_grown(box, -5)) / set[i].tone, 1,
		            0.03);
		ink_release(&ink);
	}
}

/* X05: joints of tile that would be nearer than 1 mm on paper are thinned, whatever the tile:
 * at 1:50 a mosaic of 25 mm has no two lines nearer than that. */
static double least_apart(struct arena *arena, const struct sample_floor *floor, double least)
{
	const struct tiling *tiling = floor->placed->lays[0].tiling;
	double apart = INFINITY;
	size_t count;
	struct line *lines = tile_lines(arena, tiling, &tiling->panels[0], least, &count);
	for (size_t i = 0; i < count; i++)
		for (size_t k = 0; k < i; k++) {
			struct point *a = lines[i].points, *b = lines[k].points;
			bool are_level = a[0].y == a[1].y && b[0].y == b[1].y;
			bool are_upright = a[0].x == a[1].x && b[0].x == b[1].x;
			double off = fabs(are_level ? a[0].y - b[0].y : a[0].x - b[0].x);
			double beside = are_level ? fmin(a[1].x, b[1].x) - fmax(a[0].x, b[0].x)
			                          : fmin(a[1].y, b[1].y) - fmax(a[0].y, b[0].y);
			if ((are_level || are_upright) && off > 0.001 && beside > 0.001)
				apart = fmin(apart, off);
		}
	return apart;
}

static void test_tile_joints_are_thinned(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct sample_floor floor = sample_floor_make(arena);
	double module = least_apart(arena, &floor, 0);
	for (double least = module / 2; least < 6 * module; least += module / 3) {
		double apart = least_apart(arena, &floor, least);
		assert_true(apart >= least - 0.002);
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_worked_example),
		cmocka_unit_test(test_tile_joints_are_thinned),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

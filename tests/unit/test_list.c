#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "support/ink.h"

static const struct paper_box sheet = {0, 0, 120, 60};

/* The box of a text is the box of its ink as drawn, level and upright. */
static void test_text_box_is_its_ink(void **state)
{
	(void)state;
	for (int upright = 0; upright <= 1; upright++) {
		struct ink ink = ink_sheet("paper", 120, 60);
		struct paper_box box = list_text_at(
			ink.list, LAYER_NOTES, TEXT_BODY, NULL, paper_at(60, 30),
			(struct text_place){.cap = 5, .align = ALIGN_MIDDLE, .is_upright = upright},
			"Ágjy 12-6");
		list_finish(ink.list, sheet);
		struct pixels pixels = ink_pixels(&ink, 254);
		struct pixel_box dark = pixels_dark(&pixels);
		/* Along the line the box is as wide as the advance: side bearings are clear. */
		double bearing = 0.8, edge = 0.15;
		double slack_x = upright ? edge : bearing, slack_y = upright ? bearing : edge;
		assert_true(dark.x0 / 10.0 >= box.x0 - edge && dark.x0 / 10.0 <= box.x0 + slack_x);
		assert_true(dark.x1 / 10.0 <= box.x1 + edge && dark.x1 / 10.0 >= box.x1 - slack_x);
		assert_true(dark.y0 / 10.0 >= box.y0 - edge && dark.y0 / 10.0 <= box.y0 + slack_y);
		assert_true(dark.y1 / 10.0 <= box.y1 + edge && dark.y1 / 10.0 >= box.y1 - slack_y);
		ink_release(&ink);
	}
}

static void test_alignment(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("paper", 120, 60);
	double width = list_text_width(ink.list, TEXT_BODY, "Slab");
	struct paper_box start = list_text(ink.list, LAYER_NOTES, TEXT_BODY, NULL, paper_at(50, 10),
	                                   ALIGN_START, "Slab");
	struct paper_box end = list_text(ink.list, LAYER_NOTES, TEXT_BODY, NULL, paper_at(50, 10),
	                                 ALIGN_END, "Slab");
	assert_true(fabs(start.x0 - 50) < 0.2 && fabs(end.x1 - 50) < 0.2);
	assert_true(fabs(start.x0 - end.x0 - width) < 1e-9);
	ink_release(&ink);
}

static void test_ops_come_by_layer(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("paper", 120, 60);
	struct paper_path path = paper_path_segment(ink.arena, paper_at(1, 1), paper_at(2, 2));
	list_stroke(ink.list, LAYER_NOTES, PEN_SYMBOL, "a", path);
	list_stroke(ink.list, LAYER_SLAB, PEN_WALL, "b", path);
	list_stroke(ink.list, LAYER_NOTES, PEN_SYMBOL, "c", path);
	list_stroke(ink.list, LAYER_SHEET, PEN_FRAME, NULL, path);
	list_finish(ink.list, sheet);
	assert_int_equal(ink.list->ops.count, 4);
	assert_null(ink.list->ops.items[0].element);
	assert_string_equal(ink.list->ops.items[1].element, "b");
	assert_string_equal(ink.list->ops.items[2].element, "a");
	assert_string_equal(ink.list->ops.items[3].element, "c");
	ink_release(&ink);
}

static void test_list_copies_what_it_is_given(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("paper", 120, 60);
	char element[] = "K1";
	struct paper_point points[] = {{1, 1}, {5, 5}};
	struct paper_line line = {points, 2, PAPER_OPEN};
	list_stroke(ink.list, LAYER_CRACKS, PEN_CRACK, element, (struct paper_path){&line, 1});
	element[0] = 'X';
	points[1].x = 99;
	line.count = 1;
	const struct op *op = &ink.list->ops.items[0];
	assert_string_equal(op->element, "K1");
	assert_int_equal(op->path.lines[0].count, 2);
	assert_true(op->path.lines[0].points[1].x == 5);
	ink_release(&ink);
}

/* Hatch and tile joints stop at a text; a wall under it runs on. */
static void test_text_clears_hatch_and_joints(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("paper", 120, 60);
	struct paper_path level =
		paper_path_segment(ink.arena, paper_at(10, 30), paper_at(110, 30));
	list_area(ink.list, LAYER_HOLDS, AREA_HOLD, "h",
	          paper_path_box(ink.arena, (struct paper_box){10, 10, 110, 50}));
	list_stroke(ink.list, LAYER_TILE, PEN_TILE, "t", level);
	list_stroke(ink.list, LAYER_SLAB, PEN_WALL, "w", level);
	struct paper_box text = list_text(ink.list, LAYER_LABELS, TEXT_TAG, NULL, paper_at(60, 32),
	                                  ALIGN_MIDDLE, "HOLD");
	list_finish(ink.list, sheet);
	struct paper_box clear = paper_box_grown(text, 0.5 * 3.5 - 0.01);
	for (size_t i = 0; i < ink.list->ops.count; i++) {
		const struct op *op = &ink.list->ops.items[i];
		double t0, t1;
		if (op->kind == OP_HATCH)
			for (size_t j = 0; j < op->path.count; j++)
				assert_false(paper_box_clip(clear, op->path.lines[j].points[0],
				                            op->path.lines[j].points[1], &t0, &t1));
		if (op->kind == OP_STROKE && op->role.pen == PEN_TILE)
			assert_int_equal(op->path.count, 2);
		if (op->kind == OP_STROKE && op->role.pen == PEN_WALL)
			assert_int_equal(op->path.count, 1);
	}
	ink_release(&ink);
}

static void test_paragraph(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("paper", 120, 60);
	double y =
		list_paragraph(ink.list, LAYER_NOTES, TEXT_BODY, paper_at(10, 10), 50,
	                       "Stop and call when the room differs by more than a quarter inch.");
	struct paper_box box = list_extents(ink.list);
	assert_true(box.y0 >= 9.0 && box.y1 <= y + 1e-9 && box.x0 >= 9.9 && box.x1 <= 60.1);
	assert_true(list_count(ink.list).texts >= 2);
	ink_release(&ink);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_text_box_is_its_ink),
		cmocka_unit_test(test_alignment),
		cmocka_unit_test(test_ops_come_by_layer),
		cmocka_unit_test(test_list_copies_what_it_is_given),
		cmocka_unit_test(test_text_clears_hatch_and_joints),
		cmocka_unit_test(test_paragraph),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

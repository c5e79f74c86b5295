#include <string.h>

#include "support/ink.h"
#include "support/program.h"

#include "drawing/dimension.h"
#include "drawing/view.h"

static const struct box window = {1000, 2000, 6000, 5000};
static const struct paper_box paper = {20, 30, 220, 130};

static void test_north_up(void **state)
{
	(void)state;
	struct view v = view_make(window, 90, 50, paper);
	struct paper_point middle = view_point(&v, (struct point){3500, 3500});
	assert_true(middle.x == 120 && middle.y == 80);
	struct paper_point corner = view_point(&v, (struct point){1000, 5000});
	assert_true(corner.x == 70 && corner.y == 50); /* north-west is upper left */
	assert_true(view_length(&v, 5000) == 100);
}

/* The plan direction given points up the sheet; quarter turns leave no dust. */
static void test_quarter_turns_are_exact(void **state)
{
	(void)state;
	static const struct {
		double up_deg;
		struct point up;
	} turns[] = {{0, {1, 0}}, {90, {0, 1}}, {180, {-1, 0}}, {270, {0, -1}}, {-90, {0, -1}}};
	for (size_t i = 0; i < sizeof turns / sizeof *turns; i++) {
		struct view v = view_make(window, turns[i].up_deg, 50, paper);
		struct paper_point up = view_direction(&v, turns[i].up);
		assert_true(up.x == 0 && up.y == -1);
	}
}

static void test_there_and_back(void **state)
{
	(void)state;
	uint32_t seed = 5;
	for (int i = 0; i < 200; i++) {
		struct view v = view_make(window, chance(&seed) * 720 - 360, 20, paper);
		struct point p = {chance(&seed) * 9000, chance(&seed) * 9000};
		struct point q = view_floor(&v, view_point(&v, p));
		assert_near(point_distance(p, q), 0, 1e-8);
	}
}

static void test_size_holds_the_window(void **state)
{
	(void)state;
	struct paper_point size = view_size(window, 90, 50);
	assert_true(size.x == 100 && size.y == 60);
	size = view_size(window, 0, 50);
	assert_true(size.x == 60 && size.y == 100);
}

static void test_region_keeps_its_holes(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct view v = view_make(window, 90, 50, paper);
	struct point outer[] = {{0, 0}, {100, 0}, {100, 100}, {0, 100}};
	struct point inner[] = {{10, 10}, {10, 20}, {20, 20}};
	struct ring hole = {inner, 3};
	struct polygon polygon = {{outer, 4}, &hole, 1};
	struct paper_path path = view_region(arena, &v, &(struct region){&polygon, 1});
	assert_int_equal(path.count, 2);
	assert_int_equal(path.lines[0].count, 4);
	assert_int_equal(path.lines[1].kind, PAPER_CLOSED);
	arena_free(arena);
}

/* ---- dimensions ---- */

static const struct op *find_text(const struct list *list, const char *text)
{
	for (size_t i = 0; i < list->ops.count; i++)
		if (list->ops.items[i].kind == OP_TEXT &&
		    strcmp(list->ops.items[i].text, text) == 0)
			return &list->ops.items[i];
	return NULL;
}

static struct label_report draw_chain(struct ink *ink, struct point direction)
{
	struct view v = view_make(window, 90, 50, paper);
	static const char *const values[] = {"1000", "50", "2000"};
	struct point points[4];
	static const double stations[] = {0, 1000, 1050, 3050};
	for (int i = 0; i < 4; i++)
		points[i] =
			point_add((struct point){1500, 3500}, point_scale(direction, stations[i]));
	struct paper_point foot = view_point(&v, points[0]);
	struct paper_point aside = {direction.y == 0 ? 0 : -15, direction.y == 0 ? 15 : 0};
	const struct dimension_chain chain = {.points = points,
	                                      .count = 4,
	                                      .values = values,
	                                      .direction = direction,
	                                      .through = paper_add(foot, aside),
	                                      .has_extensions = true};
	dimension_chain(ink->list, &v, &chain);
	return list_finish(ink->list, (struct paper_box){0, 0, 240, 160});
}

/* Level values stand over a level line, upright ones left of an upright line; the member
 * of 1 mm has its value aside, with a leader. */
static void test_chain(void **state)
{
	(void)state;
	for (int upright = 0; upright <= 1; upright++) {
		struct ink ink = ink_sheet("paper", 240, 160);
		struct label_report report =
			draw_chain(&ink, upright ? (struct point){0, 1} : (struct point){1, 0});
		assert_int_equal(report.unplaced, 0);
		assert_int_equal(report.led, 1);
		const struct op *value = find_text(ink.list, "2000");
		assert_int_equal(value->is_upright, upright);
		/* The line runs 15 mm under the points, or left of them; 1 mm of gap. */
		if (upright)
			assert_near(value->box.x1, 80 - 15 - 1, 0.3);
		else
			assert_near(value->box.y1, 80 + 15 - 1, 0.3);
		assert_int_equal(list_count(ink.list).texts, 3);
		ink_release(&ink);
	}
}

/* Ten stations within 2 mm of paper: all values placed, in the order of the stations. */
static void test_crowded_running_values_keep_their_order(void **state)
{
	(void)state;
	static const char *const values[] = {"105", "101", "109", "103", "110",
	                                     "102", "104", "108", "106", "107"};
	static const char *const in_order[] = {"101", "102", "103", "104", "105",
	                                       "106", "107", "108", "109", "110"};
	struct ink ink = ink_sheet("paper", 240, 160);
	struct view v = view_make(window, 90, 50, paper);
	struct point points[11] = {{1500, 3500}};
	for (int i = 0; i < 10; i++)
		points[i + 1] = (struct point){3000 + 10 * (values[i][1] - '0') * 10 +
		                                       10 * (values[i][2] - '0'),
		                               3500};
	dimension_running(ink.list, &v,
	                  &(struct dimension_chain){.points = points,
	                                            .count = 11,
	                                            .values = values,
	                                            .direction = {1, 0},
	                                            .through = {100, 100},
	                                            .has_extensions = true});
	assert_int_equal(list_finish(ink.list, (struct paper_box){0, 0, 240, 160}).unplaced, 0);
	for (int i = 0; i < 9; i++)
		assert_true(find_text(ink.list, in_order[i])->box.x1 <
		            find_text(ink.list, in_order[i + 1])->box.x0);
	ink_release(&ink);
}

static void test_pair_lies_to_the_left(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("paper", 240, 160);
	struct view v = view_make(window, 90, 50, paper);
	dimension_pair(ink.list, &v, (struct point){2000, 3500}, (struct point){5000, 3500}, 12,
	               "3000", "R1");
	list_finish(ink.list, (struct paper_box){0, 0, 240, 160});
	assert_near(find_text(ink.list, "3000")->box.y1, 80 - 12 - 1, 0.3);
	ink_release(&ink);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_north_up),
		cmocka_unit_test(test_quarter_turns_are_exact),
		cmocka_unit_test(test_there_and_back),
		cmocka_unit_test(test_size_holds_the_window),
		cmocka_unit_test(test_region_keeps_its_holes),
		cmocka_unit_test(test_chain),
		cmocka_unit_test(test_crowded_running_values_keep_their_order),
		cmocka_unit_test(test_pair_lies_to_the_left),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

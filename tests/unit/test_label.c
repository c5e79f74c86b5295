#include <math.h>
#include <string.h>

#include "support/ink.h"
#include "support/program.h"

enum { WIDTH = 200, HEIGHT = 150 };
static const struct paper_box within = {10, 10, WIDTH - 10, HEIGHT - 10};

static struct paper_point anywhere(uint32_t *seed)
{
	double x = chance(seed), y = chance(seed);
	return paper_at(15 + x * (WIDTH - 30), 15 + y * (HEIGHT - 30));
}

/* Lines, hatch and fixed texts in the way. */
static void add_scene(struct ink *ink, uint32_t *seed)
{
	for (int i = 0; i < 20; i++)
		list_stroke(ink->list, LAYER_JOINTS, PEN_SOFT_JOINT, "j",
		            paper_path_segment(ink->arena, anywhere(seed), anywhere(seed)));
	list_area(ink->list, LAYER_HOLDS, AREA_HOLD, "h",
	          paper_path_box(ink->arena, (struct paper_box){40, 40, 90, 80}));
	for (int i = 0; i < 5; i++)
		list_text(ink->list, LAYER_NOTES, TEXT_BODY, NULL, paper_at(20, 30 + 25 * i),
		          ALIGN_START, "fixed text");
}

static void ask(struct ink *ink, uint32_t *seed, int count)
{
	static const char *const words[] = {"K1", "S12", "HOLD", "12'-6 1/2\"", "cut 143"};
	for (int i = 0; i < count; i++) {
		const char *lines[2] = {words[(int)(chance(seed) * 5)], "x"};
		struct label label = {.lines = lines,
		                      .line_count = chance(seed) < 0.2 ? 2 : 1,
		                      .role = TEXT_TAG,
		                      .layer = LAYER_LABELS,
		                      .element = "K1",
		                      .frame = (enum label_frame)(chance(seed) * 4),
		                      .where = chance(seed) < 0.5 ? LABEL_AROUND : LABEL_ALONG,
		                      .priority = (int)(chance(seed) * 3),
		                      .can_lead = chance(seed) < 0.8};
		label.a = anywhere(seed);
		label.b = anywhere(seed);
		list_label(ink->list, &label);
	}
}

static size_t check_no_overlap(const struct list *list)
{
	size_t texts = 0;
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *a = &list->ops.items[i];
		if (a->kind != OP_TEXT)
			continue;
		texts++;
		assert_true(paper_box_inside(a->box, paper_box_grown(within, 0.2)) ||
		            a->layer == LAYER_NOTES);
		for (size_t j = i + 1; j < list->ops.count; j++) {
			const struct op *b = &list->ops.items[j];
			if (b->kind == OP_TEXT)
				assert_false(paper_box_meets(a->box, b->box));
		}
	}
	return texts;
}

/* A leader's line never runs through a text. */
static void check_leaders(const struct list *list)
{
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *op = &list->ops.items[i];
		if (op->kind != OP_STROKE || op->role.pen != PEN_LEADER)
			continue;
		const struct paper_line *line = &op->path.lines[0];
		double t0, t1;
		for (size_t j = 0; j < list->ops.count; j++)
			for (size_t k = 0; k + 2 < line->count; k++)
				if (list->ops.items[j].kind == OP_TEXT)
					assert_false(paper_box_clip(list->ops.items[j].box,
					                            line->points[k],
					                            line->points[k + 1], &t0, &t1));
		struct paper_point tip = line->points[line->count - 1];
		assert_true(paper_distance(tip, line->points[line->count - 2]) <= 90.001);
	}
}

static struct label_report run(struct ink *ink, uint32_t seed, int count)
{
	*ink = ink_sheet("paper", WIDTH, HEIGHT);
	add_scene(ink, &seed);
	ask(ink, &seed, count);
	return list_finish(ink->list, within);
}

static void test_random_labels_never_touch(void **state)
{
	(void)state;
	size_t led = 0;
	for (uint32_t seed = 1; seed <= 15; seed++) {
		struct ink ink;
		struct label_report report = run(&ink, seed, 40);
		assert_int_equal(report.placed + report.unplaced, 40);
		assert_true(report.unplaced <= 4);
		assert_true(check_no_overlap(ink.list) >= 5 + report.placed);
		check_leaders(ink.list);
		led += report.led;
		ink_release(&ink);
	}
	assert_true(led > 15);
}

/* Far more than fits: what is placed is still clean, the rest is said. */
static void test_crowd_is_reported_not_overprinted(void **state)
{
	(void)state;
	struct ink ink;
	struct label_report report = run(&ink, 7, 250);
	assert_true(report.unplaced > 0);
	assert_int_equal(report.placed + report.unplaced, 250);
	for (size_t i = 0; i < report.unplaced; i++)
		assert_non_null(report.missing[i]->lines[0]);
	check_no_overlap(ink.list);
	ink_release(&ink);
}

static void test_same_requests_same_places(void **state)
{
	(void)state;
	struct ink a, b;
	run(&a, 3, 60);
	run(&b, 3, 60);
	struct page page_a = ink_page(&a), page_b = ink_page(&b);
	struct bytes one = canvas_trace(a.arena, &page_a), two = canvas_trace(b.arena, &page_b);
	assert_int_equal(one.length, two.length);
	assert_memory_equal(one.data, two.data, one.length);
	ink_release(&a);
	ink_release(&b);
}

static const struct op *find_text(const struct list *list, const char *text)
{
	for (size_t i = 0; i < list->ops.count; i++)
		if (list->ops.items[i].kind == OP_TEXT &&
		    strcmp(list->ops.items[i].text, text) == 0)
			return &list->ops.items[i];
	return NULL;
}

static void test_higher_priority_takes_the_only_place(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("paper", WIDTH, HEIGHT);
	const struct label_place only = {.at = {50, 50}};
	static const char *const low = "low", *const high = "high";
	struct label label = {.lines = &low,
	                      .line_count = 1,
	                      .role = TEXT_TAG,
	                      .layer = LAYER_LABELS,
	                      .where = LABEL_FIXED,
	                      .places = &only,
	                      .place_count = 1,
	                      .priority = 1};
	list_label(ink.list, &label);
	label.lines = &high;
	label.priority = 2;
	list_label(ink.list, &label);
	struct label_report report = list_finish(ink.list, within);
	assert_int_equal(report.unplaced, 1);
	assert_string_equal(report.missing[0]->lines[0], "low");
	assert_non_null(find_text(ink.list, "high"));
	ink_release(&ink);
}

/* The second label's only place is taken by the first, which has others. */
static void test_a_label_is_pushed_aside(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("paper", WIDTH, HEIGHT);
	const struct label_place first[] = {{.at = {50, 50}}, {.at = {50, 90}, .cost = 5}};
	static const char *const one = "one", *const two = "two";
	struct label label = {.lines = &one,
	                      .line_count = 1,
	                      .role = TEXT_TAG,
	                      .layer = LAYER_LABELS,
	                      .where = LABEL_FIXED,
	                      .places = first,
	                      .place_count = 2,
	                      .priority = 1};
	list_label(ink.list, &label);
	label.lines = &two;
	label.place_count = 1;
	list_label(ink.list, &label);
	assert_int_equal(list_finish(ink.list, within).unplaced, 0);
	assert_true(find_text(ink.list, "one")->box.y0 > 80);
	ink_release(&ink);
}

/* Two places 4.2 mm apart: side by side there is room for texts of 3.5 and 2.5 mm, not for two
 * of 3.5. Only the one that finds no room is small, and only where the list allows it. */
static void test_a_label_without_room_is_small(void **state)
{
	(void)state;
	static const struct label_place places[] = {{.at = {50, 50}}, {.at = {50, 54.2}}};
	static const char *const one = "one", *const two = "two";
	for (int allowed = 0; allowed <= 1; allowed++) {
		struct ink ink = ink_sheet("paper", WIDTH, HEIGHT);
		ink.list->small_cap = allowed ? 2.5 : 0;
		struct label label = {.lines = &one,
		                      .line_count = 1,
		                      .role = TEXT_TAG,
		                      .layer = LAYER_LABELS,
		                      .where = LABEL_FIXED,
		                      .places = &places[0],
		                      .place_count = 1,
		                      .priority = 2};
		list_label(ink.list, &label);
		label.lines = &two;
		label.places = &places[1];
		label.priority = 1;
		list_label(ink.list, &label);
		struct label_report report = list_finish(ink.list, within);
		assert_int_equal(report.unplaced, !allowed);
		assert_int_equal(report.small, allowed);
		assert_near(find_text(ink.list, "one")->cap, 3.5, 1e-9);
		if (allowed)
			assert_near(find_text(ink.list, "two")->cap, 2.5, 1e-9);
		ink_release(&ink);
	}
}

/* What is cut away asks for no label; what is cut through asks where it is named. */
static void test_a_clip_keeps_the_labels_of_other_sheets_out(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("paper", WIDTH, HEIGHT);
	static const char *const here = "here", *const there = "there", *const along = "along";
	struct label label = {.lines = &here,
	                      .line_count = 1,
	                      .role = TEXT_TAG,
	                      .layer = LAYER_LABELS,
	                      .where = LABEL_AROUND,
	                      .a = {60, 60}};
	list_set_clip(ink.list, &(struct list_clip){{20, 20, 120, 100}, {20, 20, 100, 100}});
	list_label(ink.list, &label);
	label.lines = &there;
	label.a = paper_at(110, 60); /* shown, but named by the neighbour */
	list_label(ink.list, &label);
	label.lines = &along;
	label.where = LABEL_ALONG;
	label.a = paper_at(80, 80);
	label.b = paper_at(200, 80);
	list_label(ink.list, &label);
	list_text(ink.list, LAYER_LABELS, TEXT_TAG, NULL, paper_at(118, 40), ALIGN_START, "cut");
	list_set_clip(ink.list, NULL);
	assert_int_equal(list_finish(ink.list, within).placed, 2);
	assert_non_null(find_text(ink.list, "here"));
	assert_null(find_text(ink.list, "there"));
	assert_null(find_text(ink.list, "cut"));
	/* Beside the middle of the 20 mm that are named here. */
	const struct op *op = find_text(ink.list, "along");
	assert_true(fabs((op->box.x0 + op->box.x1) / 2 - 90) < 10);
	ink_release(&ink);
}

/* Where a leader ends: the end of the stroke farthest from its text. */
static struct paper_point leader_tip(const struct list *list)
{
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *op = &list->ops.items[i];
		if (op->kind == OP_STROKE && op->role.pen == PEN_LEADER)
			return op->path.lines[0].points[op->path.lines[0].count - 1];
	}
	fail_msg("no leader");
	return paper_at(0, 0);
}

/* Among lines that leave no text room beside what it names, with one more across its middle:
 * a leader must not end where both would be meant. */
static void test_a_leader_ends_where_nothing_else_is_near(void **state)
{
	(void)state;
	static const double ACROSS = 105, LEVEL = 75;
	for (int dotted = 0; dotted <= 1; dotted++) {
		struct ink ink = ink_sheet("paper", WIDTH, HEIGHT);
		static const char *const text = "K1 strip";
		for (double y = LEVEL - 18; y <= LEVEL + 18; y += 2)
			list_stroke(ink.list, LAYER_JOINTS, PEN_SOFT_JOINT, "j",
			            paper_path_segment(ink.arena, paper_at(5, y),
			                               paper_at(WIDTH - 5, y)));
		list_stroke(ink.list, LAYER_JOINTS, PEN_CARRIED_JOINT, "x",
		            paper_path_segment(ink.arena, paper_at(ACROSS, 20),
		                               paper_at(ACROSS, 130)));
		struct label label = {.lines = &text,
		                      .line_count = 1,
		                      .role = TEXT_TAG,
		                      .layer = LAYER_LABELS,
		                      .where = dotted ? LABEL_AROUND : LABEL_ALONG,
		                      .a = paper_at(dotted ? ACROSS : ACROSS - 40, LEVEL),
		                      .b = paper_at(ACROSS + 40, LEVEL),
		                      .can_lead = true,
		                      .is_dotted = dotted};
		list_label(ink.list, &label);
		assert_int_equal(list_finish(ink.list, within).led, 1);
		struct paper_point tip = leader_tip(ink.list);
		assert_near(tip.y, LEVEL, 1e-9);
		assert_true(fabs(tip.x - ACROSS) > 3 && fabs(tip.x - ACROSS) <= 40);
		ink_release(&ink);
	}
}

/* Beside an upright line a plain text is turned, a tag stays level. */
static void test_text_along_an_upright_line(void **state)
{
	(void)state;
	for (int framed = 0; framed <= 1; framed++) {
		struct ink ink = ink_sheet("paper", WIDTH, HEIGHT);
		static const char *const text = "soft joint";
		struct label label = {.lines = &text,
		                      .line_count = 1,
		                      .role = TEXT_TAG,
		                      .layer = LAYER_LABELS,
		                      .where = LABEL_ALONG,
		                      .frame = framed ? LABEL_BOX : LABEL_PLAIN,
		                      .a = {100, 20},
		                      .b = {100, 130}};
		list_label(ink.list, &label);
		list_finish(ink.list, within);
		assert_int_equal(find_text(ink.list, text)->is_upright, !framed);
		ink_release(&ink);
	}
}

static void test_reserved_ground_stays_free(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("paper", WIDTH, HEIGHT);
	const struct paper_box stamp = {60, 10, WIDTH - 10, HEIGHT - 10};
	list_area(ink.list, LAYER_SHEET, AREA_PAPER, NULL, paper_path_box(ink.arena, stamp));
	uint32_t seed = 11;
	ask(&ink, &seed, 30);
	list_finish(ink.list, within);
	for (size_t i = 0; i < ink.list->ops.count; i++)
		if (ink.list->ops.items[i].kind == OP_TEXT)
			assert_false(paper_box_meets(ink.list->ops.items[i].box, stamp));
	ink_release(&ink);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_random_labels_never_touch),
		cmocka_unit_test(test_crowd_is_reported_not_overprinted),
		cmocka_unit_test(test_same_requests_same_places),
		cmocka_unit_test(test_higher_priority_takes_the_only_place),
		cmocka_unit_test(test_a_label_is_pushed_aside),
		cmocka_unit_test(test_a_label_without_room_is_small),
		cmocka_unit_test(test_a_clip_keeps_the_labels_of_other_sheets_out),
		cmocka_unit_test(test_a_leader_ends_where_nothing_else_is_near),
		cmocka_unit_test(test_text_along_an_upright_line),
		cmocka_unit_test(test_reserved_ground_stays_free),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

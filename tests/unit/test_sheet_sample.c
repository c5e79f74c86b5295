/* Sheets of a floor filled by hand: what must be drawn whatever the passes find. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "drawing/canvas.h"
#include "sheets/margin.h"
#include "sheets/sheet_set.h"
#include "sheets/tile_lines.h"
#include "support/sample_floor.h"
#include "units/length.h"

struct fixture {
	struct arena *arena;
	struct diag_list diags;
	struct style style;
	struct sample_floor floor;
	struct draft draft;
};

static int set_up(void **state)
{
	struct arena *arena = arena_new();
	struct fixture *f = ARENA_NEW(arena, struct fixture);
	f->arena = arena;
	f->diags = diag_list_in(arena, "test");
	f->floor = sample_floor_make(arena);
	if (style_embedded(arena, "paper", 0, &f->diags, &f->style) != STATUS_OK)
		return -1;
	f->draft = (struct draft){.arena = arena,
	                          .placed = f->floor.placed,
	                          .site = f->floor.site,
	                          .findings = f->floor.findings,
	                          .style = &f->style,
	                          .words = words_load(arena, "en", &f->diags),
	                          .paper = paper_size_find("tabloid")};
	*state = f;
	return text_engine_embedded(arena, &f->draft.text) == STATUS_OK ? 0 : -1;
}

static int tear_down(void **state)
{
	arena_free(((struct fixture *)*state)->arena);
	return 0;
}

static struct sheet_set draw(struct fixture *f, const char *const *names, size_t count)
{
	struct sheet_set set;
	assert_int_equal(sheet_set_draw(&f->draft, names, count, NULL, &f->diags, &set), STATUS_OK);
	return set;
}

static bool has_text(const struct list *list, const char *text)
{
	for (size_t i = 0; i < list->ops.count; i++)
		if (list->ops.items[i].kind == OP_TEXT && strstr(list->ops.items[i].text, text))
			return true;
	return false;
}

static void test_install_says_what_a_crew_needs(void **state)
{
	struct fixture *f = *state;
	const char *name = "install-bay";
	struct sheet_set set = draw(f, &name, 1);
	static const char *const texts[] = {"FIRST TILE",
	                                    "LINE 1",
	                                    "LINE 2",
	                                    "K1  STRIP",
	                                    "K1  SOFT JOINT",
	                                    "J1  LEAVE OPEN",
	                                    "HELD",
	                                    "DO NOT TILE",
	                                    "C1  COLUMN",
	                                    "D1  DOORWAY",
	                                    "NORTH",
	                                    "SOUTH  CUT 3 11/16\"",
	                                    "CUT 7 3/8\"",
	                                    "CUT 7 7/8\"",
	                                    "EAST  COURSE ENDS",
	                                    "stop and call",
	                                    "8'-5 15/16\"",
	                                    "1 COURSE FROM LINE 2",
	                                    "PROPOSED, NOT FOR CONSTRUCTION",
	                                    "10'-0\""};
	assert_int_equal(set.page_count, 1);
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
		if (!has_text(set.pages[0].list, texts[i]))
			fail_msg("the sheet lacks `%s`", texts[i]);
}

static void test_slab_says_what_was_found(void **state)
{
	struct fixture *f = *state;
	const char *name = "slab";
	struct sheet_set set = draw(f, &name, 1);
	static const char *const texts[] = {"K1  1/16\"",   "K2  3/32\"",
	                                    "STEP 1/16\"",  "J1  CONSTRUCTION JOINT  1/2\"",
	                                    "20'-0\"",      "15'-0\"",
	                                    "140 days old", "[crack-step]",
	                                    "STOP"};
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
		if (!has_text(set.pages[0].list, texts[i]))
			fail_msg("the sheet lacks `%s`", texts[i]);
}

static void test_slab_tells_its_readings(void **state)
{
	struct fixture *f = *state;
	struct site site = *f->draft.site;
	struct plan_reading damp = {.kind = PLAN_READING_HUMIDITY, .value = "78%"};
	struct plan_reading flat = {.kind = PLAN_READING_FLATNESS,
	                            .deviation_nm = 4762500,
	                            .under_nm = 3048000000};
	struct site_reading readings[] = {
		{.plan = &damp, .id = "H1", .room = site.rooms, .has_at = true, .at = {1000, 1000}},
		{.plan = &flat, .id = "F1", .room = site.rooms, .has_at = true, .at = {4000, 1000}},
	};
	struct rule rule = {.name = "slab-damp", .who = "GC"};
	struct finding finding = {.rule = &rule, .about = "H1", .text = "H1: damp"};
	struct findings findings = {&finding, 1, NULL};
	const char *name = "slab";
	site.readings = readings;
	site.reading_count = 2;
	f->draft.site = &site;
	f->draft.findings = &findings;
	struct sheet_set set = draw(f, &name, 1);
	static const char *const texts[] = {"H1  78%", "FAIL", "F1  3/16\" UNDER 10'-0\"", "PASS",
	                                    "flatness: 3/16\" under 10'-0\", pass"};
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
		if (!has_text(set.pages[0].list, texts[i]))
			fail_msg("the sheet lacks `%s`", texts[i]);
}

static void test_legend_has_only_what_is_used(void **state)
{
	struct fixture *f = *state;
	const char *name = "slab";
	struct sheet_set set = draw(f, &name, 1);
	assert_true(has_text(set.pages[0].list, words_find(f->draft.words, "legend.crack")));
	assert_false(has_text(set.pages[0].list, words_find(f->draft.words, "legend.first-tile")));
	assert_false(
		has_text(set.pages[0].list, words_find(f->draft.words, "legend.strip-pending")));
}

/* What the plan, its findings, ids derived from it and the table of papers say for
 * themselves. */
static const char OWN_WORDS[] = " SOUTH EAST NORTH WEST Sample floor Mill Lane Crew First issue "
				"Stall Porcelain sides differ Hold crack step "
				"LEFT RIGHT HOLD CARRIED PERIMETER PANEL STRIP install slab count "
				"membrane joints setting read first ";

/* Words of four letters and more outside brackets; a text may go on in the next line. */
static void check_words(const char *text, int *depth)
{
	while (*text) {
		if (strncmp(text, "⟦", strlen("⟦")) == 0)
			++*depth;
		if (strncmp(text, "⟧", strlen("⟧")) == 0)
			--*depth;
		size_t length =
			strspn(text, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz");
		char word[80];
		snprintf(word, sizeof word, " %.*s ", (int)length, text);
		if (*depth == 0 && length >= 4 && !strstr(OWN_WORDS, word))
			fail_msg("`%s` is not from the table of words", text);
		text += length ? length : 1;
	}
}

static void test_words_come_from_the_table(void **state)
{
	struct fixture *f = *state;
	f->draft.words = words_pseudo(f->arena, f->draft.words);
	f->draft.paper = paper_size_find("arch-d");
	struct sheet_set set = draw(f, NULL, 0);
	for (size_t p = 0; p < set.page_count; p++) {
		const struct list *list = set.pages[p].list;
		int depth = 0;
		for (size_t i = 0; i < list->ops.count; i++)
			if (list->ops.items[i].kind == OP_TEXT)
				check_words(list->ops.items[i].text, &depth);
		assert_int_equal(depth, 0);
	}
}

static void test_what_does_not_fit_is_an_error(void **state)
{
	struct fixture *f = *state;
	struct sheet_set set;
	f->draft.scale = 0.25;
	assert_int_equal(sheet_set_draw(&f->draft, NULL, 0, NULL, &f->diags, &set), STATUS_INPUT);
	assert_int_equal(f->diags.diags.count, 5); /* one a sheet with a floor on it */
	assert_non_null(strstr(f->diags.diags.items[0].text, "does not fit tabloid paper"));
}

/* What does not fit at the scale asked for is in parts: each has its own name and number. */
static void test_what_is_too_large_is_in_parts(void **state)
{
	struct fixture *f = *state;
	const char *names[] = {"slab"};
	f->draft.scale = 10;
	struct sheet_set set = draw(f, names, 1);
	assert_true(set.page_count > 2);
	for (size_t p = 0; p < set.page_count; p++) {
		const struct list *list = set.pages[p].list;
		assert_true(
			has_text(list, arena_printf(f->arena, "%zu / %zu", p + 1, set.page_count)));
		assert_true(has_text(list, "1:10"));
		for (size_t k = 0; k < p; k++)
			assert_string_not_equal(set.pages[p].name, set.pages[k].name);
	}
}

static void test_same_sheets_twice(void **state)
{
	struct fixture *f = *state;
	struct sheet_set a = draw(f, NULL, 0), b = draw(f, NULL, 0);
	for (size_t p = 0; p < a.page_count; p++) {
		struct bytes x = canvas_trace(f->arena, &a.pages[p]);
		struct bytes y = canvas_trace(f->arena, &b.pages[p]);
		assert_int_equal(x.length, y.length);
		assert_memory_equal(x.data, y.data, x.length);
	}
}

/* Joints of a running field, its cut tile too: a line between courses, over the first and under the
 * last; short ones between tiles and at both ends of a course; never two on one. */
static void test_joints_are_long_lines(void **state)
{
	struct fixture *f = *state;
	const struct tiling *tiling = f->floor.placed->lays[0].tiling;
	const struct panel *panel = &tiling->panels[0];
	size_t count, level = 0;
	struct line *lines = tile_lines(f->arena, tiling, panel, 0, &count);
	for (size_t i = 0; i < count; i++)
		level += lines[i].points[0].y == lines[i].points[1].y;
	int low = panel->runs[0].j, high = low;
	long tiles = (long)panel->piece_count;
	for (size_t i = 0; i < panel->run_count; i++)
		tiles += panel->runs[i].last - panel->runs[i].first + 1;
	for (size_t i = 0; i < panel->piece_count; i++) {
		low = panel->pieces[i].at.j < low ? panel->pieces[i].at.j : low;
		high = panel->pieces[i].at.j > high ? panel->pieces[i].at.j : high;
	}
	long courses = high - low + 1;
	assert_true(panel->piece_count > 0);
	assert_int_equal(level, courses + 1);
	assert_int_equal(count - level, tiles + courses);
}

/* The members of a chain, as printed, add up to its overall, as printed. */
static void test_chains_add_up(void **state)
{
	struct fixture *f = *state;
	struct sheet *sheet = sheet_new(&f->draft, "x", "X", "");
	struct margin margin = {.window = {0, 0, 6096, 4572}};
	struct view view;
	assert_true(margin_fit(sheet, &margin, &view));
	double at[] = {0, 1000.9, 2001.7, 2003.4, 3333.3, 4444.44, 6095.2};
	struct places places = {.at = {at, 7, 7}};
	margin_chain(sheet, &view, margin.window, SIDE_BOTTOM, 20, &places, NULL);
	int64_t sum = 0, member, whole;
	const char *wrong;
	for (size_t i = 0; i < sheet->list->labels.count; i++) {
		assert_true(length_parse(sheet->list->labels.items[i].lines[0], LENGTH_IN, &member,
		                         &wrong));
		sum += member;
	}
	assert_int_equal(sheet->list->labels.count, 6);
	assert_true(
		length_parse(draft_length(&f->draft, at[6] - at[0]), LENGTH_IN, &whole, &wrong));
	assert_int_equal(sum, whole);
}

/* Whether a stroke runs through the box. */
static bool runs_through(struct arena *arena, const struct op *stroke, struct paper_box box)
{
	struct paper_path flat = paper_path_flat(arena, stroke->path);
	double t0, t1;
	for (size_t l = 0; l < flat.count; l++)
		for (size_t k = 0; k + 1 < flat.lines[l].count; k++)
			if (paper_box_clip(box, flat.lines[l].points[k],
			                   flat.lines[l].points[k + 1], &t0, &t1))
				return true;
	return false;
}

/* No number of a course stands on a joint that is not grouted. */
static void test_course_numbers_keep_off_joints(void **state)
{
	struct fixture *f = *state;
	const char *name = "setting-out";
	struct sheet_set set = draw(f, &name, 1);
	const struct list *list = set.pages[0].list;
	size_t numbers = 0, joints = 0;
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *text = &list->ops.items[i];
		if (text->kind != OP_TEXT || text->layer != LAYER_NOTES ||
		    text->role.text != TEXT_DIMENSION)
			continue;
		numbers++;
		for (size_t k = 0; k < list->ops.count; k++) {
			const struct op *joint = &list->ops.items[k];
			if (joint->kind != OP_STROKE || joint->layer != LAYER_JOINTS)
				continue;
			joints++;
			assert_false(runs_through(f->arena, joint, text->box));
		}
	}
	assert_true(numbers > 4 && joints > 4);
}

static void test_tags_are_in_capitals(void **state)
{
	struct fixture *f = *state;
	assert_string_equal(draft_tag(&f->draft, "north-2"), "NORTH-2");
	assert_string_equal(draft_tag(&f->draft, "due\xc3\xb1o"), "DUE\xc3\x91O");
	assert_string_equal(draft_tag(&f->draft, "5 \xc3\xb7 2"), "5 \xc3\xb7 2");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(test_install_says_what_a_crew_needs, set_up,
	                                        tear_down),
		cmocka_unit_test_setup_teardown(test_course_numbers_keep_off_joints, set_up,
	                                        tear_down),
		cmocka_unit_test_setup_teardown(test_slab_says_what_was_found, set_up, tear_down),
		cmocka_unit_test_setup_teardown(test_slab_tells_its_readings, set_up, tear_down),
		cmocka_unit_test_setup_teardown(test_legend_has_only_what_is_used, set_up,
	                                        tear_down),
		cmocka_unit_test_setup_teardown(test_words_come_from_the_table, set_up, tear_down),
		cmocka_unit_test_setup_teardown(test_what_does_not_fit_is_an_error, set_up,
	                                        tear_down),
		cmocka_unit_test_setup_teardown(test_what_is_too_large_is_in_parts, set_up,
	                                        tear_down),
		cmocka_unit_test_setup_teardown(test_same_sheets_twice, set_up, tear_down),
		cmocka_unit_test_setup_teardown(test_joints_are_long_lines, set_up, tear_down),
		cmocka_unit_test_setup_teardown(test_chains_add_up, set_up, tear_down),
		cmocka_unit_test_setup_teardown(test_tags_are_in_capitals, set_up, tear_down),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

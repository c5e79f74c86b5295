/* Each rule on a floor built by hand, just inside its limit and just outside. */
#include <string.h>

#include "findings/finding.h"
#include "support/floor.h"
#include "support/program.h"
#include "support/tables.h"

static const struct finding *find(const struct findings *findings, const char *rule)
{
	for (size_t i = 0; i < findings->count; i++)
		if (strcmp(findings->items[i].rule->name, rule) == 0)
			return &findings->items[i];
	return NULL;
}

static const struct finding *judged(const struct floor *f, const char *rule)
{
	return find(findings_judge(tables.arena, &f->placed, tables.en), rule);
}

static struct floor *plain(void)
{
	return floor_new(tables.arena, tables.us);
}

static void a_plain_floor_asks_nothing(void **state)
{
	(void)state;
	const struct findings *findings = findings_judge(tables.arena, &plain()->placed, tables.en);
	struct strbuf out = strbuf_in(tables.arena);
	findings_print(findings, "hall.xml", &out);
	if (findings_is_open(findings))
		fail_msg("%s", out.text);
	assert_string_equal(out.text, "hall.xml:5: note: K1: 1 mm wide. Isolate it; no filling "
	                              "needed [crack-plain]\n"
	                              "hall.xml:8: note: Soft joints are 6 mm wide, as the tile "
	                              "joint; a movement joint here is 6.4 mm. Let the designer "
	                              "confirm [movement-joint-narrow]\n");
}

/* ---- pairs: what to change so that a rule is just not raised, and just raised ---- */

struct pair {
	const char *rule;
	enum rule_weight weight;
	void (*inside)(struct floor *);
	void (*outside)(struct floor *);
};

#define CHANGE(name, ...)                 \
	static void name(struct floor *f) \
	{                                 \
		__VA_ARGS__;              \
		floor_judge_crack(f);     \
	}

CHANGE(as_it_is, (void)f)
CHANGE(step_least, f->crack.step = 0.01)
CHANGE(moving_unknown, f->plan_crack.moving = PLAN_MOVING_UNKNOWN)
CHANGE(moving_yes, f->plan_crack.moving = PLAN_MOVING_YES)
CHANGE(width_eighth, f->crack.width = 3.175)
CHANGE(width_over_eighth, f->crack.width = 3.176)
CHANGE(width_under_sixteenth, f->crack.width = 1.587)
CHANGE(width_sixteenth, f->crack.width = 1.5875)
CHANGE(tensioned, f->slab.post_tensioned = true)
CHANGE(suspended_hair, f->slab.support = PLAN_SUPPORT_SUSPENDED; f->crack.width = 0.39)
CHANGE(suspended_wide, f->slab.support = PLAN_SUPPORT_SUSPENDED; f->crack.width = 0.4)
CHANGE(age_27, date_parse("2026-03-10", &f->slab.placed))
CHANGE(age_28, date_parse("2026-03-09", &f->slab.placed))
CHANGE(age_unknown, f->slab.placed.day = 0)
CHANGE(start_unknown, f->plan.job = NULL)
CHANGE(with_carried, f->site.slab_joints = &f->joint; f->site.slab_joint_count = 1;
       f->field.carried_count = 1)
CHANGE(carried_inch, with_carried(f); f->carried.width = 25.4)
CHANGE(carried_wide, with_carried(f); f->carried.width = 25.41)
CHANGE(relocated, f->site.slab_joints = &f->joint; f->site.slab_joint_count = 1;
       f->joint.relocate = true)
CHANGE(relocated_elsewhere, relocated(f);
       for (size_t i = 0; i < 2; i++) f->joint.line.points[i].x = 9000)
CHANGE(beside_joint, f->site.slab_joints = &f->joint; f->site.slab_joint_count = 1;
       for (size_t i = 0; i < 2; i++) f->joint.line.points[i].x = 2300)
CHANGE(beside_construction, beside_joint(f); f->plan_joint.kind = PLAN_JOINT_CONSTRUCTION)
CHANGE(beside_short, beside_joint(f); f->joint.line.points[0].y = 2400)
CHANGE(beside_far, beside_joint(f); for (size_t i = 0; i < 2; i++) f->joint.line.points[i].x = 2301)
CHANGE(uncovered, f->strips.cover.membrane = NULL; f->strips.strip_count = 0)
CHANGE(uncovered_hold, uncovered(f); f->crack.step = 1)
CHANGE(full, f->membrane.cover = PLAN_COVER_FULL)
CHANGE(full_mat, f->membrane.cover = PLAN_COVER_FULL; f->membrane.kind = PLAN_MEMBRANE_MAT)
CHANGE(large_third, f->plan_lay.pattern = PLAN_PATTERN_RUNNING; f->module.tile_long = 600)
CHANGE(large_half, large_third(f); f->plan_lay.shift = (struct share){1, 2})
CHANGE(large_two_thirds, large_third(f); f->plan_lay.shift = (struct share){2, 3})
CHANGE(small_half, f->plan_lay.pattern = PLAN_PATTERN_RUNNING;
       f->plan_lay.shift = (struct share){1, 2}; f->module.tile_long = 374)
CHANGE(joint_wide_enough, f->module.joint = 1.5875)
CHANGE(joint_thin, f->module.joint = 1.58)
CHANGE(spread_two, f->tile.size_spread_nm = 2000000)
CHANGE(spread_more, f->tile.size_spread_nm = 2000001)
CHANGE(warped, spread_two(f); f->tile.warpage_nm = 1000)
CHANGE(calibrated_thin, large_third(f); f->tile.edge = PLAN_TILE_EDGE_CALIBRATED;
       f->module.joint = 4.7)
CHANGE(rectified_thin, large_third(f); f->module.joint = 4.7)
CHANGE(cut_half, f->cut.least = 75)
CHANGE(cut_less, f->cut.least = 74.9)
CHANGE(cut_third, f->cut.least = 50; f->cut.small_share = 1.0 / 3)
CHANGE(cut_at_column, cut_less(f); f->borders[0].kind = SITE_EDGE_OBSTACLE)
CHANGE(cut_tapers, cut_less(f); f->borders[0].to.y = 6 + 74.9)
CHANGE(cut_runs_through, cut_less(f); f->borders[0].to.y = 6 + 75)
CHANGE(wish_unmet, f->position.unmet = &f->unmet)
CHANGE(closing_six, f->room.closing_error = 6)
CHANGE(closing_more, f->room.closing_error = 6.01)
CHANGE(strip_40, f->field.area_mm2 = 1350000 / 0.4)
CHANGE(strip_more, f->field.area_mm2 = 1350000 / 0.41)
CHANGE(nominal_large, f->module.tile_long = 375)
CHANGE(nominal_small, f->module.tile_long = 374)
CHANGE(turns_two, f->softs[1].turns = 2)
CHANGE(turns_three, f->softs[1].turns = 3)
CHANGE(ragged_turns, f->softs[0].turns = 10)
CHANGE(ragged_under_full, f->softs[0].turns = 10; f->strips.cover.is_full = true)
CHANGE(straight_turns, f->softs[0].turns = 9)
CHANGE(soft_double, f->softs[0].length = 6000)
CHANGE(soft_longer, f->softs[0].length = 6001)
CHANGE(tile_least, f->tile.wide_nm = 50000000; f->membrane.min_tile_nm = 50000000)
CHANGE(tile_less, f->tile.wide_nm = 49999999; f->membrane.min_tile_nm = 50000000)
CHANGE(joint_quarter, f->module.joint = 6.35)

static void with_line(struct floor *f, bool on_joint)
{
	static struct line runs[1];
	static struct point parts[1];
	f->position.parts = parts;
	runs[0] = f->crack.line;
	f->movement_line = (struct movement_line){
		.id = "hall.m1", .on_joint = on_joint, .width = 6, .runs = runs, .run_count = 1};
	f->movement.lines = &f->movement_line;
	f->movement.line_count = 1;
}

CHANGE(line_on_joint, with_line(f, true))
CHANGE(line_cut, with_line(f, false))
CHANGE(line_missing, f->movement.limit = 7600; f->movement.missing_count = 1)

static const struct pair pairs[] = {
	{"crack-step", RULE_STOP, as_it_is, step_least},
	{"crack-moving", RULE_STOP, moving_unknown, moving_yes},
	{"crack-wide", RULE_ASK, width_eighth, width_over_eighth},
	{"crack-fill", RULE_NOTE, width_under_sixteenth, width_sixteenth},
	{"crack-plain", RULE_NOTE, width_sixteenth, width_under_sixteenth},
	{"crack-tensioned", RULE_ASK, as_it_is, tensioned},
	{"crack-suspended", RULE_ASK, suspended_hair, suspended_wide},
	{"crack-uncovered", RULE_ASK, as_it_is, uncovered},
	{"crack-uncovered", RULE_ASK, uncovered_hold, uncovered},
	{"crack-beside-joint", RULE_ASK, beside_far, beside_joint},
	{"crack-beside-joint", RULE_ASK, beside_short, beside_joint},
	{"crack-beside-joint", RULE_ASK, beside_construction, beside_joint},
	{"cracks-many", RULE_ASK, strip_40, strip_more},
	{"cracks-many", RULE_ASK, nominal_small, nominal_large},
	{"soft-path-stepped", RULE_ASK, turns_two, turns_three},
	{"soft-path-ragged", RULE_ASK, straight_turns, ragged_turns},
	{"soft-path-ragged", RULE_ASK, soft_double, soft_longer},
	{"soft-path-ragged", RULE_ASK, ragged_under_full, ragged_turns},
	{"tile-small", RULE_ASK, tile_least, tile_less},
	{"movement-joint-narrow", RULE_NOTE, joint_quarter, as_it_is},
	{"slab-young", RULE_ASK, age_28, age_27},
	{"slab-age-unknown", RULE_NOTE, age_27, age_unknown},
	{"slab-age-unknown", RULE_NOTE, age_27, start_unknown},
	{"joint-carried", RULE_NOTE, relocated, with_carried},
	{"joint-wide", RULE_NOTE, carried_inch, carried_wide},
	{"joint-relocated", RULE_ASK, relocated_elsewhere, relocated},
	{"cover-unapproved", RULE_ASK, full_mat, full},
	{"shift-large", RULE_ASK, large_third, large_half},
	{"shift-large", RULE_ASK, large_two_thirds, large_half},
	{"shift-large", RULE_ASK, small_half, large_half},
	{"joint-narrow", RULE_ASK, joint_wide_enough, joint_thin},
	{"joint-narrow", RULE_ASK, spread_two, spread_more},
	{"joint-narrow", RULE_ASK, spread_two, warped},
	{"joint-narrow", RULE_ASK, rectified_thin, calibrated_thin},
	{"cut-small", RULE_NOTE, cut_half, cut_less},
	{"cut-small", RULE_NOTE, cut_third, cut_less},
	{"cut-small", RULE_NOTE, cut_at_column, cut_less},
	{"cut-small", RULE_NOTE, cut_runs_through, cut_tapers},
	{"full-at-unmet", RULE_ASK, as_it_is, wish_unmet},
	{"closing-error", RULE_ASK, closing_six, closing_more},
	{"field-joint-cut", RULE_NOTE, line_on_joint, line_cut},
	{"field-joint-missing", RULE_ASK, line_on_joint, line_missing},
};

static void each_rule_inside_and_outside(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof pairs / sizeof pairs[0]; i++) {
		struct floor *inside = plain(), *outside = plain();
		pairs[i].inside(inside);
		pairs[i].outside(outside);
		if (judged(inside, pairs[i].rule) != NULL)
			fail_msg("%zu: %s is raised inside its limit", i, pairs[i].rule);
		const struct finding *finding = judged(outside, pairs[i].rule);
		if (finding == NULL)
			fail_msg("%zu: %s is not raised outside its limit", i, pairs[i].rule);
		if (finding->weight != pairs[i].weight)
			fail_msg("%s: weight %d", pairs[i].rule, finding->weight);
		if (strchr(finding->text, '{') != NULL)
			fail_msg("%s: not filled: %s", pairs[i].rule, finding->text);
	}
}

/* Those that other programs, named test_findings_*.c, prove. */
static bool is_proved_elsewhere(const char *rule)
{
	static const char *const names[] = {
		"answer-idle",        "slab-damp",           "slab-sealed",         "slab-uneven",
		"readings-few",       "joint-step",          "joint-crooked",       "need-unmet",
		"partial-waterproof", "waterproof-cut",      "floor-raised",        "out-of-square",
		"crack-movement",     "soft-joint-capacity", "field-joint-stepped", "tile-uneven"};
	for (size_t i = 0; i < sizeof names / sizeof names[0]; i++)
		if (strcmp(names[i], rule) == 0)
			return true;
	return false;
}

static void every_rule_has_a_pair(void **state)
{
	(void)state;
	for (size_t r = 0; rules_at(tables.us, r) != NULL; r++) {
		const char *name = rules_at(tables.us, r)->name;
		bool has_pair = is_proved_elsewhere(name);
		for (size_t i = 0; i < sizeof pairs / sizeof pairs[0]; i++)
			has_pair = has_pair || strcmp(pairs[i].rule, name) == 0;
		if (!has_pair)
			fail_msg("%s has no pair", name);
	}
}

static void strips_near_each_other_are_questioned(void **state)
{
	(void)state;
	struct floor *f = plain();
	struct strip two[2] = {f->strip, f->strip};
	f->strips.strips = two;
	f->strips.strip_count = 2;
	two[1].region = floor_rectangle(tables.arena, 2825, 0, 2830, 3000);
	assert_null(judged(f, "cracks-many"));
	two[1].region = floor_rectangle(tables.arena, 2824, 0, 2829, 3000);
	assert_non_null(judged(f, "cracks-many"));
}

/* No corner of either lies near the other: they cross, or a corner of the first lies before
 * a side of the second. */
static void strips_are_near_by_their_sides(void **state)
{
	(void)state;
	struct floor *f = plain();
	struct strip two[2] = {f->strip, f->strip};
	f->strips.strips = two;
	f->strips.strip_count = 2;
	two[0].region = floor_rectangle(tables.arena, 10000, 0, 10010, 30000);
	two[1].region = floor_rectangle(tables.arena, 0, 15000, 20000, 15010);
	assert_non_null(judged(f, "cracks-many"));
	two[1].region = floor_rectangle(tables.arena, 0, 30100, 20000, 30110);
	assert_non_null(judged(f, "cracks-many"));
	two[1].region = floor_rectangle(tables.arena, 0, 31000, 20000, 31010);
	assert_null(judged(f, "cracks-many"));
}

/* What lies in two lays is told of once. */
static void nothing_is_said_twice(void **state)
{
	(void)state;
	struct floor *f = plain();
	size_t once = findings_judge(tables.arena, &f->placed, tables.en)->count;
	struct placed_lay two[2] = {f->placed.lays[0], f->placed.lays[0]};
	f->placed.lays = two;
	f->placed.lay_count = 2;
	assert_int_equal(findings_judge(tables.arena, &f->placed, tables.en)->count, once);
}

static void a_membrane_brings_its_own_age(void **state)
{
	(void)state;
	struct floor *f = plain();
	age_28(f);
	f->membrane.min_slab_age_days = 29;
	const struct finding *finding = judged(f, "slab-young");
	assert_non_null(finding);
	assert_near(finding->limit, 29, 0);
	assert_near(finding->measured, 28, 0);
	f->membrane.min_slab_age_days = 3;
	age_27(f);
	assert_null(judged(f, "slab-young"));
}

static void lengths_read_as_the_plan_writes_them(void **state)
{
	(void)state;
	struct floor *f = plain();
	f->site.inches = true;
	f->crack.width = 25.4 * 3 / 16;
	floor_judge_crack(f);
	assert_string_equal(judged(f, "crack-wide")->text,
	                    "K1: 3/16\" wide, over 1/8\". Patch it; strip pending: ask the "
	                    "engineer");
	width_over_eighth(f);
	assert_string_equal(judged(f, "crack-wide")->text,
	                    "K1: 0.12504 in wide, over 0.125 in. Patch it; strip pending: ask "
	                    "the engineer");
	f->site.inches = false;
	assert_string_equal(judged(f, "crack-wide")->text,
	                    "K1: 3.176 mm wide, over 3.175 mm. Patch it; strip pending: ask the "
	                    "engineer");
}

static void findings_stand_by_line_then_rule(void **state)
{
	(void)state;
	struct floor *f = plain();
	step_least(f);
	width_over_eighth(f);
	age_27(f);
	const struct findings *findings = findings_judge(tables.arena, &f->placed, tables.en);
	assert_true(findings_is_open(findings));
	assert_true(findings_is_stopped(findings));
	assert_int_equal(findings->count, 4);
	assert_string_equal(findings->items[0].rule->name, "slab-young");
	assert_string_equal(findings->items[1].rule->name, "crack-step");
	assert_string_equal(findings->items[2].rule->name, "crack-wide");
	assert_string_equal(findings->items[3].rule->name, "movement-joint-narrow");
	assert_near(findings->items[1].at.x, 2000, 0);
	assert_near(findings->items[1].at.y, 1500, 0);
}

static void places_are_in_plan_axes(void **state)
{
	(void)state;
	struct floor *f = plain();
	f->field.frame = frame_from_deg(90);
	cut_less(f);
	const struct finding *finding = judged(f, "cut-small");
	assert_near(finding->at.x, -6, 1e-9);
	assert_near(finding->at.y, 2000, 1e-9);
	assert_string_equal(finding->unit, "mm");
	assert_near(finding->measured, 74.9, 0);
	assert_near(finding->limit, 75, 0);
}

static struct plan_answer answer_to(const char *about, enum plan_decision decision)
{
	struct plan_answer answer = {.line = 12, .decision = decision, .by = "the engineer"};
	answer.about.id = about;
	date_parse("2026-03-01", &answer.on);
	return answer;
}

static void an_answered_finding_is_a_note(void **state)
{
	(void)state;
	struct floor *f = plain();
	struct plan_answer answer = answer_to("K1", PLAN_PROCEED);
	f->plan.answers = &answer;
	f->plan.answer_count = 1;
	width_over_eighth(f);
	const struct findings *findings = findings_judge(tables.arena, &f->placed, tables.en);
	const struct finding *finding = find(findings, "crack-wide");
	assert_false(findings_is_open(findings));
	assert_int_equal(finding->weight, RULE_NOTE);
	assert_int_equal(finding->state, FINDING_ANSWERED);
	assert_non_null(
		strstr(finding->text, "Answered: go ahead as drawn, the engineer, 2026-03-01"));
	assert_null(find(findings, "answer-idle"));
	as_it_is(f);
	f->crack.width = 1;
	floor_judge_crack(f);
	assert_non_null(judged(f, "answer-idle"));
}

static void an_answer_that_does_not_count_leaves_it_open(void **state)
{
	(void)state;
	struct floor *f = plain();
	struct plan_answer answer = answer_to("K1", PLAN_ISOLATE);
	f->plan.answers = &answer;
	f->plan.answer_count = 1;
	step_least(f);
	assert_int_equal(judged(f, "crack-step")->state, FINDING_OPEN);
	assert_non_null(judged(f, "answer-idle"));
	answer.ref = "letter 7";
	floor_judge_crack(f);
	assert_int_equal(judged(f, "crack-step")->state, FINDING_ANSWERED);
}

static void an_answer_about_a_membrane(void **state)
{
	(void)state;
	struct floor *f = plain();
	struct plan_answer answer = answer_to("M1", PLAN_PROCEED);
	f->plan.answers = &answer;
	f->plan.answer_count = 1;
	full(f);
	assert_int_equal(judged(f, "cover-unapproved")->state, FINDING_ANSWERED);
	f->strips.cover.is_full = true;
	assert_non_null(strstr(judged(f, "cover-unapproved")->text, "drawn and counted"));
	answer.rule = "crack-step";
	assert_int_equal(judged(f, "cover-unapproved")->state, FINDING_OPEN);
}

/* The answer that names the rule goes before those that name none, of which the first counts. */
static void of_several_answers_one_counts(void **state)
{
	(void)state;
	struct floor *f = plain();
	struct plan_answer answers[] = {answer_to("M1", PLAN_PROCEED),
	                                answer_to("M1", PLAN_PROCEED),
	                                answer_to("M1", PLAN_PROCEED)};
	answers[0].by = "the first";
	answers[1].by = "the second";
	answers[2].by = "the one asked";
	f->plan.answers = answers;
	f->plan.answer_count = 2;
	full(f);
	assert_non_null(strstr(judged(f, "cover-unapproved")->text, "the first"));
	answers[2].rule = "cover-unapproved";
	f->plan.answer_count = 3;
	assert_non_null(strstr(judged(f, "cover-unapproved")->text, "the one asked"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_plain_floor_asks_nothing),
		cmocka_unit_test(each_rule_inside_and_outside),
		cmocka_unit_test(every_rule_has_a_pair),
		cmocka_unit_test(strips_near_each_other_are_questioned),
		cmocka_unit_test(strips_are_near_by_their_sides),
		cmocka_unit_test(nothing_is_said_twice),
		cmocka_unit_test(a_membrane_brings_its_own_age),
		cmocka_unit_test(lengths_read_as_the_plan_writes_them),
		cmocka_unit_test(findings_stand_by_line_then_rule),
		cmocka_unit_test(places_are_in_plan_axes),
		cmocka_unit_test(an_answered_finding_is_a_note),
		cmocka_unit_test(an_answer_that_does_not_count_leaves_it_open),
		cmocka_unit_test(an_answer_about_a_membrane),
		cmocka_unit_test(of_several_answers_one_counts),
	};
	return cmocka_run_group_tests(tests, tables_start, tables_end);
}

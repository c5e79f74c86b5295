/* Readings of the slab: where each limit comes from, and how many are enough. */
#include "support/judged.h"
#include "support/program.h"

#include <string.h>

static struct arena *arena;

static int start(void **state)
{
	(void)state;
	arena = arena_new();
	return 0;
}

static int end(void **state)
{
	(void)state;
	arena_free(arena);
	return 0;
}

#define READING(kind, value, rest) \
	"<reading id='Q1' kind='" kind "' value='" value "' room='hall' " rest "/>"

#define SHEET "kind='sheet' movement='3mm' cover='partial' "
#define LARGE "kind='porcelain' wide='397mm' thick='10mm' edge='rectified'"

static const struct {
	const char *rule;
	struct judged_plan inside, outside;
} CASES[] = {
	{"slab-damp",
         {.more = READING("humidity", "75%", "")},
         {.more = READING("humidity", "75.01%", "")}},
	{"slab-damp",
         {.more = READING("humidity", "85%", ""), .membrane = SHEET "max-humidity='85%'"},
         {.more = READING("humidity", "70%", ""), .membrane = SHEET "max-humidity='69%'"}},
	{"slab-damp",
         {.more = READING("emission", "5lb", "")},
         {.more = READING("emission", "5.01lb", "")}},
	{"slab-damp",
         {.more = READING("emission", "3lb", ""), .membrane = SHEET "max-emission='3lb'"},
         {.more = READING("emission", "2kg", ""), .membrane = SHEET "max-emission='3lb'"}},
	{"slab-uneven",
         {.more = READING("flatness", "6mm", "under='3m'")},
         {.more = READING("flatness", "6.1mm", "under='3m'")}},
	{"slab-uneven",
         {.more = READING("flatness", "6mm", "")},
         {.more = READING("flatness", "6.1mm", "")}},
	{"slab-uneven",
         {.more = READING("flatness", "1.6mm", "under='301mm'")},
         {.more = READING("flatness", "1.6mm", "under='300mm'")}},
	{"slab-uneven",
         {.more = READING("flatness", "3mm", "under='3m'"), .tile = LARGE},
         {.more = READING("flatness", "3.1mm", "under='3m'"), .tile = LARGE}},
	{"slab-uneven",
         {.more = READING("flatness", "1.6mm", "under='601mm'"), .tile = LARGE},
         {.more = READING("flatness", "1.6mm", "under='600mm'"), .tile = LARGE}},
	{"slab-uneven",
         {.more = READING("flatness", "3mm", "under='2m'"), .rules = "uk"},
         {.more = READING("flatness", "3.1mm", "under='2m'"), .rules = "uk"}},
	{"slab-sealed",
         {.more = READING("drop", "absorbed", "")},
         {.more = READING("drop", "beads", "")}},
	{"readings-few", {.membrane = SHEET}, {.membrane = SHEET "max-humidity='80%'"}},
};

static void each_limit_inside_and_outside(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof CASES / sizeof CASES[0]; i++) {
		if (judged_find(judged_plan(arena, &CASES[i].inside), CASES[i].rule))
			fail_msg("%zu: %s is raised inside its limit", i, CASES[i].rule);
		const struct finding *finding =
			judged_find(judged_plan(arena, &CASES[i].outside), CASES[i].rule);
		if (finding == NULL)
			fail_msg("%zu: %s is not raised outside its limit", i, CASES[i].rule);
		if (strchr(finding->text, '{') != NULL)
			fail_msg("%s: not filled: %s", CASES[i].rule, finding->text);
		assert_int_equal(finding->weight, RULE_ASK);
	}
}

static const char *humidity_readings(size_t count)
{
	struct strbuf text = strbuf_in(arena);
	for (size_t i = 0; i < count; i++)
		strbuf_printf(&text, "<reading id='Q%zu' kind='humidity' value='60%%'/>", i);
	return text.text;
}

/* T14 (R-C33): three for the first 100 m2, one more for each further area begun. */
static void larger_ground_takes_more_readings(void **state)
{
	(void)state;
	static const struct {
		int deep_m;
		size_t wanted;
	} GROUNDS[] = {{3, 3}, {8, 3}, {10, 3}, {11, 4}, {20, 4}, {21, 5}};
	for (size_t i = 0; i < sizeof GROUNDS / sizeof GROUNDS[0]; i++) {
		/* A second room of 10 m by what is left makes the ground of this size. */
		const char *room = arena_printf(
			arena,
			"<room id='yard' slab='S1'><corners><corner x='5m' y='0'/>"
			"<corner x='15m' y='0'/><corner x='15m' y='%dmm'/>"
			"<corner x='5m' y='%dmm'/></corners></room>"
			"<lay id='L2' rooms='yard' tile='T1' joint='6mm' pattern='grid'/>",
			GROUNDS[i].deep_m * 1000 - 1200, GROUNDS[i].deep_m * 1000 - 1200);
		size_t wanted = GROUNDS[i].wanted;
		struct judged_plan few = {
			.more = arena_printf(arena, "%s%s", room, humidity_readings(wanted - 1))};
		struct judged_plan enough = {
			.more = arena_printf(arena, "%s%s", room, humidity_readings(wanted))};
		const struct finding *finding =
			judged_find(judged_plan(arena, &few), "readings-few");
		if (finding == NULL)
			fail_msg("%d m: %zu readings pass", GROUNDS[i].deep_m, wanted - 1);
		assert_near(finding->limit, (double)wanted, 0);
		assert_null(judged_find(judged_plan(arena, &enough), "readings-few"));
	}
}

static void an_answered_reading_still_fails(void **state)
{
	(void)state;
	struct judged_plan answered = {
		.more = "<reading id='Q1' kind='drop' value='beads' x='500' y='500'/>"
			"<answer about='Q1' decision='proceed' by='maker' on='2026-03-03'/>"};
	const struct findings *findings = judged_plan(arena, &answered);
	const struct finding *finding = judged_find(findings, "slab-sealed");
	assert_int_equal(finding->state, FINDING_ANSWERED);
	assert_near(finding->at.x, 500, 0);
	assert_null(judged_find(findings, "answer-idle"));
	assert_true(findings_fail_reading(findings, "Q1"));
	assert_false(findings_fail_reading(findings, "Q2"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(each_limit_inside_and_outside),
		cmocka_unit_test(larger_ground_takes_more_readings),
		cmocka_unit_test(an_answered_reading_still_fails),
	};
	return cmocka_run_group_tests(tests, start, end);
}

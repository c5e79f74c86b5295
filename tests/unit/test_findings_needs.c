/* Needs of rooms, joints of the slab and heights at doorways: what decides each rule. */
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

#define FULL "kind='sheet' movement='3mm' cover='full' offers='waterproof sound' "
#define STRIPS "kind='sheet' movement='3mm' cover='partial' offers='waterproof heavy-traffic' "
#define APPROVED "<answer about='M1' decision='proceed' by='owner' on='2026-03-03'/>"
#define DECLINED "<answer about='M1' decision='decline' by='owner' on='2026-03-03'/>"
#define JOINT(x, step)                                                                  \
	"<slab-joint id='J1' kind='construction' width='6mm' step='" step "'><at x='" x \
	"' y='0'/><at x='" x "' y='3000'/></slab-joint>"
/* A room below the hall with tile of its own, and the door to it. */
#define BELOW(thick)                                                    \
	"<room id='below' slab='S1'><corners><corner x='0' y='-2100'/>" \
	"<corner x='4000' y='-2100'/><corner x='4000' y='-100'/>"       \
	"<corner x='0' y='-100'/></corners></room>"                     \
	"<tile id='T2' kind='porcelain' wide='197mm' thick='" thick     \
	"'/><lay id='L2' rooms='below' tile='T2' joint='6mm' pattern='grid'/>"
#define DOOR(level) "<doorway id='D1' wall='south' from='1000' width='900'" level "/>"

static const struct {
	const char *rule;
	struct judged_plan inside, outside;
} CASES[] = {
	{"need-unmet",
         {.room = "needs='heavy-traffic'", .membrane = STRIPS},
         {.room = "needs='sound'", .membrane = STRIPS}},
	{"need-unmet", {.membrane = ""}, {.room = "needs='waterproof'", .membrane = ""}},
	{"need-unmet",
         {.room = "needs='waterproof'", .membrane = "kind='mat' cover='full' offers='waterproof'"},
         {.room = "needs='waterproof'", .membrane = "kind='mat' cover='full'"}},
	{"partial-waterproof",
         {.room = "needs='waterproof'", .membrane = FULL, .more = APPROVED},
         {.room = "needs='waterproof'", .membrane = FULL, .more = DECLINED}},
	{"partial-waterproof",
         {.room = "needs='waterproof'", .membrane = FULL},
         {.room = "needs='waterproof'", .membrane = STRIPS}},
	{"waterproof-cut",
         {.room = "needs='sound'", .membrane = FULL, .more = APPROVED JOINT("2000", "0")},
         {.room = "needs='waterproof'", .membrane = FULL, .more = APPROVED JOINT("2000", "0")}},
	{"waterproof-cut",
         {.room = "needs='waterproof'", .membrane = FULL, .more = APPROVED JOINT("4100", "0")},
         {.room = "needs='waterproof'", .membrane = FULL, .more = APPROVED JOINT("3900", "0")}},
	{"joint-step", {.more = JOINT("2000", "0.8mm")}, {.more = JOINT("2000", "0.81mm")}},
	{"joint-step", {.more = JOINT("4100", "5mm")}, {.more = JOINT("2000", "5mm")}},
	/* Tile of 10 mm on a bond coat of 5 mm; a mat only where it lies. */
	{"floor-raised", {.in_room = DOOR(" level='9mm'")}, {.in_room = DOOR(" level='8.9mm'")}},
	{"floor-raised", {.in_room = DOOR(" level='21mm'")}, {.in_room = DOOR(" level='21.1mm'")}},
	{"floor-raised",
         {.in_room = DOOR(""), .membrane = "kind='mortar-bed' cover='full' thick='40mm'"},
         {.in_room = DOOR(" level='0'"), .membrane = "kind='mat' cover='full' thick='1mm'"}},
	{"floor-raised",
         {.in_room = DOOR(" level='0'"), .rules = "uk"},
         {.in_room = DOOR(" level='0'"),
          .rules = "uk",
          .membrane = "kind='mat' cover='full' thick='1mm'"}},
	/* Between two lays, told of the higher one. */
	{"floor-raised",
         {.in_room = DOOR(" to='below'"), .more = BELOW("16mm")},
         {.in_room = DOOR(" to='below'"), .more = BELOW("16.4mm")}},
	{"floor-raised",
         {.in_room = DOOR(" to='below'"), .more = BELOW("4mm")},
         {.in_room = DOOR(" to='below'"), .more = BELOW("3.6mm")}},
};

static void each_rule_inside_and_outside(void **state)
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
	}
}

/* A note asks nothing, but an answer that names its rule is no idle one. */
static void a_note_is_answered_by_name(void **state)
{
	(void)state;
#define ANSWER(rule) "<answer about='J1'" rule " decision='proceed' by='engineer' on='2026-03-03'/>"
	struct judged_plan named = {.more = JOINT("2000", "0") ANSWER(" rule='joint-carried'")};
	struct judged_plan bare = {.more = JOINT("2000", "0") ANSWER("")};
	const struct findings *findings = judged_plan(arena, &named);
	assert_int_equal(judged_find(findings, "joint-carried")->state, FINDING_ANSWERED);
	assert_null(judged_find(findings, "answer-idle"));
	findings = judged_plan(arena, &bare);
	assert_int_equal(judged_find(findings, "joint-carried")->state, FINDING_OPEN);
	assert_non_null(judged_find(findings, "answer-idle"));
#undef ANSWER
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(each_rule_inside_and_outside),
		cmocka_unit_test(a_note_is_answered_by_name),
	};
	return cmocka_run_group_tests(tests, start, end);
}

/* The table of cracks, row by row, just inside and just outside, and what answers do. */
#include "rules/crack_rule.h"
#include "support/program.h"

static struct arena *arena;
static const struct rules *us;

static int start(void **state)
{
	(void)state;
	arena = arena_new();
	struct diag_list diags = diag_list_in(arena, "us");
	us = rules_load(arena, "us", true, &diags);
	return us == NULL;
}

static int end(void **state)
{
	(void)state;
	arena_free(arena);
	return 0;
}

#define INCH 25.4

struct expected {
	const char *what;
	struct crack_facts crack;
	enum crack_state state;
	bool pending;
	enum rule_id first;
};

static const struct expected rows[] = {
	{"a hair", {.width = INCH / 64}, CRACK_ISOLATE, false, RULE_CRACK_PLAIN},
	{"just under a sixteenth", {.width = 1.587}, CRACK_ISOLATE, false, RULE_CRACK_PLAIN},
	{"a sixteenth", {.width = INCH / 16}, CRACK_ISOLATE, false, RULE_CRACK_FILL},
	{"an eighth", {.width = INCH / 8}, CRACK_ISOLATE, false, RULE_CRACK_FILL},
	{"over an eighth", {.width = 3.18}, CRACK_ISOLATE, true, RULE_CRACK_WIDE},
	{"suspended, a hair",
         {.width = INCH / 64, .is_suspended = true},
         CRACK_ISOLATE,
         false,
         RULE_CRACK_PLAIN},
	{"suspended, wider",
         {.width = 0.4, .is_suspended = true},
         CRACK_ISOLATE,
         true,
         RULE_CRACK_SUSPENDED},
	{"post-tensioned",
         {.width = 0.1, .is_tensioned = true},
         CRACK_ISOLATE,
         true,
         RULE_CRACK_TENSIONED},
	{"moving", {.width = 0.1, .is_moving = true}, CRACK_HOLD, false, RULE_CRACK_MOVING},
	{"the least step", {.width = 0.1, .step = 0.001}, CRACK_HOLD, false, RULE_CRACK_STEP},
	{"step and width", {.width = 5, .step = 2}, CRACK_HOLD, false, RULE_CRACK_STEP},
};

static void each_row_decides(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
		struct crack_verdict verdict = crack_rule_judge(us, &rows[i].crack);
		if (verdict.state != rows[i].state || verdict.pending != rows[i].pending ||
		    verdict.causes[0].rule != rules_rule(us, rows[i].first))
			fail_msg("%s: state %d, pending %d, rule %s", rows[i].what, verdict.state,
			         verdict.pending, verdict.causes[0].rule->name);
	}
}

static void every_row_that_applies_is_a_cause(void **state)
{
	(void)state;
	struct crack_facts crack = {.width = 5,
	                            .step = 2,
	                            .is_moving = true,
	                            .is_suspended = true,
	                            .is_tensioned = true};
	struct crack_verdict verdict = crack_rule_judge(us, &crack);
	assert_int_equal(verdict.cause_count, 5);
	assert_near(verdict.causes[0].measured, 2, 0);
	assert_near(verdict.causes[2].measured, 5, 0);
	assert_null(verdict.causes[0].answer);
}

static struct crack_verdict answered(struct crack_facts crack, struct crack_answer answer)
{
	crack.answers = &answer;
	crack.answer_count = 1;
	return crack_rule_judge(us, &crack);
}

static void an_answer_closes_its_question(void **state)
{
	(void)state;
	struct crack_facts wide = {.width = 5};
	struct crack_verdict verdict =
		answered(wide, (struct crack_answer){NULL, DECISION_PROCEED, false, 7});
	assert_int_equal(verdict.state, CRACK_ISOLATE);
	assert_false(verdict.pending);
	assert_non_null(verdict.causes[0].answer);
	verdict = answered(wide, (struct crack_answer){NULL, DECISION_DECLINE, false, 7});
	assert_int_equal(verdict.state, CRACK_HOLD);
	verdict = answered(wide, (struct crack_answer){NULL, DECISION_CARRY, false, 7});
	assert_int_equal(verdict.state, CRACK_CARRY);
	verdict = answered(wide, (struct crack_answer){"crack-step", DECISION_PROCEED, false, 7});
	assert_true(verdict.pending);
}

static void a_stepped_crack_is_isolated_on_paper_only(void **state)
{
	(void)state;
	struct crack_facts stepped = {.width = 1, .step = 2};
	struct crack_verdict verdict =
		answered(stepped, (struct crack_answer){NULL, DECISION_ISOLATE, false, 7});
	assert_int_equal(verdict.state, CRACK_HOLD);
	assert_null(verdict.causes[0].answer);
	verdict = answered(stepped, (struct crack_answer){NULL, DECISION_ISOLATE, true, 7});
	assert_int_equal(verdict.state, CRACK_ISOLATE);
	assert_false(verdict.pending);
	verdict = answered(stepped, (struct crack_answer){NULL, DECISION_HOLD, false, 7});
	assert_int_equal(verdict.state, CRACK_HOLD);
	assert_non_null(verdict.causes[0].answer);
}

static void an_answer_to_one_rule_leaves_the_others_open(void **state)
{
	(void)state;
	struct crack_facts both = {.width = 5, .step = 2};
	struct crack_verdict verdict =
		answered(both, (struct crack_answer){"crack-step", DECISION_ISOLATE, true, 7});
	assert_int_equal(verdict.state, CRACK_ISOLATE);
	assert_true(verdict.pending);
	assert_non_null(verdict.causes[0].answer);
	assert_null(verdict.causes[1].answer);
}

static void the_worse_state_wins(void **state)
{
	(void)state;
	assert_int_equal(crack_state_worse(CRACK_ISOLATE, CRACK_CARRY), CRACK_CARRY);
	assert_int_equal(crack_state_worse(CRACK_HOLD, CRACK_CARRY), CRACK_HOLD);
	assert_int_equal(crack_state_worse(CRACK_ISOLATE, CRACK_ISOLATE), CRACK_ISOLATE);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(each_row_decides),
		cmocka_unit_test(every_row_that_applies_is_a_cause),
		cmocka_unit_test(an_answer_closes_its_question),
		cmocka_unit_test(a_stepped_crack_is_isolated_on_paper_only),
		cmocka_unit_test(an_answer_to_one_rule_leaves_the_others_open),
		cmocka_unit_test(the_worse_state_wins),
	};
	return cmocka_run_group_tests(tests, start, end);
}

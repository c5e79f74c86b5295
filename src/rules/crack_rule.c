#include "rules/crack_rule.h"

#include <assert.h>
#include <string.h>

/* Whether a row applies to a crack, and what is measured for it. */
struct row {
	enum rule_id rule;
	bool (*applies)(const struct rule *, const struct crack_facts *);
	double (*measure)(const struct crack_facts *);
	enum crack_state open; /* the state until it is answered */
};

static double width_of(const struct crack_facts *crack)
{
	return crack->width;
}

static double step_of(const struct crack_facts *crack)
{
	return crack->step;
}

static double nothing_of(const struct crack_facts *crack)
{
	(void)crack;
	return 0;
}

static bool has_step(const struct rule *rule, const struct crack_facts *crack)
{
	return rule_is_raised(rule, crack->step);
}

static bool moves(const struct rule *rule, const struct crack_facts *crack)
{
	(void)rule;
	return crack->is_moving;
}

static bool has_width(const struct rule *rule, const struct crack_facts *crack)
{
	return rule_is_raised(rule, crack->width);
}

static bool is_tensioned(const struct rule *rule, const struct crack_facts *crack)
{
	(void)rule;
	return crack->is_tensioned;
}

static bool is_suspended(const struct rule *rule, const struct crack_facts *crack)
{
	return crack->is_suspended && rule_is_raised(rule, crack->width);
}

static const struct row asked[] = {
	{RULE_CRACK_STEP, has_step, step_of, CRACK_HOLD},
	{RULE_CRACK_MOVING, moves, nothing_of, CRACK_HOLD},
	{RULE_CRACK_WIDE, has_width, width_of, CRACK_ISOLATE},
	{RULE_CRACK_TENSIONED, is_tensioned, nothing_of, CRACK_ISOLATE},
	{RULE_CRACK_SUSPENDED, is_suspended, width_of, CRACK_ISOLATE},
};

static int severity(enum crack_state state)
{
	static const int rank[] = {[CRACK_ISOLATE] = 0, [CRACK_CARRY] = 1, [CRACK_HOLD] = 2};
	return rank[state];
}

enum crack_state crack_state_worse(enum crack_state a, enum crack_state b)
{
	return severity(a) >= severity(b) ? a : b;
}

/* A stepped crack is isolated only on the strength of a paper. */
static bool is_valid(const struct row *row, const struct crack_answer *answer)
{
	return answer->decision != DECISION_ISOLATE || row->applies != has_step || answer->has_ref;
}

/* An answer that names the rule goes before one that names none. */
static const struct crack_answer *answer_to(const struct row *row, const char *rule,
                                            const struct crack_facts *crack)
{
	const struct crack_answer *found = NULL;
	for (size_t i = 0; i < crack->answer_count; i++) {
		const struct crack_answer *answer = &crack->answers[i];
		if (!is_valid(row, answer))
			continue;
		if (answer->rule != NULL && strcmp(answer->rule, rule) == 0)
			return answer;
		if (answer->rule == NULL && found == NULL)
			found = answer;
	}
	return found;
}

static enum crack_state state_answered(const struct row *row, enum decision decision)
{
	switch (decision) {
	case DECISION_ISOLATE:
		return CRACK_ISOLATE;
	case DECISION_CARRY:
		return CRACK_CARRY;
	case DECISION_PROCEED:
		return row->open;
	case DECISION_HOLD:
	case DECISION_DECLINE:
		return CRACK_HOLD;
	}
	return CRACK_HOLD;
}

static void add_cause(struct crack_verdict *verdict, const struct rule *rule, double measured,
                      const struct crack_answer *answer)
{
	assert(verdict->cause_count < CRACK_CAUSES_MAX);
	verdict->causes[verdict->cause_count++] = (struct crack_cause){rule, measured, answer};
}

static void judge_row(struct crack_verdict *verdict, const struct row *row, const struct rule *rule,
                      const struct crack_facts *crack)
{
	const struct crack_answer *answer = answer_to(row, rule->name, crack);
	enum crack_state state = answer != NULL ? state_answered(row, answer->decision) : row->open;
	add_cause(verdict, rule, row->measure(crack), answer);
	verdict->state = crack_state_worse(verdict->state, state);
	if (answer == NULL && rule->weight == RULE_ASK)
		verdict->pending = true;
}

/* Nothing to decide: filled first, or simply covered. */
static void judge_plain(struct crack_verdict *verdict, const struct rules *rules,
                        const struct crack_facts *crack)
{
	const struct rule *fill = rules_rule(rules, RULE_CRACK_FILL);
	const struct rule *plain = rules_rule(rules, RULE_CRACK_PLAIN);
	add_cause(verdict, rule_is_raised(fill, crack->width) ? fill : plain, crack->width, NULL);
}

struct crack_verdict crack_rule_judge(const struct rules *rules, const struct crack_facts *crack)
{
	struct crack_verdict verdict = {.state = CRACK_ISOLATE};
	for (size_t i = 0; i < sizeof asked / sizeof asked[0]; i++) {
		const struct rule *rule = rules_rule(rules, asked[i].rule);
		if (asked[i].applies(rule, crack))
			judge_row(&verdict, &asked[i], rule, crack);
	}
	/* Nothing is drawn over a hold, so nothing there waits to be built. */
	if (verdict.state == CRACK_HOLD)
		verdict.pending = false;
	if (verdict.cause_count == 0)
		judge_plain(&verdict, rules, crack);
	return verdict;
}

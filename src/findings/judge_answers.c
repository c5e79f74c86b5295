/* judge_answers.c - what was decided, by whom and when; and answers to nothing. */
#include <string.h>

#include "findings/judge.h"

const struct plan_answer *judge_answer_on(const struct judging *judging, int line)
{
	const struct plan *plan = judging->placed->site->plan;
	for (size_t i = 0; i < plan->answer_count; i++)
		if (plan->answers[i].line == line)
			return &plan->answers[i];
	return NULL;
}

void judge_use_answer(struct judging *judging, const struct plan_answer *answer)
{
	judging->answer_is_used[answer - judging->placed->site->plan->answers] = true;
}

/* An answer that names the rule goes before one that names none. */
const struct plan_answer *judge_answer_to(const struct judging *judging, const char *about,
                                          const struct rule *rule)
{
	const struct plan *plan = judging->placed->site->plan;
	const struct plan_answer *found = NULL;
	for (size_t i = 0; i < plan->answer_count; i++) {
		const struct plan_answer *answer = &plan->answers[i];
		if (strcmp(answer->about.id, about) != 0)
			continue;
		if (answer->rule != NULL && strcmp(answer->rule, rule->name) == 0)
			return answer;
		if (answer->rule == NULL && found == NULL)
			found = answer;
	}
	return found;
}

static const char *decision_key(enum plan_decision decision)
{
	static const char *const keys[] = {
		[PLAN_ISOLATE] = "decision.isolate", [PLAN_CARRY] = "decision.carry",
		[PLAN_HOLD] = "decision.hold",       [PLAN_PROCEED] = "decision.proceed",
		[PLAN_DECLINE] = "decision.decline",
	};
	return keys[decision];
}

const char *judge_answered_text(const struct judging *judging, const char *text,
                                const struct plan_answer *answer)
{
	const struct words *words = judging->say.words;
	const char *on = arena_printf(judging->arena, "%04d-%02d-%02d", answer->on.year,
	                              answer->on.month, answer->on.day_of_month);
	return words_fill(judging->arena, words, "finding.answered", {"text", text},
	                  {"decision", words_find(words, decision_key(answer->decision))},
	                  {"by", answer->by}, {"on", on});
}

void judge_answers(struct judging *judging)
{
	const struct plan *plan = judging->placed->site->plan;
	for (size_t i = 0; i < plan->answer_count; i++)
		if (!judging->answer_is_used[i])
			judge_plainly(judging,
			              (struct raised){
					      .rule = judge_rule(judging, RULE_ANSWER_IDLE),
					      .about = plan->answers[i].about.id,
					      .line = plan->answers[i].line,
				      });
}

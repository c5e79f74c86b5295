/* crack_rule.h - what the table of cracks makes of one crack: how it is treated, and why.
 * The one place that decides it; the layout draws by the verdict and the findings tell
 * its causes, so the two cannot differ.
 * Units: mm. By value; nothing is owned and nothing fails.
 * Source: docs/sources.md#cracks. */
#ifndef RULES_CRACK_RULE_H
#define RULES_CRACK_RULE_H
#include <stdbool.h>

#include "rules/rules.h"

/* From the least to the most severe is ISOLATE, CARRY, HOLD. */
enum crack_state { CRACK_ISOLATE, CRACK_HOLD, CRACK_CARRY };

/* What someone with authority decided about an element. */
enum decision {
	DECISION_ISOLATE, /* treat as an in-plane crack; on a stepped one only with a reference */
	DECISION_CARRY,   /* treat as a carried joint */
	DECISION_HOLD,    /* stays held, question closed */
	DECISION_PROCEED, /* as drawn */
	DECISION_DECLINE, /* without it: no strip, so the crack is held */
};

struct crack_answer {
	const char *rule; /* NULL: about whatever is asked */
	enum decision decision;
	bool has_ref;
	int line; /* of the plan: tells which answer it was */
};

struct crack_facts {
	double width, step;
	bool is_moving;                     /* known to move; "unknown" asks nothing */
	bool is_suspended;                  /* any slab it crosses */
	bool is_tensioned;                  /* any slab it crosses */
	const struct crack_answer *answers; /* those about this crack */
	size_t answer_count;
};

/* One row of the table that applies. */
struct crack_cause {
	const struct rule *rule;
	double measured;
	const struct crack_answer *answer; /* NULL: open, or nothing to answer */
};

#define CRACK_CAUSES_MAX 8

struct crack_verdict {
	enum crack_state state;
	bool pending; /* a decision is asked for: drawn, but not to be built yet */
	struct crack_cause causes[CRACK_CAUSES_MAX]; /* in the table's order, never empty */
	size_t cause_count;
};

struct crack_verdict crack_rule_judge(const struct rules *, const struct crack_facts *);
/* The more severe of two states: a group takes its worst member's. */
enum crack_state crack_state_worse(enum crack_state, enum crack_state);

#endif

/* finding.h - what the trade's rules say of a floor: the one list that `check`, the sheets
 * and the record print, so that they cannot differ.
 * Units: as each finding says. Owns: arena. Reads the placed floor only.
 * Source: the rule of each finding (rules/rules.h); messages: words/en.words.
 * Invariant: ordered by line of the plan, then rule, element and text. */
#ifndef FINDINGS_FINDING_H
#define FINDINGS_FINDING_H
#include "base/strbuf.h"
#include "layout/alternatives.h"
#include "words/words.h"

enum finding_state { FINDING_OPEN, FINDING_ANSWERED };

struct finding {
	const struct rule *rule; /* with who answers, and the source */
	enum rule_weight weight; /* the rule's; a note once answered */
	enum finding_state state;
	const char *about;      /* id of the element */
	int line;               /* of it in the plan */
	struct point at;        /* where it is, in plan axes */
	double measured, limit; /* 0 where there is nothing to measure */
	const char *unit;       /* of both: mm, kg, days, tiles, turns/ft, share, none */
	const char *text;       /* in the language of the words given */
};

struct findings {
	struct finding *items;
	size_t count;
	const struct alternatives **alternatives; /* of each lay; NULL: not looked for */
};

/* What the rules say, and what else could be done about the tile of each lay. */
const struct findings *findings_judge(struct arena *, const struct placed *, const struct words *);
/* The same findings without that, which takes trials: their texts give no cure. */
const struct findings *findings_judge_plainly(struct arena *, const struct placed *,
                                              const struct words *);
/* True while an open finding stops or asks: `check` ends with 1. */
bool findings_is_open(const struct findings *);
/* True while an open finding stops: the sheets are proposed, not for construction. */
bool findings_is_stopped(const struct findings *);
/* True where the reading of that id does not pass, be the question answered or not. */
bool findings_fail_reading(const struct findings *, const char *id);
/* Adds one line a finding: `FILE:LINE: WEIGHT: text [rule-name]`. */
void findings_print(const struct findings *, const char *file, struct strbuf *);

#endif

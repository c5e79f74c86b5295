/* judge.h - what the judges of one floor share: each looks at one kind of thing and adds
 * what the rules say of it. Private to findings/.
 * Owns: findings live in the arena. */
#ifndef FINDINGS_JUDGE_H
#define FINDINGS_JUDGE_H
#include "base/array.h"
#include "findings/finding.h"
#include "findings/say.h"

struct judging {
	struct arena *arena;
	const struct placed *placed;
	const struct alternatives **alternatives; /* of each lay; NULL: not looked for */
	struct saying say;                        /* with the words */
	bool *answer_is_used;                     /* by index in the plan */
	ARRAY_OF(struct finding) list;
};

/* What a judge gives of a finding; the rest follows from the rule. */
struct raised {
	const struct rule *rule;
	const char *about;
	const char *of; /* what an answer names where `about` is no element; NULL: `about` */
	int line;
	struct point at;
	double measured, limit;
	const char *unit;    /* NULL: the rule's */
	const char *message; /* NULL: the rule's */
	bool is_asked;       /* `answer` is what there is; else it is looked for */
	const struct plan_answer *answer;
};

/* Adds a finding. {about}, {measured} and {limit} of its text are filled in by themselves. */
void judge_add(struct judging *, struct raised, const struct word_arg *args, size_t arg_count);
#define judge_say(judging, raised, ...)                                        \
	judge_add((judging), (raised), (const struct word_arg[]){__VA_ARGS__}, \
	          sizeof((const struct word_arg[]){__VA_ARGS__}) / sizeof(struct word_arg))
void judge_plainly(struct judging *, struct raised);

/* The answer on a line of the plan, or about an element and a rule; NULL: none. */
const struct plan_answer *judge_answer_on(const struct judging *, int line);
const struct plan_answer *judge_answer_to(const struct judging *, const char *about,
                                          const struct rule *);
/* It was heard: not idle. */
void judge_use_answer(struct judging *, const struct plan_answer *);

const struct rule *judge_rule(const struct judging *, enum rule_id);
double judge_figure(const struct judging *, enum figure);
const char *judge_length(const struct judging *, double mm);
const char *judge_area(const struct judging *, double mm2);
/* Of the middle of the lay's field, in plan axes. */
struct point judge_middle_of_lay(const struct placed_lay *);
/* A finding about a lay, as it begins. */
struct raised judge_raise_lay(const struct judging *, enum rule_id, const struct placed_lay *);
/* The point half way along a line. */
struct point judge_middle_of_line(struct line);
/* Tile with a side of 15 in or more, nominal: joint included. */
bool judge_is_large(const struct judging *, const struct placed_lay *);
/* Area of membrane in strips, and what full coverage would take instead. */
double judge_partial_mm2(const struct placed_lay *);
double judge_full_mm2(const struct placed_lay *);

/* Small cuts at the edges of one lay, and what would cure them. */
void judge_cuts(struct judging *, size_t lay);
void judge_slabs(struct judging *);
void judge_readings(struct judging *);
void judge_rooms(struct judging *);
void judge_cracks(struct judging *);
void judge_needs(struct judging *);
void judge_movements(struct judging *);
void judge_slab_joints(struct judging *);
void judge_soft_joints(struct judging *);
void judge_membranes(struct judging *);
void judge_tile(struct judging *);
/* Last: answers that none of the findings was met by. */
void judge_answers(struct judging *);
/* Text of a finding with who answered, what and when. */
const char *judge_answered_text(const struct judging *, const char *text,
                                const struct plan_answer *);

#endif

/* comparison.h - what changed between two floors, as a change order has it: line by line.
 * A line is a change that can be made by itself on top of those above it; changes that only
 * go together share a line. Before and after of a line are whole floors, so that what
 * follows from it, its quantities, money and days, are the differences of two counts, and all
 * lines together give the difference of base and revised floor, to the cent.
 * Owns: arena. Fails: never: both floors are sound. */
#ifndef COMPARE_COMPARISON_H
#define COMPARE_COMPARISON_H
#include "compare/change.h"
#include "compare/finding_change.h"
#include "compare/row_change.h"
#include "compare/thing_change.h"

struct difference {
	const struct floor_state *before, *after;
	struct row_changes rows;  /* quantities */
	struct row_changes money; /* sums; empty: no prices on both sides */
	struct row_change days;
	struct finding_changes findings;
	struct thing_changes things; /* of a line: what of it is there at the end */
};

struct comparison_line {
	int number;                    /* from 1 */
	const struct change **changes; /* one or more; none: the order of the description */
	size_t change_count;
	struct difference difference;
};

struct comparison {
	const struct floor_state *base, *revised;
	struct change_list changes; /* all; those that are no work too */
	struct comparison_line *lines;
	size_t line_count; /* 0: no change */
	struct difference total;
	const struct plan_revision *revision; /* that the base has not; NULL: none */
};

/* `on_change` is told the element of each change before its floor is placed; NULL: nobody is. */
const struct comparison *comparison_of(struct arena *, const struct floor_state *base,
                                       const struct floor_state *revised, const struct words *,
                                       void (*on_change)(const char *what));
/* How a line is marked on drawings and in lists: B1, or 1 where there is no new revision. */
const char *comparison_mark(struct arena *, const struct comparison *,
                            const struct comparison_line *);
/* The last of the money; NULL: there is none. */
const struct row_change *difference_total(const struct difference *);

#endif

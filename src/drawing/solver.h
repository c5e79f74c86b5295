/* solver.h - chooses among the places of all labels of a sheet.
 * Invariants: chosen boxes meet neither each other nor a block, and stay within the box
 * given; no leader runs through a text. Costs are compared as whole millionths, ties go to
 * the earlier place, so the choice is the same on every machine. */
#ifndef DRAWING_SOLVER_H
#define DRAWING_SOLVER_H
#include "drawing/candidate.h"
#include "drawing/occupancy.h"

struct solver_label {
	const struct label *label;
	struct label_body body;
	const struct candidate *chosen; /* NULL: found no place */
	bool is_small;                  /* set in the list's small height */
};

/* In the order of the requests. */
struct solver_label *solver_place(struct arena *, const struct list *, const struct occupancy *,
                                  struct paper_box within);
/* It covers or crosses what a reader should see, or is far from what it names. */
bool solver_stands_badly(const struct solver_label *);

#endif

/* floor_state.h - one state of a floor, from its description to its count.
 * Owns: arena. Fails: NULL where the description is no floor; why is said nowhere: a state is
 * either one that the reader has passed already, or one that is only tried. */
#ifndef COMPARE_FLOOR_STATE_H
#define COMPARE_FLOOR_STATE_H
#include "count/count.h"
#include "findings/finding.h"
#include "plan/markup.h"

struct floor_state {
	const struct markup *root;
	const struct plan *plan;
	const struct site *site;
	const struct placed *placed;
	const struct findings *findings;
	const struct count *count;
};

const struct floor_state *floor_state_of(struct arena *, const struct markup *root,
                                         const struct words *);
/* The same of a floor that is placed already, from the bytes of its plan. */
const struct floor_state *floor_state_placed(struct arena *, struct bytes plan,
                                             const struct placed *, const struct words *);
/* The same state, counted in feet and inches, or in metres. */
const struct floor_state *floor_state_counted(struct arena *, const struct floor_state *,
                                              const struct words *, bool inches);

#endif

/* clash.h - what two places of labels do to each other: which cannot both be taken, and what a
 * reader would mistake.
 * Units: paper mm; costs about mm of wandering, as everywhere in the solver. */
#ifndef DRAWING_CLASH_H
#define DRAWING_CLASH_H
#include "drawing/candidate.h"

/* The text's box with the white round it. */
struct paper_box clash_clear_box(const struct candidate *);
/* So far a text and its leader bear on others. */
struct paper_box clash_extent(const struct candidate *);
/* The i-th stretch of a leader, without its tip. */
void clash_leader_piece(const struct candidate *, int i, struct paper_point *a,
                        struct paper_point *b);
/* Text on text, or a leader through a text. */
bool clash_is(const struct candidate *, const struct candidate *other);
/* Leaders that cross, or look like one. */
double clash_tangle(const struct candidate *, const struct candidate *other);
/* Two texts that would be read as one: one under the other, or one after the other. `cap`: of
 * their letters. */
double clash_reads_on(const struct candidate *, const struct candidate *other, double cap);

#endif

/* movement_choice.h - which tile joints the field joints of one direction take.
 * The least number of lines for which no run is longer than the limit; of those the lines
 * that keep clear of drains and do not run along a doorway, meet corners and columns, are
 * short and even, and lie at the lesser coordinate. Found by going through all of them.
 * `row`: the least row of tile that a line leaves along a border where it can.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-M2. */
#ifndef LAYOUT_MOVEMENT_CHOICE_H
#define LAYOUT_MOVEMENT_CHOICE_H
#include "layout/position.h"

struct movement_places {
	double *centres; /* of the joints as they end up, rising */
	size_t count;
	size_t before;   /* of them, on the lesser side of the anchor: what they move lies there */
	bool is_missing; /* runs are too long, and no set of lines serves */
	bool on_joint;   /* else cut at a head joint */
	double width, moved;
};

struct movement_places movement_choose(struct arena *, const struct field *, const struct module *,
                                       const struct position *, size_t part, bool along_u,
                                       double limit, double width, double row);

#endif

/* movement_beside.h - where a field joint would lie half beyond a border of the field, or along it
 * with less than a row of tile between them.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-M2. */
#ifndef LAYOUT_MOVEMENT_BESIDE_H
#define LAYOUT_MOVEMENT_BESIDE_H
#include "layout/field.h"

/* Where the centre of a joint may not lie, across the joints. */
struct movement_reach {
	double from, to;
};

struct movement_beside {
	struct movement_reach *reaches; /* one a border, rising */
	size_t count;
	double longest;
};

/* Of borders of the part that run along joints of that width, or so nearly that they stay within
 * it; `row`: what is to lie between, at the least. */
struct movement_beside movement_beside_of(struct arena *, const struct field *, size_t part,
                                          bool along_u, double width, double row);
/* How many borders are in the way of a joint with its centre there. */
size_t movement_beside_count(const struct movement_beside *, double centre);

#endif

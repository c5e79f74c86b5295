/* lattice.h - the steps by which one period of a pattern repeats, and which of its copies
 * come near a line.
 * Units: mm. By value; nothing is owned and nothing fails. */
#ifndef PATTERN_LATTICE_H
#define PATTERN_LATTICE_H
#include <stdbool.h>

#include "geometry/segment.h"

struct lattice {
	struct point a, b; /* not parallel, b to the left of a */
};

/* True where whole steps lead from one point to the other, within TOLERANCE_SAME. */
bool lattice_leads(struct lattice, struct point from, struct point to, int *out_i, int *out_j);

/* Walks the copies (i, j) of a shape that may come within `reach` of a segment: a superset,
 * by the shape's box in the axes of the rows; rows rising, i rising in a row. Cost grows with
 * the segment, not with the floor. */
struct lattice_walk {
	struct lattice lattice;
	struct point along;    /* unit vector of a */
	struct point from, to; /* the segment: x along the rows, y across */
	struct box shape;      /* of the shape at (0, 0), in the same axes, grown by reach */
	int i, j, last_i, last_j;
};

struct lattice_walk lattice_walk_near(struct lattice, struct ring shape, struct segment,
                                      double reach);
/* False: no copy is left. */
bool lattice_walk_next(struct lattice_walk *, int *out_i, int *out_j);

#endif

/* lattice.h - the steps by which one period of a pattern repeats, and which of its copies
 * come near a line.
 * Units: mm. By value; nothing is owned and nothing fails. */
#ifndef PATTERN_LATTICE_H
#define PATTERN_LATTICE_H
#include <math.h>
#include <stdbool.h>

#include "geometry/segment.h"
#include "geometry/tolerance.h"

/* A corner of a cell as all cells and edges of the network have it that meet there. */
static inline struct point lattice_corner(struct point p)
{
	return (struct point){nearbyint(p.x * TOLERANCE_CORNER_STEPS_PER_MM) /
	                              TOLERANCE_CORNER_STEPS_PER_MM,
	                      nearbyint(p.y * TOLERANCE_CORNER_STEPS_PER_MM) /
	                              TOLERANCE_CORNER_STEPS_PER_MM};
}

struct lattice {
	struct point a, b; /* not parallel, b to the left of a */
};

/* True where whole steps lead from one point to the other, within TOLERANCE_SAME. */
bool lattice_leads(struct lattice, struct point from, struct point to, int *out_i, int *out_j);

/* A point in the axes of the rows: x along them (along a), y across. */
struct point lattice_in_rows(struct lattice, struct point);

/* Walks the copies (i, j) of a shape that may come within `reach` of a segment: a superset,
 * by the shape's box in the axes of the rows; rows rising, i rising in a row. Cost grows with
 * the segment, not with the floor. */
struct lattice_walk {
	double pitch, shift,
		rise;             /* a step along the rows; from row to row along them and across */
	struct point from, to;    /* the segment, in the axes of the rows */
	struct box shape;         /* of the shape at (0, 0), in the same axes, grown by reach */
	int i, j, last_i, last_j; /* next copy; last of its row; last row */
};

struct lattice_walk lattice_walk_near(struct lattice, struct ring shape, struct segment,
                                      double reach);
/* False: no copy is left. */
bool lattice_walk_next(struct lattice_walk *, int *out_i, int *out_j);
/* Goes to a row of the walk: i to last_i are its copies. Where the segment passes between two,
 * last_i is the one before and i the one after. */
void lattice_walk_enter(struct lattice_walk *, int j);

#endif

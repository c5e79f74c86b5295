/* lanes.h - what a wall square to a lattice axis meets of a pattern without straight courses:
 * the floor in strips along the axis, a lane each, and in each the tiles one after another.
 * Lanes end where an edge or a corner of a cell lies, so that rectangles are met whole; where
 * edges are slanted (hexagons) a lane is as its middle line is.
 * Units: mm, the lattice at position 0. Owns: arena. */
#ifndef PATTERN_LANES_H
#define PATTERN_LANES_H
#include "pattern/module.h"

struct lane_cell {
	double from, to; /* along the axis, joint included */
};

struct lane {
	double from, to;         /* across the axis */
	struct lane_cell *cells; /* one period, rising; they touch */
	size_t cell_count;
	bool is_slanted; /* cells begin elsewhere at its two sides than in its middle */
};

struct lanes {
	double period, across; /* after which all repeats along the axis, and across it */
	struct lane *lanes;    /* of one period across, rising; they touch */
	size_t lane_count;     /* 0: too long a period to show; one place is like another */
	double *borders;       /* where cells begin, of all lanes, in one period; rising */
	size_t border_count;
	double *straights; /* those of them at which a cell begins all across every lane */
	size_t straight_count;
};

const struct lanes *lanes_from_module(struct arena *, const struct module *, bool along_u);

/* The cell of a lane that holds a coordinate, and where in it: 0 up to its extent. On the
 * border of two, the one at the greater side (or the lesser, where `from_above`). */
const struct lane_cell *lane_cell_at(const struct lanes *, const struct lane *, double at,
                                     bool from_above, double *out_offset);

#endif

/* strip_piece.h - the pieces a person cuts for a leg of strip.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract, "Cracks"; seams:
 * docs/sources.md#membrane. */
#ifndef LAYOUT_STRIP_PIECE_H
#define LAYOUT_STRIP_PIECE_H
#include "layout/strip_leg.h"

struct strip_piece {
	struct polygon shape; /* clipped to the ground it lies on; holes round what stands in it */
	double length, wide;  /* as cut: whole inches or 25 mm, or a roll width */
	double lap;           /* over the piece laid before it; 0 for the first */
	int order, roll;      /* from 1; roll 0 where there are no rolls */
};

/* What the membrane is sold as; 0: as large as wanted. */
struct strip_goods {
	double step; /* pieces are cut to whole steps */
	double roll_wide, roll_long, lap;
	double seam_clear; /* least distance of a seam from the crack */
};

struct strip_piece_list {
	ARRAY_OF(struct strip_piece) pieces;
};

/* The ground a leg covers: its rectangle on `ground`, less what an obstacle, a wall or a
 * carried joint parts from the crack. */
struct region strip_leg_ground(struct arena *, const struct strip_leg *,
                               const struct region *ground);
/* Cuts the leg into lanes and lengths that the rolls give, and adds the pieces. */
void strip_leg_cut(struct arena *, const struct strip_leg *, const struct region *ground,
                   const struct strip_goods *, struct strip_piece_list *);

#endif

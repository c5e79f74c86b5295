/* movement.h - field joints: whole lines across a part, so that no straight run of tile is
 * longer than the table allows; and the panels that they leave.
 * Units: mm in the lay's own axes. Owns: arena.
 * Source: docs/sources.md#movement-joints; contract E-M1 to E-M3.
 * A line on a straight tile joint that is wider than the tile joint moves the tile beyond it
 * by the difference, counted from the panel of the anchor (movement_anchor.h). Where the
 * pattern has no straight joint that way the line is cut at a head joint and moves nothing. */
#ifndef LAYOUT_MOVEMENT_H
#define LAYOUT_MOVEMENT_H
#include "layout/position.h"

struct movement_line {
	const char *id; /* ROOM.m1, ROOM.m2 … */
	size_t part;
	bool along_u; /* the line runs along u, at v = centre */
	bool on_joint;
	double centre, width;
	double moved;      /* how far it moves the tile beyond it, seen from the anchor */
	bool is_before;    /* on the lesser side of the anchor */
	struct line *runs; /* where it crosses the part */
	size_t run_count;
};

/* Ground between the lines, and where the lattice lies in it. */
struct movement_panel {
	size_t part;
	struct polygon ground;
	struct point position;
};

struct movement {
	double limit; /* longest run without a joint */
	struct movement_line *lines;
	size_t line_count;
	struct movement_panel *panels;
	size_t panel_count;
	size_t missing_count; /* parts and directions where no set of lines serves */
};

/* How far the tile at each border of the field is moved, at the border's middle. */
struct point *movement_shifts(struct arena *, const struct field *, const struct position *,
                              const struct movement *);
const struct movement *movement_place(struct arena *, const struct field *, const struct module *,
                                      const struct position *, const struct rules *);

#endif

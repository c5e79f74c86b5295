/* controls.h - the two square lines a crew snaps in a room, and its first tile.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract L1 to L5, common
 * practice. */
#ifndef LAYOUT_CONTROLS_H
#define LAYOUT_CONTROLS_H
#include "layout/cracks.h"

/* Distance from a named wall to a point on a control line, square to the wall. */
struct control_offset {
	const char *wall;
	struct point at_wall, at_line;
	double distance;
};

struct control {
	const char *id; /* ROOM.u, ROOM.v */
	const struct site_room *room;
	bool along_u;
	struct point from, to; /* wall to wall, on the edge of a tile row */
	struct control_offset offsets[2];
	size_t offset_count;
};

struct first_tile {
	const struct site_room *room;
	struct point at; /* crossing of the control lines: a corner of the first tile */
	struct address tile;
	size_t panel;
	bool towards_u, towards_v; /* work goes towards greater u, greater v */
	double square_side; /* unit of the largest 3-4-5 that fits at the crossing; 0: none */
	struct point square_u, square_v; /* its corners on the two lines */
};

/* A room without a whole tile has neither lines nor first tile. */
struct controls {
	struct control *controls;
	size_t control_count;
	struct first_tile *firsts;
	size_t first_count;
};

const struct controls *controls_place(struct arena *, const struct tiling *, const struct cracks *,
                                      const struct rules *);

#endif

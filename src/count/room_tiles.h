/* room_tiles.h - tile of one kind of one lay, told apart by room: each tile is of the room that
 * its middle lies in, a patch in a doorway of the room that declares it.
 * Units: mm2. Owns: arena. Source: contract E-Q1: by room = total. */
#ifndef COUNT_ROOM_TILES_H
#define COUNT_ROOM_TILES_H
#include "layout/placed.h"

struct room_tiles {
	const struct site_room *room;
	long whole, cut; /* outside the holds */
	double tile_mm2; /* of both */
};

/* One for each room of the lay, in its order; `tile`: index of the kind in the lay. */
struct room_tiles *room_tiles_of(struct arena *, const struct placed_lay *, int tile);

#endif

/* doorway.h - openings in the walls of rooms: where the scope of the tile ends, or where it
 * passes to the room behind.
 * Units: mm. Owns: everything lives in the build's arena.
 * Fails: a doorway in a curved wall, past the ends of its wall, over another one, or to a room
 * without a facing wall is an error. */
#ifndef SITE_DOORWAY_H
#define SITE_DOORWAY_H
#include "site/build.h"

/* After all outlines. */
void doorway_build_all(struct build *);

#endif

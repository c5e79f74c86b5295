/* doorway.h - openings in the walls of a room where the scope of the tile ends.
 * Units: mm. Owns: everything lives in the build's arena.
 * Fails: a doorway past the ends of its wall or over another one is an error.
 * Doorways to another room become patches beside these, not among them. */
#ifndef SITE_DOORWAY_H
#define SITE_DOORWAY_H
#include "site/build.h"

void doorway_build_all(struct build *, struct site_room *);

#endif

/* obstacle.h - what stands in a room: columns, islands, pipes, drains, boxes.
 * Units: mm. Owns: everything lives in the build's arena.
 * Fails: an obstacle wholly outside its room, or whose corners make no outline. */
#ifndef SITE_OBSTACLE_H
#define SITE_OBSTACLE_H
#include "site/build.h"

/* After the room's outline and doorways. */
void obstacle_build_all(struct build *, struct site_room *);

#endif

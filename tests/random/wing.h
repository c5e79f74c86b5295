/* wing.h - a random wing: rooms in a row, a corridor before them, doors, cracks and joints of the
 * slab through all of it. */
#ifndef RANDOM_WING_H
#define RANDOM_WING_H
#include "random/floor.h"

/* Rooms to membranes, on standard output. */
void wing_write(struct floor_draft *floor);
#endif

/* outline.h - the outline of a random room.
 * Units: modules, which are 1 in or 25 mm; x east, y north. */
#ifndef RANDOM_OUTLINE_H
#define RANDOM_OUTLINE_H
#include <stdbool.h>
#include <stddef.h>

#include "support/seed.h"

enum { OUTLINE_CORNERS = 16 };

struct spot {
	double x, y;
};

struct outline {
	struct spot corners[OUTLINE_CORNERS];
	double rises[OUTLINE_CORNERS]; /* of the wall that starts there; positive to its left */
	size_t count;
	bool is_taped; /* written as a tape run: anticlockwise, the only one that bends */
};

struct outline outline_draw(struct seed *seed);

struct spot outline_next(const struct outline *outline, size_t corner);
double outline_wall(const struct outline *outline, size_t corner); /* length of its chord */
bool outline_holds(const struct outline *outline, struct spot at);
double outline_clearance(const struct outline *outline, struct spot at); /* to the nearest wall */
/* How far it is to a wall from a point inside, in a direction of length 1. */
double outline_reach(const struct outline *outline, struct spot from, struct spot along);
/* A point inside, clear of the walls by so much if there is one to be found. */
struct spot outline_inside(const struct outline *outline, struct seed *seed, double clear);
#endif

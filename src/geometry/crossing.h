/* crossing.h - where a closed line meets itself, or another, and so is no outline.
 * Units: mm. Nearer than TOLERANCE_SAME is a meeting. Owns: nothing; the arena is scratch. */
#ifndef GEOMETRY_CROSSING_H
#define GEOMETRY_CROSSING_H
#include "geometry/region.h"

struct crossing {
	size_t first, second; /* sides of the ring, first < second */
};

/* The meeting seen first when the sides are drawn in their order: least `second`, then least
 * `first`. Neighbours meet when one runs back over the other. False: the ring is simple. */
bool crossing_find(struct arena *, struct ring, struct crossing *out_crossing);
/* True where borders of the region meet elsewhere than in the corners of a ring. */
bool crossing_in_region(struct arena *, const struct region *);

#endif

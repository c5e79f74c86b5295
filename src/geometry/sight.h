/* sight.h - the shortest way from a point to a line, and whether it stays on the ground.
 * Units: mm. */
#ifndef GEOMETRY_SIGHT_H
#define GEOMETRY_SIGHT_H
#include "geometry/line.h"
#include "geometry/region.h"

struct sight {
	bool is_clear; /* all of the way lies on the ground */
	double distance;
};

/* A line that nothing comes up to: everything is nearer. */
struct sight sight_none(void);
struct sight sight_of(struct arena *, const struct region *ground, struct point, struct line);
/* Clear before barred, then by distance; false where the two are as good. */
bool sight_is_better(struct sight, struct sight than);

#endif

/* spot.h - a point of the plan as a coordinate.
 * Units: mm. */
#ifndef SITE_SPOT_H
#define SITE_SPOT_H
#include "site/build.h"

/* False where an error told already leaves no point: in the point itself, in the name of its
 * wall, or in the outline of the room. */
bool spot_find(const struct build *, const struct plan_at *, struct point *out_spot);
/* `along` the wall from the corner its tape starts at, `out` square into the room. */
struct point spot_on_edge(const struct site_edge *, double along, double out);
/* The points of a line, `count` of them; false as above. */
bool spot_find_all(const struct build *, const struct plan_at *, size_t count,
                   struct line *out_line);

#endif

/* round.h - circles as inscribed polygons.
 * Units: mm. Owns: the ring lives in the arena given.
 * Invariants: sagitta at most TOLERANCE_SAGITTA; anticlockwise from due east; a multiple of
 * four corners, alike in all eight octants, so that quarter turns and mirrors change nothing. */
#ifndef GEOMETRY_ROUND_H
#define GEOMETRY_ROUND_H
#include "geometry/region.h"

struct ring round_ring(struct arena *, struct point centre, double radius);

#endif

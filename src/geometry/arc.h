/* arc.h - arcs over a chord as inscribed polygons.
 * Units: mm. Owns: the line lives in the arena given.
 * Invariants: sagitta at most TOLERANCE_SAGITTA; sides of equal length; written from its other
 * end with the rise negated it is the same line. */
#ifndef GEOMETRY_ARC_H
#define GEOMETRY_ARC_H
#include "base/arena.h"
#include "geometry/point.h"

/* From `from` to `to`, both among its points, the middle `rise` to the left of the chord (to
 * the right where negative); a rise within the sagitta leaves the chord. */
struct line arc_line(struct arena *, struct point from, struct point to, double rise);

#endif

/* inset.h - an outline moved inwards, each edge by its own distance, with mitred corners.
 * Units: mm. Owns: arena. Invariants: an edge of distance 0 stays where it is; the result is
 * normal (normal.h). */
#ifndef LAYOUT_INSET_H
#define LAYOUT_INSET_H
#include "geometry/region.h"

/* Distance for the edge of `ring` that starts at point `i`. */
typedef double inset_distance(const void *context, struct ring ring, size_t i);

struct region inset_region(struct arena *, const struct region *, inset_distance *,
                           const void *context);

#endif

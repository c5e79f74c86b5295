/* overlay.h - set operations on regions, by GEOS; the only module that sees it.
 * Units: mm, mm2. Owns: results live in the arena given; inputs are borrowed.
 * Fails: never on finite input with simple rings; a failure inside GEOS is a bug of
 * ours and ends the process with the library's own message. Out of memory as an arena is.
 * Results are normalised: largest polygon first (ties by least x, then least y of its
 * box), each ring starts at its least point, so equal input gives equal output. */
#ifndef GEOMETRY_OVERLAY_H
#define GEOMETRY_OVERLAY_H
#include "geometry/region.h"

enum overlay_join { OVERLAY_MITRE, OVERLAY_ROUND, OVERLAY_BEVEL };

struct region overlay_union(struct arena *, const struct region *a, const struct region *b);
struct region overlay_union_all(struct arena *, const struct region *regions, size_t count);
struct region overlay_difference(struct arena *, const struct region *a, const struct region *b);
struct region overlay_intersection(struct arena *, const struct region *a, const struct region *b);
/* Grown by `distance` (shrunk where negative). ROUND: 16 segments a quarter. */
struct region overlay_offset(struct arena *, const struct region *, double distance,
                             enum overlay_join);
/* All ground within `distance` of the line, round at ends and bends. */
struct region overlay_band(struct arena *, struct line, double distance);
/* Rings without self-crossing and with area: what every outline must be. */
bool overlay_is_simple(struct ring);
/* Name and version of the library, for reports. */
const char *overlay_library(void);

#endif

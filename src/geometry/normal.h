/* normal.h - the one way to write a region, whatever made it: equal ground gives equal
 * points in an equal order.
 * Units: mm. Owns: results live in the arena given.
 * Corners that are none are dropped, and rings without ground; a ring starts at its leftmost
 * point, of those the lowest; largest polygon first, ties by box. */
#ifndef GEOMETRY_NORMAL_H
#define GEOMETRY_NORMAL_H
#include "geometry/region.h"

/* Rings of the region may run either way. Its own polygons and holes come in a new order. */
struct region normal_region(struct arena *, struct region);

/* Drops the corners that are none, until every one left is needed: points in line with their
 * neighbours, the tips of spikes, within `tolerance`. In place; the number left, 0: no ground. */
size_t normal_corners(struct point *, size_t count, double tolerance);

#endif

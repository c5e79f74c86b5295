/* region.h - areas of the floor: rings, polygons with holes, and regions of several.
 * Units: mm, mm2. Owns: points live in the arena given, or with the caller.
 * Invariants: outlines run anticlockwise, holes clockwise, no ring repeats its first
 * point. An empty region is a value, not an error. */
#ifndef GEOMETRY_REGION_H
#define GEOMETRY_REGION_H
#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"
#include "geometry/point.h"

struct ring {
	struct point *points;
	size_t count;
};

struct polygon {
	struct ring outline;
	struct ring *holes;
	size_t hole_count;
};

struct region {
	struct polygon *polygons;
	size_t count;
};

struct box {
	double x0, y0, x1, y1;
};

double ring_area(struct ring); /* signed: positive for anticlockwise */
double ring_length(struct ring);
struct box ring_box(struct ring);
struct ring ring_copy(struct arena *, const struct point *points, size_t count);
/* The same ring, anticlockwise (or clockwise). */
struct ring ring_turned(struct arena *, struct ring, bool anticlockwise);
/* Mean of the corners: inside where the ring is convex. */
struct point ring_middle(struct ring);
/* Where a text finds most room: of the points of a grid over the ring the one farthest from its
 * border; of equal ones the middle of its box, or the first. */
struct point ring_widest(struct ring);
/* Distance from `p` to the nearest point of the ring's border. */
double ring_distance(struct ring, struct point p);
/* True inside; which way a point on the border goes is not defined. */
bool ring_holds(struct ring, struct point p);

struct polygon polygon_copy(struct arena *, const struct polygon *);
double polygon_area(const struct polygon *);
double polygon_distance(const struct polygon *, struct point); /* from the border */
bool polygon_holds(const struct polygon *, struct point);

double region_area(const struct region *);
double region_length(const struct region *); /* of all borders */
bool region_holds(const struct region *, struct point);
struct box region_box(const struct region *);
double region_distance(const struct region *, struct point); /* to the nearest border */
/* Outlines and holes, polygon by polygon, each outline before its holes. */
size_t region_ring_count(const struct region *);
struct ring region_ring(const struct region *, size_t index);
/* One polygon without holes, points copied and turned anticlockwise. */
struct region region_from_ring(struct arena *, struct ring);

static inline struct box box_empty(void)
{
	return (struct box){INFINITY, INFINITY, -INFINITY, -INFINITY};
}
static inline struct box box_with(struct box b, struct point p)
{
	return (struct box){p.x < b.x0 ? p.x : b.x0, p.y < b.y0 ? p.y : b.y0,
	                    p.x > b.x1 ? p.x : b.x1, p.y > b.y1 ? p.y : b.y1};
}
static inline struct box box_grown(struct box b, double by)
{
	return (struct box){b.x0 - by, b.y0 - by, b.x1 + by, b.y1 + by};
}
static inline bool box_meets(struct box a, struct box b)
{
	return a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1;
}

#endif

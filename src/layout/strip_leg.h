/* strip_leg.h - a straight stretch of strip: a rectangle along a run of the crack.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C1, E-C2. */
#ifndef LAYOUT_STRIP_LEG_H
#define LAYOUT_STRIP_LEG_H
#include "base/array.h"
#include "geometry/region.h"

struct strip_leg {
	struct point from, to; /* points of the crack's line */
	struct point along;    /* unit vector between them */
	double length;
	double left, right;             /* how far the rectangle reaches beside the straight line */
	double before, after;           /* how far past its two ends */
	double crack_left, crack_right; /* how far the crack itself strays from it */
	struct line crack;              /* that part of the crack's line */
	struct point *anchors;          /* a point of everything it was made to hold */
	size_t anchor_count;
};

/* Legs of a line: as few as stay within a band of twice `straight`. Each holds all ground within
 * `half_width` of its part of the line, beside it and round its bends. */
struct strip_leg *strip_legs(struct arena *, struct line, double straight, double half_width,
                             size_t *out_count);
/* Grows the leg until it holds the points with `margin` around them. */
void strip_leg_hold(struct strip_leg *, const struct point *points, size_t count, double margin);
double strip_leg_distance(const struct strip_leg *, struct point);
/* Grows the width, half to each side, and the length, at the end that is free, to whole
 * steps. */
void strip_leg_round(struct strip_leg *, double step, bool grows_before);
/* The part of the rectangle from `low` to `high` beside the line, from `start` to `end` along
 * it; both measured from leg->from, left positive. */
struct ring strip_leg_ring(struct arena *, const struct strip_leg *, double low, double high,
                           double start, double end);
/* `p` in the leg's own axes: x along it, y to its left. */
struct point strip_leg_own(const struct strip_leg *, struct point p);

#endif

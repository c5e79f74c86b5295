/* segment.h - straight lines between two points.
 * Units: mm. By value; nothing is owned and nothing fails. */
#ifndef GEOMETRY_SEGMENT_H
#define GEOMETRY_SEGMENT_H
#include <stdbool.h>

#include "geometry/region.h"

struct segment {
	struct point from, to;
};

double segment_length(struct segment);
/* Point of the segment nearest to `p`: its square foot, or the nearer end. */
struct point segment_nearest(struct segment, struct point p);
double segment_distance(struct segment, struct point p);
/* True where the two cross or come nearer than TOLERANCE_SAME. */
bool segment_meets(struct segment, struct segment);
/* The i-th side of a ring, from point i to the next. */
struct segment segment_of_ring(struct ring, size_t i);
/* Least distance between points of the two; 0 where they meet. */
double segment_gap(struct segment a, struct segment b);
/* Where a step by step walk along `a` first meets `b`, as a share of `a`; a touch within
 * TOLERANCE_SAME counts, parallels do not. False: nowhere. */
bool segment_crossing(struct segment a, struct segment b, double *out_share);

#endif

/* beside.h - how far one line runs beside another.
 * Units: mm. By value; nothing fails. */
#ifndef FINDINGS_BESIDE_H
#define FINDINGS_BESIDE_H
#include "geometry/point.h"

/* The longest stretch, along the straight from `a` to `b`, over which `line` stays on one
 * side of it and within `distance`. A line that only crosses counts on each side alone. */
double beside_length(struct line line, struct point a, struct point b, double distance);

#endif

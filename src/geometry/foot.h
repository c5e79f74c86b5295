/* foot.h - the nearest point of a line or border.
 * Units: mm. Nothing is owned. Of two feet equally far (within TOLERANCE_SAME) the one
 * that comes first along the line counts. A line without points has no foot: infinity. */
#ifndef GEOMETRY_FOOT_H
#define GEOMETRY_FOOT_H
#include "geometry/region.h"

struct foot {
	struct point at;
	double distance;
};

struct foot foot_on_line(struct line, struct point);
struct foot foot_on_region(const struct region *, struct point);

#endif

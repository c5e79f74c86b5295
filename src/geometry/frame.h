/* frame.h - a turn about the origin: the lay's own axes (u, v) and back.
 * Units: mm. u points at `angle` anticlockwise from east, v a quarter turn left of it.
 * Quarter turns are exact, so that axis-parallel rooms stay axis-parallel. */
#ifndef GEOMETRY_FRAME_H
#define GEOMETRY_FRAME_H
#include "geometry/region.h"

struct frame {
	double cos, sin; /* of u's angle */
};

struct frame frame_from_deg(double angle_deg);
/* From the nearest axis to a direction, degrees anticlockwise. */
double frame_deg_off_axis(struct point along);

static inline struct point frame_in(struct frame f, struct point p) /* plan -> lay */
{
	return (struct point){f.cos * p.x + f.sin * p.y, f.cos * p.y - f.sin * p.x};
}
static inline struct point frame_out(struct frame f, struct point p) /* lay -> plan */
{
	return (struct point){f.cos * p.x - f.sin * p.y, f.sin * p.x + f.cos * p.y};
}
static inline struct frame frame_inverse(struct frame f)
{
	return (struct frame){f.cos, -f.sin};
}

struct line frame_line_in(struct arena *, struct frame, struct line);
struct line frame_line_out(struct arena *, struct frame, struct line);
struct ring frame_ring_in(struct arena *, struct frame, struct ring);
struct ring frame_ring_out(struct arena *, struct frame, struct ring);
struct region frame_region_in(struct arena *, struct frame, const struct region *);
struct region frame_region_out(struct arena *, struct frame, const struct region *);

#endif

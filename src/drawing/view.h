/* view.h - a window of the floor on a rectangle of paper: the only way from floor
 * millimetres to paper millimetres.
 * Units: floor mm in plan axes (x east, y north), paper mm (y down). `up_deg` is the plan
 * direction (anticlockwise from east) that points to the top of the sheet: 90 for plan
 * north up; quarter turns are exact. */
#ifndef DRAWING_VIEW_H
#define DRAWING_VIEW_H
#include "drawing/paper.h"
#include "geometry/frame.h"
#include "geometry/region.h"

struct view {
	struct frame frame;     /* u to the right of the sheet, v to its top */
	struct point centre;    /* floor point at the centre of `paper` */
	struct paper_box paper; /* where the view lies on the sheet */
	double scale;           /* floor mm per paper mm: 50 for 1:50 */
	/* Where only a part of the floor is seen, that; and what of it is named here, the rest
	 * being named on another sheet. Else NULL. */
	const struct box *window, *core;
};

/* The floor box `window` (in plan axes) centred in `paper`. */
struct view view_make(struct box window, double up_deg, double scale, struct paper_box paper);

struct paper_point view_point(const struct view *, struct point);
/* A direction of the floor on the paper, length 1. */
struct paper_point view_direction(const struct view *, struct point);
static inline double view_length(const struct view *v, double floor_mm)
{
	return floor_mm / v->scale;
}
struct point view_floor(const struct view *, struct paper_point); /* back to the floor */

struct paper_path view_line(struct arena *, const struct view *, struct line);
struct paper_path view_ring(struct arena *, const struct view *, struct ring);
struct paper_path view_region(struct arena *, const struct view *, const struct region *);
struct paper_path view_segment(struct arena *, const struct view *, struct point a, struct point b);
/* Size on paper of a floor box under a turn and a scale. */
struct paper_point view_size(struct box window, double up_deg, double scale);

#endif

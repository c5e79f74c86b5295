/* lay_view.h - one lay in one room, as it lies on a sheet.
 * Units: mm of the lay's own axes, turned to plan axes and then through the view. */
#ifndef SHEETS_LAY_VIEW_H
#define SHEETS_LAY_VIEW_H
#include "drawing/view.h"
#include "layout/placed.h"

struct lay_view {
	const struct placed_lay *lay;
	const struct view *view;
	const struct site_room *room;
	struct region ground; /* of the room, plan axes */
};

struct lay_view lay_view_make(struct arena *, const struct placed_lay *, const struct view *,
                              const struct site_room *);
/* The lay that the room is tiled with; NULL: none. */
const struct placed_lay *lay_of_room(const struct placed *, const struct site_room *);
/* True where a point of the lay lies in the room, or at its walls. */
bool lay_view_has(const struct lay_view *, struct point);

static inline struct point lay_view_plan(const struct lay_view *v, struct point p)
{
	return frame_out(v->lay->field->frame, p);
}
/* Control line of the room along u (LINE 1) or v (LINE 2); NULL: none. */
const struct control *lay_view_control(const struct lay_view *, bool along_u);
struct paper_point lay_view_point(const struct lay_view *, struct point);
/* Direction on the paper of a vector of the lay. */
struct paper_point lay_view_direction(const struct lay_view *, struct point);
struct paper_path lay_view_segment(struct arena *, const struct lay_view *, struct point,
                                   struct point);
struct paper_path lay_view_line(struct arena *, const struct lay_view *, struct line);
struct paper_path lay_view_ring(struct arena *, const struct lay_view *, struct ring);
struct paper_path lay_view_region(struct arena *, const struct lay_view *, const struct region *);

#endif

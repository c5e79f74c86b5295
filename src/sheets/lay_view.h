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
	struct region ground; /* of the room, as far as the view shows it; plan axes */
	bool is_cut;          /* the lay goes on in other rooms, or past the view */
	/* Of a lay that goes on, in the lay's axes: what is seen of it, and named here. */
	struct region reach, named;
};

struct lay_view lay_view_make(struct arena *, const struct placed_lay *, const struct view *,
                              const struct site_room *);
/* Ground of the room, as far as the view shows it; plan axes. */
struct region view_ground(struct arena *, const struct view *, const struct site_room *);
/* The longest part of a line of the floor that is named here; count 0: none. */
struct line view_named(struct arena *, const struct view *, struct line);
/* The lay that the room is tiled with; NULL: none. */
const struct placed_lay *lay_of_room(const struct placed *, const struct site_room *);
/* True where a point of the lay lies in the room, or at its walls, and is named here. */
bool lay_view_has(const struct lay_view *, struct point);

static inline struct point lay_view_plan(const struct lay_view *v, struct point p)
{
	return frame_out(v->lay->field->frame, p);
}
/* True where the lay's axes are not those of the plan. */
bool lay_view_is_turned(const struct lay_view *);
/* No wall runs beside the control line: it is told by its marks on the walls that it meets. */
bool lay_view_is_marked(const struct lay_view *, const struct control *);
/* Control line of the room along u (LINE 1) or v (LINE 2); NULL: none. */
const struct control *lay_view_control(const struct lay_view *, bool along_u);
struct paper_point lay_view_point(const struct lay_view *, struct point);
/* Direction on the paper of a vector of the lay. */
struct paper_point lay_view_direction(const struct lay_view *, struct point);
/* Of what lies in other rooms nothing is seen: paths may be empty, or in more parts. */
struct paper_path lay_view_line(struct arena *, const struct lay_view *, struct line);
struct paper_path lay_view_lines(struct arena *, const struct lay_view *, const struct line *,
                                 size_t count);
/* What of a region is seen, in the lay's axes; and of lines what lies in such a region. */
struct region lay_view_seen(struct arena *, const struct lay_view *, const struct region *);
struct paper_path lay_view_lines_in(struct arena *, const struct lay_view *, const struct line *,
                                    size_t count, const struct region *seen);
/* The longest part of the line that is named here, in the lay's axes; count 0: none. */
struct line lay_view_named(struct arena *, const struct lay_view *, struct line);
/* Of what is named here of a region the largest polygon, in the lay's axes; NULL: nothing is. */
const struct polygon *lay_view_named_most(struct arena *, const struct lay_view *,
                                          const struct region *);
/* True where some of the line is named here; without a view (NULL) all of the lay is. */
bool lay_view_names(struct arena *, const struct lay_view *, struct line);
/* To be filled; and the border to be stroked, open where a wall of the room cuts it. */
struct paper_path lay_view_ring(struct arena *, const struct lay_view *, struct ring);
struct paper_path lay_view_region(struct arena *, const struct lay_view *, const struct region *);
struct paper_path lay_view_border(struct arena *, const struct lay_view *, const struct region *);

#endif

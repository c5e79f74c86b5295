#include "sheets/lay_view.h"

/* Joints and strips end at the walls, or a gap before them: that far out still counts. */
static const double WALL_REACH = 30;

struct lay_view lay_view_make(struct arena *arena, const struct placed_lay *lay,
                              const struct view *view, const struct site_room *room)
{
	return (struct lay_view){lay, view, room, site_room_ground(arena, room)};
}

const struct placed_lay *lay_of_room(const struct placed *placed, const struct site_room *room)
{
	for (size_t i = 0; i < placed->lay_count; i++)
		for (size_t k = 0; k < placed->lays[i].field->room_count; k++)
			if (placed->lays[i].field->rooms[k] == room)
				return &placed->lays[i];
	return NULL;
}

bool lay_view_has(const struct lay_view *v, struct point p)
{
	struct point at = lay_view_plan(v, p);
	return region_holds(&v->ground, at) || region_distance(&v->ground, at) < WALL_REACH;
}

const struct control *lay_view_control(const struct lay_view *v, bool along_u)
{
	const struct controls *controls = v->lay->controls;
	for (size_t i = 0; i < controls->control_count; i++)
		if (controls->controls[i].room == v->room &&
		    controls->controls[i].along_u == along_u)
			return &controls->controls[i];
	return NULL;
}

struct paper_point lay_view_point(const struct lay_view *v, struct point p)
{
	return view_point(v->view, lay_view_plan(v, p));
}

struct paper_point lay_view_direction(const struct lay_view *v, struct point direction)
{
	return view_direction(v->view, lay_view_plan(v, direction));
}

struct paper_path lay_view_segment(struct arena *arena, const struct lay_view *v, struct point a,
                                   struct point b)
{
	return paper_path_segment(arena, lay_view_point(v, a), lay_view_point(v, b));
}

struct paper_path lay_view_line(struct arena *arena, const struct lay_view *v, struct line line)
{
	return view_line(arena, v->view, frame_line_out(arena, v->lay->field->frame, line));
}

struct paper_path lay_view_ring(struct arena *arena, const struct lay_view *v, struct ring ring)
{
	return view_ring(arena, v->view, frame_ring_out(arena, v->lay->field->frame, ring));
}

struct paper_path lay_view_region(struct arena *arena, const struct lay_view *v,
                                  const struct region *region)
{
	struct region turned = frame_region_out(arena, v->lay->field->frame, region);
	return view_region(arena, v->view, &turned);
}

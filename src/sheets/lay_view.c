#include "sheets/lay_view.h"

#include "base/array.h"
#include "geometry/clip.h"
#include "geometry/line.h"
#include "geometry/overlay.h"

/* Joints and strips end at the walls, or a gap before them: that far out still counts. */
static const double WALL_REACH = 30;
/* Cosine times sine of a quarter turn, with room for rounding. */
static const double SQUARE = 1e-12;

/* Of two polygons alike (mm2) the first is the larger. */
static const double MORE_AREA = 1;

static struct region region_of_box(struct arena *arena, struct box b)
{
	struct point corners[] = {{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}};
	return region_from_ring(arena, (struct ring){corners, 4});
}

struct region view_ground(struct arena *arena, const struct view *view,
                          const struct site_room *room)
{
	struct region ground = site_room_ground(arena, room);
	if (!view->window)
		return ground;
	struct region window = region_of_box(arena, *view->window);
	return overlay_intersection(arena, &ground, &window);
}

struct lay_view lay_view_make(struct arena *arena, const struct placed_lay *lay,
                              const struct view *view, const struct site_room *room)
{
	struct lay_view v = {.lay = lay,
	                     .view = view,
	                     .room = room,
	                     .ground = view_ground(arena, view, room),
	                     .is_cut = lay->field->room_count > 1 || view->window};
	if (v.is_cut) {
		struct region ground = frame_region_in(arena, lay->field->frame, &v.ground);
		v.reach = overlay_offset(arena, &ground, WALL_REACH, OVERLAY_MITRE);
		v.named = v.reach;
	}
	if (view->core) {
		struct region core = region_of_box(arena, *view->core);
		core = frame_region_in(arena, lay->field->frame, &core);
		v.named = overlay_intersection(arena, &v.reach, &core);
	}
	return v;
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
	const struct box *core = v->view->core;
	if (core && (at.x < core->x0 || at.x > core->x1 || at.y < core->y0 || at.y > core->y1))
		return false;
	return region_holds(&v->ground, at) || region_distance(&v->ground, at) < WALL_REACH;
}

bool lay_view_is_turned(const struct lay_view *v)
{
	const struct frame *frame = &v->lay->field->frame;
	return fabs(frame->cos * frame->sin) > SQUARE;
}

bool lay_view_is_marked(const struct lay_view *v, const struct control *control)
{
	bool is_marked = lay_view_is_turned(v);
	for (size_t i = 0; i < control->offset_count; i++)
		is_marked = is_marked || field_is_askew(control->offsets[i].at_wall,
		                                        control->offsets[i].at_line);
	return is_marked;
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

struct path_lines {
	ARRAY_OF(struct paper_line) list;
};

static void add_line(struct arena *arena, const struct lay_view *v, struct path_lines *lines,
                     struct line line)
{
	line = frame_line_out(arena, v->lay->field->frame, line);
	*array_push(arena, &lines->list) = view_line(arena, v->view, line).lines[0];
}

struct paper_path lay_view_lines_in(struct arena *arena, const struct lay_view *v,
                                    const struct line *lines, size_t count,
                                    const struct region *seen)
{
	struct path_lines path = {0};
	for (size_t i = 0; i < count; i++) {
		size_t part_count;
		struct line *parts = clip_line(arena, lines[i], seen, &part_count);
		for (size_t k = 0; k < part_count; k++)
			add_line(arena, v, &path, parts[k]);
	}
	return (struct paper_path){path.list.items, path.list.count};
}

struct paper_path lay_view_lines(struct arena *arena, const struct lay_view *v,
                                 const struct line *lines, size_t count)
{
	struct path_lines path = {0};
	if (v->is_cut)
		return lay_view_lines_in(arena, v, lines, count, &v->reach);
	for (size_t i = 0; i < count; i++)
		add_line(arena, v, &path, lines[i]);
	return (struct paper_path){path.list.items, path.list.count};
}

struct paper_path lay_view_line(struct arena *arena, const struct lay_view *v, struct line line)
{
	return lay_view_lines(arena, v, &line, 1);
}

static struct line longest_in(struct arena *arena, struct line line, const struct region *region)
{
	size_t count, best = 0;
	struct line *parts = clip_line(arena, line, region, &count);
	for (size_t i = 1; i < count; i++)
		if (line_length(parts[i]) > line_length(parts[best]) + 1)
			best = i;
	return count > 0 ? parts[best] : (struct line){0};
}

struct line lay_view_named(struct arena *arena, const struct lay_view *v, struct line line)
{
	return v->is_cut ? longest_in(arena, line, &v->named) : line;
}

bool lay_view_names(struct arena *arena, const struct lay_view *v, struct line line)
{
	return !v || lay_view_named(arena, v, line).count >= 2;
}

struct line view_named(struct arena *arena, const struct view *view, struct line line)
{
	if (!view->core)
		return line;
	struct region core = region_of_box(arena, *view->core);
	return longest_in(arena, line, &core);
}

struct paper_path lay_view_ring(struct arena *arena, const struct lay_view *v, struct ring ring)
{
	if (v->is_cut) {
		struct region region = region_from_ring(arena, ring);
		return lay_view_region(arena, v, &region);
	}
	return view_ring(arena, v->view, frame_ring_out(arena, v->lay->field->frame, ring));
}

struct region lay_view_seen(struct arena *arena, const struct lay_view *v,
                            const struct region *region)
{
	return v->is_cut ? overlay_intersection(arena, region, &v->reach) : *region;
}

const struct polygon *lay_view_named_most(struct arena *arena, const struct lay_view *v,
                                          const struct region *region)
{
	struct region *named = ARENA_NEW(arena, struct region);
	*named = v->is_cut ? overlay_intersection(arena, region, &v->named) : *region;
	const struct polygon *most = NULL;
	for (size_t i = 0; i < named->count; i++)
		if (!most || polygon_area(&named->polygons[i]) > polygon_area(most) + MORE_AREA)
			most = &named->polygons[i];
	return most;
}

struct paper_path lay_view_region(struct arena *arena, const struct lay_view *v,
                                  const struct region *region)
{
	struct region seen = lay_view_seen(arena, v, region);
	struct region turned = frame_region_out(arena, v->lay->field->frame, &seen);
	return view_region(arena, v->view, &turned);
}

struct paper_path lay_view_border(struct arena *arena, const struct lay_view *v,
                                  const struct region *region)
{
	size_t count = region_ring_count(region);
	struct line *lines = ARENA_ARRAY(arena, struct line, count);
	if (!v->is_cut)
		return lay_view_region(arena, v, region);
	for (size_t i = 0; i < count; i++) {
		struct ring ring = region_ring(region, i);
		lines[i] = (struct line){ARENA_ARRAY(arena, struct point, ring.count + 1),
		                         ring.count + 1};
		for (size_t k = 0; k < lines[i].count; k++)
			lines[i].points[k] = ring.points[k % ring.count];
	}
	return lay_view_lines(arena, v, lines, count);
}

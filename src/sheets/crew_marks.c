#include "sheets/crew_marks.h"

#include <math.h>

#include "sheets/strip_corners.h"

/* Floor mm. Nearer places are one; what lies this near to a wall is the wall. */
static const double SAME_PLACE = 3, AT_WALL = 40;

struct places_pair {
	struct places axes[2]; /* x, y */
};

/* What lies at a wall is the wall, and has its own dimension. */
static void add_axis(struct arena *arena, struct places *places, double at, double from, double to)
{
	if (at - from >= AT_WALL && to - at >= AT_WALL)
		*array_push(arena, &places->at) = at;
}

static void add_point(struct arena *arena, struct places_pair *all, const struct lay_view *v,
                      struct box window, struct point p)
{
	if (!lay_view_has(v, p))
		return;
	struct point at = lay_view_plan(v, p);
	add_axis(arena, &all->axes[0], at.x, window.x0, window.x1);
	add_axis(arena, &all->axes[1], at.y, window.y0, window.y1);
}

static void add_ring(struct arena *arena, struct places_pair *all, const struct lay_view *v,
                     struct box window, struct ring ring)
{
	ring = strip_outline_blunted(arena, ring);
	for (size_t i = 0; i < ring.count; i++)
		add_point(arena, all, v, window, ring.points[i]);
}

static void add_strips(struct arena *arena, struct places_pair *all, const struct lay_view *v,
                       struct box window)
{
	for (size_t i = 0; i < v->lay->strips->strip_count; i++) {
		const struct region *region = &v->lay->strips->strips[i].region;
		if (strip_is_askew(arena, v, &v->lay->strips->strips[i]))
			continue;
		for (size_t k = 0; k < region->count; k++)
			add_ring(arena, all, v, window, region->polygons[k].outline);
	}
}

static void add_joint_ends(struct arena *arena, struct places_pair *all, const struct lay_view *v,
                           struct box window)
{
	for (size_t i = 0; i < v->lay->joints->joint_count; i++) {
		const struct joint *joint = &v->lay->joints->joints[i];
		if (joint->kind == JOINT_PERIMETER || joint->line.count < 2)
			continue;
		add_point(arena, all, v, window, joint->line.points[0]);
		add_point(arena, all, v, window, joint->line.points[joint->line.count - 1]);
	}
}

static void find_origins(struct crew_marks *marks, const struct lay_view *v)
{
	const struct controls *controls = v->lay->controls;
	for (size_t i = 0; i < controls->control_count; i++) {
		const struct control *control = &controls->controls[i];
		if (control->room != v->room)
			continue;
		struct point a = lay_view_plan(v, control->from), b = lay_view_plan(v, control->to);
		int axis = fabs(b.x - a.x) < fabs(b.y - a.y) ? 0 : 1;
		marks->origin[axis] = axis == 0 ? a.x : a.y;
		marks->has_origin[axis] = true;
	}
}

static bool is_square(const struct frame *frame)
{
	return fabs(frame->cos * frame->sin) < 1e-12;
}

/* Sorted, each place once, without the control line itself. */
static struct places tidy(struct arena *arena, struct places all, double origin)
{
	struct places kept = {0};
	places_sort(&all, SAME_PLACE);
	for (size_t i = 0; i < all.at.count; i++)
		if (fabs(all.at.items[i] - origin) >= SAME_PLACE)
			*array_push(arena, &kept.at) = all.at.items[i];
	return kept;
}

struct crew_marks crew_marks_find(struct arena *arena, const struct lay_view *v, struct box window)
{
	struct crew_marks marks = {0};
	struct places_pair all = {0};
	if (!is_square(&v->lay->field->frame))
		return marks;
	find_origins(&marks, v);
	add_strips(arena, &all, v, window);
	add_joint_ends(arena, &all, v, window);
	if (marks.has_origin[0])
		marks.sides[SIDE_BOTTOM] = tidy(arena, all.axes[0], marks.origin[0]);
	if (marks.has_origin[1])
		marks.sides[SIDE_LEFT] = tidy(arena, all.axes[1], marks.origin[1]);
	return marks;
}

struct places room_corners(struct arena *arena, const struct site_room *room, enum side side)
{
	struct places places = {0};
	for (size_t i = 0; i < room->edge_count; i = site_wall_end(room, i)) {
		struct point p = room->outline.points[i];
		*array_push(arena, &places.at) = side_is_level(side) ? p.x : p.y;
	}
	places_sort(&places, SAME_PLACE);
	return places;
}

#include "sheets/crew_marks.h"

#include <math.h>

/* Floor mm. Nearer places are one; what lies this near to a wall is the wall. */
static const double SAME_PLACE = 3, AT_WALL = 40;

struct candidate {
	double at;         /* along the side */
	double low, high;  /* distance to the two sides that it can be given to */
};

struct candidates {
	ARRAY_OF(struct candidate) axes[2];
};

static void add_axis(struct arena *arena, struct candidates *all, int axis, double at, double low,
                     double high, double from, double to)
{
	if (at - from < AT_WALL || to - at < AT_WALL)
		return;
	for (size_t i = 0; i < all->axes[axis].count; i++) {
		struct candidate *c = &all->axes[axis].items[i];
		if (fabs(c->at - at) < SAME_PLACE) {
			c->low = fmin(c->low, low);
			c->high = fmin(c->high, high);
			return;
		}
	}
	*array_push(arena, &all->axes[axis]) = (struct candidate){at, low, high};
}

static void add_point(struct arena *arena, struct candidates *all, const struct lay_view *v,
                      struct box window, struct point p)
{
	if (!lay_view_has(v, p))
		return;
	struct point at = lay_view_plan(v, p);
	add_axis(arena, all, 0, at.x, at.y - window.y0, window.y1 - at.y, window.x0, window.x1);
	add_axis(arena, all, 1, at.y, at.x - window.x0, window.x1 - at.x, window.y0, window.y1);
}

static void add_ring(struct arena *arena, struct candidates *all, const struct lay_view *v,
                     struct box window, struct ring ring)
{
	for (size_t i = 0; i < ring.count; i++)
		add_point(arena, all, v, window, ring.points[i]);
}

static void add_strips(struct arena *arena, struct candidates *all, const struct lay_view *v,
                       struct box window)
{
	for (size_t i = 0; i < v->lay->strips->strip_count; i++) {
		const struct region *region = &v->lay->strips->strips[i].region;
		for (size_t k = 0; k < region->count; k++)
			add_ring(arena, all, v, window, region->polygons[k].outline);
	}
}

static void add_joint_ends(struct arena *arena, struct candidates *all, const struct lay_view *v,
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

struct crew_marks crew_marks_find(struct arena *arena, const struct lay_view *v, struct box window)
{
	static const enum side LOW[] = {SIDE_BOTTOM, SIDE_LEFT}, HIGH[] = {SIDE_TOP, SIDE_RIGHT};
	struct crew_marks marks = {0};
	struct candidates all = {0};
	if (!is_square(&v->lay->field->frame))
		return marks;
	find_origins(&marks, v);
	add_strips(arena, &all, v, window);
	add_joint_ends(arena, &all, v, window);
	for (int axis = 0; axis < 2; axis++)
		for (size_t i = 0; marks.has_origin[axis] && i < all.axes[axis].count; i++) {
			struct candidate c = all.axes[axis].items[i];
			if (fabs(c.at - marks.origin[axis]) < SAME_PLACE)
				continue;
			enum side side = c.low <= c.high + SAME_PLACE ? LOW[axis] : HIGH[axis];
			*array_push(arena, &marks.sides[side].at) = c.at;
		}
	for (int side = 0; side < SIDE_COUNT; side++)
		places_sort(&marks.sides[side], SAME_PLACE);
	return marks;
}

struct places room_corners(struct arena *arena, const struct site_room *room, enum side side)
{
	struct places places = {0};
	for (size_t i = 0; i < room->outline.count; i++) {
		struct point p = room->outline.points[i];
		*array_push(arena, &places.at) = side_is_level(side) ? p.x : p.y;
	}
	places_sort(&places, SAME_PLACE);
	return places;
}

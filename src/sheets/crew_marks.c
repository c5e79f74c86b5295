#include "sheets/crew_marks.h"

#include <math.h>

#include "geometry/segment.h"
#include "sheets/locate.h"
#include "sheets/strip_corners.h"

/* Floor mm. Nearer places are one; what lies this near to a wall is the wall. */
static const double SAME_PLACE = 8, SAME_MARK = 8, AT_WALL = 40;
/* A wall off its axis by more than this share of its length fixes no place on the other. */
static const double SLANT = 0.02;

struct places_pair {
	struct places axes[2]; /* x, y */
};

/* Places of one axis that the walls fix: a wall along x fixes y. */
static void find_fixed(const struct site_room *room, struct point at, bool fixed[2])
{
	for (size_t i = 0; i < room->edge_count; i++) {
		struct segment edge = {room->edges[i].from, room->edges[i].to};
		struct point along = point_unit(point_sub(edge.to, edge.from));
		if (segment_distance(edge, at) >= AT_WALL)
			continue;
		fixed[0] = fixed[0] || fabs(along.x) < SLANT;
		fixed[1] = fixed[1] || fabs(along.y) < SLANT;
	}
}

/* What lies at a wall has the wall's own dimension. */
static void add_point(struct arena *arena, struct places_pair *all, const struct lay_view *v,
                      struct point p)
{
	bool fixed[2] = {false, false};
	struct point at = lay_view_plan(v, p);
	if (!lay_view_has(v, p))
		return;
	find_fixed(v->room, at, fixed);
	if (!fixed[0])
		*array_push(arena, &all->axes[0].at) = at.x;
	if (!fixed[1])
		*array_push(arena, &all->axes[1].at) = at.y;
}

static void add_ring(struct arena *arena, struct places_pair *all, const struct lay_view *v,
                     struct ring ring)
{
	ring = strip_outline_blunted(arena, ring);
	for (size_t i = 0; i < ring.count; i++)
		add_point(arena, all, v, ring.points[i]);
}

static void add_strips(struct arena *arena, struct places_pair *all, const struct lay_view *v)
{
	for (size_t i = 0; i < v->lay->strips->strip_count; i++) {
		const struct region *region = &v->lay->strips->strips[i].region;
		if (strip_is_askew(arena, v, &v->lay->strips->strips[i]))
			continue;
		for (size_t k = 0; k < region->count; k++)
			add_ring(arena, all, v, region->polygons[k].outline);
	}
}

static void add_joint_ends(struct arena *arena, struct places_pair *all, const struct lay_view *v)
{
	for (size_t i = 0; i < v->lay->joints->joint_count; i++) {
		const struct joint *joint = &v->lay->joints->joints[i];
		if (joint->kind == JOINT_PERIMETER || joint->line.count < 2)
			continue;
		add_point(arena, all, v, joint->line.points[0]);
		add_point(arena, all, v, joint->line.points[joint->line.count - 1]);
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

/* Sorted, each place once, without the control line itself. */
static struct places tidy(struct arena *arena, struct places all, double origin)
{
	struct places kept = {0};
	places_sort(&all, SAME_MARK);
	for (size_t i = 0; i < all.at.count; i++)
		if (fabs(all.at.items[i] - origin) >= SAME_MARK)
			*array_push(arena, &kept.at) = all.at.items[i];
	return kept;
}

static void mark_square(struct arena *arena, const struct lay_view *v, struct crew_marks *marks)
{
	struct places_pair all = {0};
	find_origins(marks, v);
	add_strips(arena, &all, v);
	add_joint_ends(arena, &all, v);
	if (marks->has_origin[0])
		marks->sides[SIDE_BOTTOM] = tidy(arena, all.axes[0], marks->origin[0]);
	if (marks->has_origin[1])
		marks->sides[SIDE_LEFT] = tidy(arena, all.axes[1], marks->origin[1]);
}

static void mark_ends(struct arena *arena, const struct lay_view *v, struct crew_marks *marks)
{
	const struct controls *controls = v->lay->controls;
	struct located all = {0};
	for (size_t i = 0; i < controls->control_count; i++) {
		const struct control *control = &controls->controls[i];
		struct point ends[] = {lay_view_plan(v, control->from),
		                       lay_view_plan(v, control->to)};
		if (control->room == v->room && lay_view_is_marked(v, control))
			locate_line(arena, &all, ring_box(v->room->outline),
			            (struct line){ends, 2});
	}
	for (int s = 0; s < SIDE_COUNT; s++) {
		struct places corners = room_corners(arena, v->room, (enum side)s);
		for (size_t i = 0; all.sides[s].at.count > 0 && i < corners.at.count; i++)
			*array_push(arena, &all.sides[s].at) = corners.at.items[i];
		places_sort(&all.sides[s], SAME_PLACE);
		marks->ends[s] = all.sides[s];
	}
	for (size_t i = 0; i < all.inside.count; i++)
		*array_push(arena, &marks->inside) = all.inside.items[i];
}

struct crew_marks crew_marks_find(struct arena *arena, const struct lay_view *v)
{
	struct crew_marks marks = {0};
	if (!lay_view_is_turned(v))
		mark_square(arena, v, &marks);
	mark_ends(arena, v, &marks);
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

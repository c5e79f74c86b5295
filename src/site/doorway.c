#include "site/doorway.h"

#include <stdlib.h>

#include "geometry/tolerance.h"
#include "site/outline.h"
#include "site/passage.h"
#include "site/spot.h"

static double stop_depth(const struct plan_doorway *plan)
{
	static const double SHARES[] = {
		[PLAN_STOP_NEAR] = 0,
		[PLAN_STOP_MIDDLE] = 0.5,
		[PLAN_STOP_FAR] = 1,
	};
	return SHARES[plan->stop] * length_mm(plan->deep_nm);
}

/* A wall's own tape may say a little more than is left of it after closing. */
static double taped_length(const struct site_room *room, size_t edge)
{
	const struct site_edge *wall = &room->edges[edge];
	double length = point_distance(wall->from, wall->to);
	const struct plan_wall *written = outline_wall(room, edge);
	return room->plan->run ? fmax(length, length_mm(written->length_nm)) : length;
}

static bool is_within_wall(struct build *build, const struct site_room *room,
                           const struct plan_doorway *plan, size_t edge)
{
	const struct site_edge *wall = &room->edges[edge];
	double length = taped_length(room, edge);
	double end = length_mm(plan->from_nm + plan->width_nm);
	if (plan->from_nm >= 0 && end <= length + TOLERANCE_SAME)
		return true;
	diag_error(build->diags, plan->line,
	           "doorway \"%s\" runs from %s to %s along wall \"%s\"; expected within its %s",
	           plan->id, build_length_text(build, length_mm(plan->from_nm)),
	           build_length_text(build, end), wall->id, build_length_text(build, length));
	return false;
}

static bool is_in_straight_wall(struct build *build, const struct site_room *room,
                                const struct plan_doorway *plan, size_t edge)
{
	if (outline_wall(room, edge)->rise_nm == 0)
		return true;
	diag_error(build->diags, plan->line,
	           "doorway \"%s\" is in the curved wall \"%s\"; expected a straight wall",
	           plan->id, room->edges[edge].id);
	return false;
}

static bool is_in_closed_wall(struct build *build, const struct site_room *room,
                              const struct plan_doorway *plan, size_t edge)
{
	const struct plan_wall *wall = outline_wall(room, edge);
	if (wall->kind != PLAN_WALL_OPEN)
		return true;
	diag_error(build->diags, plan->line,
	           "doorway \"%s\" is in the open edge \"%s\"; expected a wall", plan->id,
	           wall->id);
	return false;
}

/* The wall a doorway is in; NULL where an error told already leaves none. */
static const struct build_wall *wall_of(const struct build *build, const struct site_room *room,
                                        const struct plan_doorway *plan)
{
	if (build_is_faulty(build, plan->given, plan->line))
		return NULL;
	const struct build_wall *wall = build_wall_find(build, plan->wall);
	return wall && wall->is_built && wall->owner == room ? wall : NULL;
}

static struct site_doorway doorway_in(struct build *build, const struct site_room *room,
                                      const struct plan_doorway *plan, size_t edge)
{
	const struct site_edge *wall = &room->edges[edge];
	double length = point_distance(wall->from, wall->to), depth = stop_depth(plan);
	double near = fmin(length_mm(plan->from_nm), length);
	double far = fmin(length_mm(plan->from_nm + plan->width_nm), length);
	double first = wall->reversed ? far : near, last = wall->reversed ? near : far;
	struct site_doorway doorway = {
		.plan = plan,
		.id = plan->id,
		.edge = edge,
		.from = spot_on_edge(wall, first, 0),
		.to = spot_on_edge(wall, last, 0),
		.stop_from = spot_on_edge(wall, first, -depth),
		.stop_to = spot_on_edge(wall, last, -depth),
	};
	doorway.end = SITE_EDGE_STOP;
	if (depth > 0)
		doorway.recess = passage_recess(build->arena, &doorway);
	return doorway;
}

/* ---- overlaps ---- */

/* A doorway where it stands along its wall. */
struct stretch {
	const struct site_doorway *doorway;
	double near, far;
};

static struct stretch stretch_of(const struct site_room *room, const struct site_doorway *doorway)
{
	const struct site_edge *wall = &room->edges[doorway->edge];
	struct point along = point_unit(point_sub(wall->to, wall->from));
	return (struct stretch){
		doorway,
		point_dot(point_sub(doorway->from, wall->from), along),
		point_dot(point_sub(doorway->to, wall->from), along),
	};
}

static int along_walls(const void *a, const void *b)
{
	const struct stretch *x = a, *y = b;
	if (x->doorway->edge != y->doorway->edge)
		return x->doorway->edge < y->doorway->edge ? -1 : 1;
	if (fabs(x->near - y->near) > TOLERANCE_SAME)
		return x->near < y->near ? -1 : 1;
	return x->doorway->plan->line - y->doorway->plan->line;
}

static void tell_overlap(struct build *build, const struct site_room *room,
                         const struct site_doorway *a, const struct site_doorway *b)
{
	const struct site_doorway *first = a->plan->line <= b->plan->line ? a : b;
	const struct site_doorway *second = first == a ? b : a;
	diag_error(build->diags, second->plan->line,
	           "doorway \"%s\" lies over doorway \"%s\" in wall \"%s\"; "
	           "expected doorways side by side",
	           second->id, first->id, room->edges[second->edge].id);
}

static void check_overlaps(struct build *build, const struct site_room *room)
{
	size_t count = room->doorway_count;
	struct stretch *sorted = ARENA_ARRAY(build->arena, struct stretch, count);
	for (size_t i = 0; i < count; i++)
		sorted[i] = stretch_of(room, &room->doorways[i]);
	if (count)
		qsort(sorted, count, sizeof *sorted, along_walls);
	const struct stretch *furthest = NULL;
	for (size_t i = 0; i < count; i++) {
		bool same_wall = furthest && furthest->doorway->edge == sorted[i].doorway->edge;
		if (same_wall && sorted[i].near < furthest->far - TOLERANCE_SAME)
			tell_overlap(build, room, furthest->doorway, sorted[i].doorway);
		if (!same_wall || sorted[i].far > furthest->far)
			furthest = &sorted[i];
	}
}

/* ---- all of them ---- */

static void build_own(struct build *build, struct site_room *room)
{
	const struct plan_room *plan = room->plan;
	for (size_t i = 0; i < plan->doorway_count; i++) {
		const struct plan_doorway *written = &plan->doorways[i];
		const struct build_wall *wall = wall_of(build, room, written);
		if (wall && is_in_closed_wall(build, room, written, wall->edge) &&
		    is_in_straight_wall(build, room, written, wall->edge) &&
		    is_within_wall(build, room, written, wall->edge))
			room->doorways[room->doorway_count++] =
				doorway_in(build, room, written, wall->edge);
	}
}

static size_t count_doorways_to(const struct plan *plan, const struct plan_room *to)
{
	size_t count = 0;
	for (size_t i = 0; i < plan->room_count; i++)
		for (size_t k = 0; k < plan->rooms[i].doorway_count; k++)
			count += plan->rooms[i].doorways[k].to == to;
	return count;
}

/* Doorways to other rooms; those that lead nowhere are dropped. */
static void link_own(struct build *build, struct site_room *room)
{
	struct site *site = build->site;
	size_t kept = 0, own = room->doorway_count;
	for (size_t i = 0; i < own; i++) {
		const struct plan_room *to = room->doorways[i].plan->to;
		bool is_declared_here = room->doorways[i].beyond == NULL;
		struct site_room *beyond = to ? &site->rooms[to - build->plan->rooms] : NULL;
		if (!beyond || !is_declared_here ||
		    passage_link(build, room, &room->doorways[i], beyond))
			room->doorways[kept++] = room->doorways[i];
	}
	room->doorway_count = kept;
}

void doorway_build_all(struct build *build)
{
	struct site *site = build->site;
	for (size_t i = 0; i < site->room_count; i++) {
		struct site_room *room = &site->rooms[i];
		size_t most =
			room->plan->doorway_count + count_doorways_to(build->plan, room->plan);
		room->doorways = ARENA_ARRAY(build->arena, struct site_doorway, most);
		build_own(build, room);
	}
	for (size_t i = 0; i < site->room_count; i++)
		link_own(build, &site->rooms[i]);
	for (size_t i = 0; i < site->room_count; i++)
		check_overlaps(build, &site->rooms[i]);
}

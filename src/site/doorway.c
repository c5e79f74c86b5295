#include "site/doorway.h"

#include <stdlib.h>

#include "geometry/tolerance.h"
#include "site/outline.h"
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

/* The wall a doorway is in; NULL where an error told already leaves none. */
static const struct build_wall *wall_of(const struct build *build, const struct site_room *room,
                                        const struct plan_doorway *plan)
{
	if (build_is_faulty(build, plan->given, plan->line))
		return NULL;
	const struct build_wall *wall = build_wall_find(build, plan->wall);
	return wall && wall->is_built && wall->owner == room ? wall : NULL;
}

static struct ring recess_of(struct arena *arena, const struct site_doorway *doorway)
{
	const struct point corners[] = {doorway->from, doorway->stop_from, doorway->stop_to,
	                                doorway->to};
	return ring_copy(arena, corners, 4);
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
	if (depth > 0)
		doorway.recess = recess_of(build->arena, &doorway);
	return doorway;
}

/* ---- overlaps ---- */

static int along_walls(const void *a, const void *b)
{
	const struct site_doorway *const *x = a, *const *y = b;
	const struct plan_doorway *p = (*x)->plan, *q = (*y)->plan;
	if ((*x)->edge != (*y)->edge)
		return (*x)->edge < (*y)->edge ? -1 : 1;
	if (p->from_nm != q->from_nm)
		return p->from_nm < q->from_nm ? -1 : 1;
	return p < q ? -1 : p > q;
}

static int64_t end_nm(const struct site_doorway *doorway)
{
	return doorway->plan->from_nm + doorway->plan->width_nm;
}

static void tell_overlap(struct build *build, const struct site_room *room,
                         const struct site_doorway *a, const struct site_doorway *b)
{
	const struct site_doorway *first = a->plan < b->plan ? a : b;
	const struct site_doorway *second = first == a ? b : a;
	diag_error(build->diags, second->plan->line,
	           "doorway \"%s\" lies over doorway \"%s\" in wall \"%s\"; "
	           "expected doorways side by side",
	           second->id, first->id, room->edges[second->edge].id);
}

static void check_overlaps(struct build *build, const struct site_room *room)
{
	size_t count = room->doorway_count;
	const struct site_doorway **sorted =
		ARENA_ARRAY(build->arena, const struct site_doorway *, count);
	for (size_t i = 0; i < count; i++)
		sorted[i] = &room->doorways[i];
	if (count)
		qsort(sorted, count, sizeof *sorted, along_walls);
	const struct site_doorway *furthest = NULL;
	for (size_t i = 0; i < count; i++) {
		bool same_wall = furthest && furthest->edge == sorted[i]->edge;
		if (same_wall && sorted[i]->plan->from_nm < end_nm(furthest))
			tell_overlap(build, room, furthest, sorted[i]);
		if (!same_wall || end_nm(sorted[i]) > end_nm(furthest))
			furthest = sorted[i];
	}
}

void doorway_build_all(struct build *build, struct site_room *room)
{
	const struct plan_room *plan = room->plan;
	room->doorways = ARENA_ARRAY(build->arena, struct site_doorway, plan->doorway_count);
	for (size_t i = 0; i < plan->doorway_count; i++) {
		const struct plan_doorway *written = &plan->doorways[i];
		const struct build_wall *wall = wall_of(build, room, written);
		if (!wall)
			continue;
		if (is_in_straight_wall(build, room, written, wall->edge) &&
		    is_within_wall(build, room, written, wall->edge))
			room->doorways[room->doorway_count++] =
				doorway_in(build, room, written, wall->edge);
	}
	check_overlaps(build, room);
}

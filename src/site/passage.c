#include "site/passage.h"

#include "geometry/tolerance.h"
#include "site/outline.h"

/* How far off and how far out of parallel a facing wall may be. Source: floor format,
 * doorways: at most 600 mm and 5 degrees. */
static const double FAR_MOST = 600, SKEW_MOST = 0.08715574274765817; /* sin of 5 degrees */

/* Where the jamb lines meet a facing wall. */
struct facing {
	size_t edge;
	struct point from, to; /* opposite the doorway's own */
	double depth;          /* the greater of the two */
};

struct ring passage_recess(struct arena *arena, const struct site_doorway *doorway)
{
	const struct point corners[] = {doorway->from, doorway->stop_from, doorway->stop_to,
	                                doorway->to};
	return ring_copy(arena, corners, 4);
}

/* Goes `way` from `start` to the line of the wall; false: that meets nothing of it ahead. */
static bool meet_wall(const struct site_edge *wall, struct point start, struct point way,
                      struct point *out_at, double *out_depth)
{
	struct point along = point_unit(point_sub(wall->to, wall->from));
	double depth = point_cross(point_sub(wall->from, start), along) / point_cross(way, along);
	struct point at = point_add(start, point_scale(way, depth));
	double place = point_dot(point_sub(at, wall->from), along);
	*out_at = at;
	*out_depth = depth;
	return depth > TOLERANCE_SAME && depth <= FAR_MOST + TOLERANCE_SAME &&
	       place >= -TOLERANCE_SAME &&
	       place <= point_distance(wall->from, wall->to) + TOLERANCE_SAME;
}

/* The two run against each other, each with its floor to the left. */
static bool is_opposed(const struct site_edge *a, const struct site_edge *b)
{
	struct point u = point_unit(point_sub(a->to, a->from));
	struct point v = point_unit(point_sub(b->to, b->from));
	return point_dot(u, v) < 0 && fabs(point_cross(u, v)) <= SKEW_MOST + TOLERANCE_SAME;
}

/* The nearest wall of the room behind between both jamb lines; false: none. */
static bool find_facing(const struct site_room *room, const struct site_doorway *doorway,
                        const struct site_room *beyond, struct facing *out_facing)
{
	const struct site_edge *own = &room->edges[doorway->edge];
	struct point out = point_left(point_unit(point_sub(own->from, own->to)));
	*out_facing = (struct facing){.depth = HUGE_VAL};
	for (size_t i = 0; i < beyond->edge_count; i++) {
		const struct site_edge *wall = &beyond->edges[i];
		struct facing facing = {.edge = i};
		double from_depth, to_depth;
		if (outline_wall(beyond, i)->rise_nm != 0 || !is_opposed(own, wall) ||
		    !meet_wall(wall, doorway->from, out, &facing.from, &from_depth) ||
		    !meet_wall(wall, doorway->to, out, &facing.to, &to_depth))
			continue;
		facing.depth = fmax(from_depth, to_depth);
		if (facing.depth < out_facing->depth - TOLERANCE_SAME)
			*out_facing = facing;
	}
	return out_facing->depth < HUGE_VAL;
}

/* How much of the patch is this room's where the two rooms are not of one lay, or lies before
 * the joint where they are. */
static double share_of(const struct plan_doorway *plan)
{
	static const double SHARES[] = {
		[PLAN_STOP_NEAR] = 0,
		[PLAN_STOP_MIDDLE] = 0.5,
		[PLAN_STOP_FAR] = 1,
	};
	return SHARES[plan->stop];
}

static void set_recess(struct arena *arena, struct site_doorway *doorway)
{
	doorway->recess = (struct ring){0};
	if (point_distance(doorway->from, doorway->stop_from) > TOLERANCE_SAME)
		doorway->recess = passage_recess(arena, doorway);
}

bool passage_link(struct build *build, const struct site_room *room, struct site_doorway *doorway,
                  struct site_room *beyond)
{
	const struct plan *plan = build->plan;
	struct facing facing;
	if (!beyond->edge_count)
		return false;
	if (!find_facing(room, doorway, beyond, &facing)) {
		diag_error(build->diags, doorway->plan->line,
		           "doorway \"%s\": no wall of room \"%s\" faces it between its jambs; "
		           "expected one at most %s away and 5 degrees off",
		           doorway->id, beyond->id, build_length_text(build, FAR_MOST));
		return false;
	}
	bool is_one_lay = plan_lay_of(plan, room->plan) == plan_lay_of(plan, beyond->plan);
	double share = is_one_lay ? 1 : share_of(doorway->plan);
	doorway->stop_share = share_of(doorway->plan);
	doorway->end = is_one_lay ? SITE_EDGE_OPEN : SITE_EDGE_STOP;
	doorway->beyond = beyond;
	doorway->stop_from = point_between(doorway->from, facing.from, share);
	doorway->stop_to = point_between(doorway->to, facing.to, share);
	if (share == 1) { /* to the last bit, so that the two sides share their corners */
		doorway->stop_from = facing.from;
		doorway->stop_to = facing.to;
	}
	set_recess(build->arena, doorway);
	struct site_doorway back = {
		.plan = doorway->plan,
		.id = doorway->id,
		.edge = facing.edge,
		.from = facing.to,
		.to = facing.from,
		.stop_from = doorway->stop_to,
		.stop_to = doorway->stop_from,
		.end = doorway->end,
		.beyond = room,
		.stop_share = 1 - doorway->stop_share,
		.is_back = true,
	};
	set_recess(build->arena, &back);
	beyond->doorways[beyond->doorway_count++] = back;
	return true;
}

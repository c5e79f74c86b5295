#include "site/obstacle.h"

#include "geometry/crossing.h"
#include "geometry/frame.h"
#include "geometry/overlay.h"
#include "geometry/round.h"
#include "geometry/tolerance.h"
#include "site/spot.h"

static struct ring turned_rectangle(struct arena *arena, const struct plan_obstacle *plan)
{
	struct point centre = build_point(plan->x_nm, plan->y_nm);
	double half_wide = length_mm(plan->wide_nm) / 2, half_deep = length_mm(plan->deep_nm) / 2;
	struct frame turn = frame_from_deg(plan->turn_deg);
	const struct point corners[] = {
		{-half_wide, -half_deep},
		{half_wide, -half_deep},
		{half_wide, half_deep},
		{-half_wide, half_deep},
	};
	struct ring ring = ring_copy(arena, corners, 4);
	for (size_t i = 0; i < ring.count; i++)
		ring.points[i] = point_add(centre, frame_out(turn, ring.points[i]));
	return ring;
}

static bool ring_of_corners(struct build *build, const struct plan_obstacle *plan,
                            struct ring *out_ring)
{
	struct line line;
	if (!spot_find_all(build, plan->corners, plan->corner_count, &line))
		return false;
	struct ring written = {line.points, line.count};
	struct crossing at;
	if (crossing_find(build->arena, written, &at)) {
		diag_error(build->diags, plan->corners[at.second].line,
		           "side %zu of \"%s\" meets its side %zu; expected sides that touch only "
		           "their neighbours, at the corners",
		           at.second + 1, plan->id, at.first + 1);
		return false;
	}
	*out_ring = ring_turned(build->arena, written, true);
	return true;
}

static bool ring_of(struct build *build, const struct plan_obstacle *plan, struct ring *out_ring)
{
	if (plan->corner_count)
		return ring_of_corners(build, plan, out_ring);
	if (plan->across_nm > 0)
		*out_ring = round_ring(build->arena, build_point(plan->x_nm, plan->y_nm),
		                       length_mm(plan->across_nm) / 2);
	else
		*out_ring = turned_rectangle(build->arena, plan);
	return true;
}

static bool is_in_room(struct build *build, const struct region *ground,
                       const struct site_obstacle *obstacle)
{
	struct region whole = region_from_ring(build->arena, obstacle->ring);
	struct region inside = overlay_intersection(build->arena, &whole, ground);
	if (region_area(&inside) > TOLERANCE_AREA_MM2)
		return true;
	diag_error(build->diags, obstacle->plan->line,
	           "\"%s\" lies wholly outside its room; expected a part of it inside",
	           obstacle->id);
	return false;
}

void obstacle_build_all(struct build *build, struct site_room *room)
{
	const struct plan_room *plan = room->plan;
	bool has_outline = room->edge_count > 0;
	struct region ground = {0};
	if (has_outline && plan->obstacle_count)
		ground = site_room_ground(build->arena, room);
	room->obstacles = ARENA_ARRAY(build->arena, struct site_obstacle, plan->obstacle_count);
	for (size_t i = 0; i < plan->obstacle_count; i++) {
		const struct plan_obstacle *written = &plan->obstacles[i];
		struct site_obstacle obstacle = {
			.plan = written,
			.id = written->id,
			.is_drain = written->kind == PLAN_OBSTACLE_DRAIN,
		};
		if (!build_is_faulty(build, written->given, written->line) &&
		    ring_of(build, written, &obstacle.ring) &&
		    (!has_outline || is_in_room(build, &ground, &obstacle)))
			room->obstacles[room->obstacle_count++] = obstacle;
	}
}

#include "site/crack.h"

#include "geometry/foot.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"
#include "site/landing.h"
#include "site/spot.h"

/* How near an end must come to something to lie on it, in inch and in metric plans; the
 * same for a point just outside its room. Source: floor format, cracks and slab joints. */
static const double REACH_INCHES = 25.4, REACH_METRIC = 25;

/* Ground of a room, whole and less what stands on it. */
struct terrain {
	struct region ground, bare;
};

struct tracing {
	struct build *build;
	struct terrain *terrains; /* of the rooms, in their order; empty where in error */
	struct region all_bare;   /* every room's, joined where they touch */
	double reach;
	struct landing *joints, *cracks;
};

static struct terrain terrain_of(struct arena *arena, const struct site_room *room)
{
	struct terrain terrain = {0};
	if (!room->edge_count)
		return terrain;
	terrain.ground = terrain.bare = site_room_ground(arena, room);
	if (!room->obstacle_count)
		return terrain;
	struct region *rings = ARENA_ARRAY(arena, struct region, room->obstacle_count);
	for (size_t i = 0; i < room->obstacle_count; i++)
		rings[i] = region_from_ring(arena, room->obstacles[i].ring);
	struct region taken = overlay_union_all(arena, rings, room->obstacle_count);
	terrain.bare = overlay_difference(arena, &terrain.ground, &taken);
	return terrain;
}

static void survey_rooms(struct tracing *tracing)
{
	const struct site *site = tracing->build->site;
	struct arena *arena = tracing->build->arena;
	struct region *bare = ARENA_ARRAY(arena, struct region, site->room_count);
	tracing->terrains = ARENA_ARRAY(arena, struct terrain, site->room_count);
	for (size_t i = 0; i < site->room_count; i++) {
		tracing->terrains[i] = terrain_of(arena, &site->rooms[i]);
		bare[i] = tracing->terrains[i].bare;
	}
	tracing->all_bare = overlay_union_all(arena, bare, site->room_count);
}

/* ---- one line ---- */

/* Points that repeat the one before them say nothing. */
static struct line without_repeats(struct line line)
{
	size_t kept = 1;
	for (size_t i = 1; i < line.count; i++)
		if (point_distance(line.points[i], line.points[kept - 1]) > TOLERANCE_SAME)
			line.points[kept++] = line.points[i];
	line.count = kept;
	return line;
}

static bool has_length(struct tracing *tracing, struct line line, const char *id, int at)
{
	if (line.count > 1)
		return true;
	diag_error(tracing->build->diags, at, "\"%s\" has no length: its points are one point", id);
	return false;
}

/* Points up to the reach outside the room come to its border. */
static bool bring_inside(struct tracing *tracing, const struct plan_crack *crack, struct line line)
{
	struct build *build = tracing->build;
	const struct region *ground = &tracing->terrains[crack->room - build->plan->rooms].ground;
	bool all = true;
	for (size_t i = 0; ground->count && i < line.count; i++) {
		if (region_holds(ground, line.points[i]))
			continue;
		struct foot foot = foot_on_region(ground, line.points[i]);
		if (foot.distance <= tracing->reach + TOLERANCE_SAME) {
			line.points[i] = foot.at;
			continue;
		}
		diag_error(build->diags, crack->points[i].line,
		           "this point of \"%s\" lies %s outside room \"%s\"; expected inside or "
		           "within %s",
		           crack->id, build_length_text(build, foot.distance), crack->room->id,
		           build_length_text(build, tracing->reach));
		all = false;
	}
	return all;
}

/* ---- all of them ---- */

static void trace_joints(struct tracing *tracing)
{
	struct build *build = tracing->build;
	struct site *site = build->site;
	const struct plan *plan = build->plan;
	tracing->joints = ARENA_ARRAY(build->arena, struct landing, plan->slab_joint_count);
	site->slab_joints =
		ARENA_ARRAY(build->arena, struct site_slab_joint, plan->slab_joint_count);
	for (size_t i = 0; i < plan->slab_joint_count; i++) {
		const struct plan_slab_joint *joint = &plan->slab_joints[i];
		struct line line;
		if (build_is_faulty(build, joint->given, joint->line) ||
		    !spot_find_all(build, joint->points, joint->point_count, &line))
			continue;
		line = without_repeats(line);
		if (!has_length(tracing, line, joint->id, joint->line))
			continue;
		tracing->joints[site->slab_joint_count] = landing_from_line(line);
		site->slab_joints[site->slab_joint_count++] = (struct site_slab_joint){
			.plan = joint,
			.id = joint->id,
			.width = length_mm(joint->width_nm),
			.step = length_mm(joint->step_nm),
			.relocate = joint->treat == PLAN_TREAT_RELOCATE,
		};
	}
}

static void trace_cracks(struct tracing *tracing)
{
	struct build *build = tracing->build;
	struct site *site = build->site;
	const struct plan *plan = build->plan;
	tracing->cracks = ARENA_ARRAY(build->arena, struct landing, plan->crack_count);
	site->cracks = ARENA_ARRAY(build->arena, struct site_crack, plan->crack_count);
	for (size_t i = 0; i < plan->crack_count; i++) {
		const struct plan_crack *crack = &plan->cracks[i];
		struct line line;
		if (build_is_faulty(build, crack->given, crack->line) ||
		    !spot_find_all(build, crack->points, crack->point_count, &line) ||
		    (crack->room && !bring_inside(tracing, crack, line)))
			continue;
		line = without_repeats(line);
		if (!has_length(tracing, line, crack->id, crack->line))
			continue;
		tracing->cracks[site->crack_count] = landing_from_line(line);
		site->cracks[site->crack_count++] = (struct site_crack){
			.plan = crack,
			.id = crack->id,
			.room = crack->room ? &site->rooms[crack->room - plan->rooms] : NULL,
			.width = length_mm(crack->width_nm),
			.step = length_mm(crack->step_nm),
			.wander = length_mm(crack->wander_nm),
		};
	}
}

static void land_all(struct tracing *t)
{
	struct arena *arena = t->build->arena;
	const struct site *site = t->build->site;
	size_t joints = site->slab_joint_count, cracks = site->crack_count;
	for (size_t i = 0; i < joints; i++)
		landing_on_region(&t->joints[i], &t->all_bare, t->reach);
	landing_on_others(arena, t->joints, joints, t->joints, joints, t->reach);
	for (size_t i = 0; i < cracks; i++) {
		const struct site_room *room = site->cracks[i].room;
		const struct region *bare =
			room ? &t->terrains[room - site->rooms].bare : &t->all_bare;
		landing_on_region(&t->cracks[i], bare, t->reach);
	}
	landing_on_others(arena, t->cracks, cracks, t->joints, joints, t->reach);
	landing_on_others(arena, t->cracks, cracks, t->cracks, cracks, t->reach);
}

void crack_build_all(struct build *build)
{
	struct site *site = build->site;
	struct tracing tracing = {.build = build};
	tracing.reach = site->inches ? REACH_INCHES : REACH_METRIC;
	survey_rooms(&tracing);
	trace_joints(&tracing);
	trace_cracks(&tracing);
	land_all(&tracing);
	for (size_t i = 0; i < site->slab_joint_count; i++)
		site->slab_joints[i].line = without_repeats(tracing.joints[i].line);
	for (size_t i = 0; i < site->crack_count; i++)
		site->cracks[i].line = without_repeats(tracing.cracks[i].line);
}

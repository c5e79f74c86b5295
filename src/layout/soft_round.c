#include "layout/soft_round.h"

#include "geometry/tolerance.h"

/* Every walk round the tile crosses a ray that leads away from it once. The ray leaves from the
 * middle of the joint that lies farthest out its way, so it never meets the tile again; its way
 * is that of no joint of a pattern, so it passes between the corners of the network. */
static const struct point AWAY = {1, 0.0314159};

static bool find_ray(const struct soft_setting *setting, const struct soft_unit *unit,
                     struct segment *out_ray)
{
	const struct soft_outline *outline = &unit->outline;
	double far = 2 * (setting->reach.half_width + setting->reach.one_tile), most = -INFINITY;
	for (size_t k = 0; k < outline->count; k++) {
		struct segment line = outline->stretches[k].line;
		struct point foot = point_between(line.from, line.to, 0.5);
		if (!outline->stretches[k].is_joint || point_dot(foot, AWAY) <= most)
			continue;
		most = point_dot(foot, AWAY);
		/* The joint lies a hair outside of the tile. */
		out_ray->from = point_sub(foot, point_scale(AWAY, TOLERANCE_WHOLE));
		out_ray->to = point_add(foot, point_scale(AWAY, far));
	}
	return isfinite(most);
}

/* An edge that crosses the ray, walked anticlockwise round its beginning: the port at which a walk
 * leaves the ray by it, and the one at which it comes back. */
static struct soft_walk across(const struct corridor *corridor, struct network_place place,
                               struct point ray, double share)
{
	struct segment edge = corridor_segment(corridor, place);
	bool reversed = point_dot(point_left(ray), point_sub(edge.to, edge.from)) < 0;
	double length = segment_length(edge);
	double ahead = reversed ? share * length : (1 - share) * length;
	struct soft_port port = {.at = point_between(edge.from, edge.to, share)};
	struct soft_walk walk = {.from = port, .to = port};
	walk.from.gate = (struct soft_gate){{place, reversed}, ahead, false};
	walk.to.gate = (struct soft_gate){{place, !reversed}, length - ahead, false};
	return walk;
}

static bool search_across(struct arena *arena, const struct soft_setting *setting,
                          struct soft_unit *unit, struct soft_walk across,
                          struct soft_walk *out_walk)
{
	struct soft_ports from = {0}, to = {0};
	*array_push(arena, &from.ports) = across.from;
	*array_push(arena, &to.ports) = across.to;
	return soft_side_search(arena, setting, unit, &from, &to, out_walk);
}

bool soft_round_walk(struct arena *arena, const struct soft_setting *setting,
                     struct soft_unit *unit, struct soft_walk *out_walk)
{
	struct corridor *corridor = &unit->corridor;
	const struct tiling *tiling = corridor->tiling;
	struct segment ray;
	struct corridor_bars bars = {0};
	bool is_found = false;
	if (!find_ray(setting, unit, &ray))
		return false;
	size_t count;
	const struct network_place *places =
		network_near(arena, tiling->network, tiling->module,
	                     tiling->panels[corridor->panel].position, ray, 0, &count);
	*array_push(arena, &bars.segments) = ray;
	for (size_t k = 0; k < count; k++) {
		double share;
		struct soft_walk walk;
		if (!segment_crossing(corridor_segment(corridor, places[k]), ray, &share) ||
		    !corridor_is_open(corridor, places[k]))
			continue;
		corridor->side = &bars;
		bool is_round = search_across(arena, setting, unit,
		                              across(corridor, places[k],
		                                     point_sub(ray.to, ray.from), share),
		                              &walk);
		corridor->side = NULL;
		if (is_round &&
		    (!is_found || soft_cost_compare(walk.path.least, out_walk->path.least) < 0))
			*out_walk = walk;
		is_found = is_found || is_round;
	}
	return is_found;
}

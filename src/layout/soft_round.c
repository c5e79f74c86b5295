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

/* A ray, and which way walks cross it. */
struct crossing {
	struct arena *arena;
	const struct soft_setting *setting;
	struct soft_unit *unit;
	struct segment ray;
	bool anticlockwise;
};

/* An edge that crosses the ray: the port at which a walk leaves the ray by it, and the one at which
 * it comes to it. */
static struct soft_walk across(const struct crossing *crossing, struct network_place place,
                               double share)
{
	struct segment edge = corridor_segment(&crossing->unit->corridor, place);
	struct point ray = point_sub(crossing->ray.to, crossing->ray.from);
	bool is_left = point_dot(point_left(ray), point_sub(edge.to, edge.from)) > 0;
	bool reversed = is_left != crossing->anticlockwise;
	double length = segment_length(edge);
	double ahead = reversed ? share * length : (1 - share) * length;
	struct soft_port port = {.at = point_between(edge.from, edge.to, share)};
	struct soft_walk walk = {.from = port, .to = port};
	walk.from.gate = (struct soft_gate){{place, reversed}, ahead, false};
	walk.to.gate = (struct soft_gate){{place, !reversed}, length - ahead, false};
	return walk;
}

static struct soft_ports only(struct arena *arena, struct soft_port port)
{
	struct soft_ports ports = {0};
	*array_push(arena, &ports.ports) = port;
	return ports;
}

/* Two walks that meet in the middle of an edge. */
static struct soft_walk joined(struct arena *arena, const struct soft_walk *a,
                               const struct soft_walk *b)
{
	struct soft_walk walk = {a->path, a->from, b->to};
	struct soft_path *path = &walk.path;
	path->steps = ARENA_ARRAY(arena, struct soft_step, a->path.count + b->path.count);
	path->count = 0;
	for (size_t k = 0; k < a->path.count; k++)
		path->steps[path->count++] = a->path.steps[k];
	for (size_t k = 1; k < b->path.count; k++)
		path->steps[path->count++] = b->path.steps[k];
	path->least.cost += b->path.least.cost;
	path->least.turns += b->path.least.turns;
	path->least.length += b->path.least.length;
	path->settled += b->path.settled;
	return walk;
}

/* Over one edge: from port to port, or right round where there are none. */
static bool search_over(const struct crossing *crossing, const struct soft_walk *across,
                        const struct soft_ports *from, const struct soft_ports *to,
                        struct soft_walk *out_walk)
{
	struct arena *arena = crossing->arena;
	struct soft_ports leaving = only(arena, across->from), coming = only(arena, across->to);
	struct soft_walk before, after;
	if (!from)
		return soft_search(arena, crossing->setting, crossing->unit, &leaving, &coming,
		                   out_walk);
	if (!soft_search(arena, crossing->setting, crossing->unit, from, &coming, &before) ||
	    !soft_search(arena, crossing->setting, crossing->unit, &leaving, to, &after))
		return false;
	*out_walk = joined(arena, &before, &after);
	return true;
}

/* The bars of the corridor's side, and the ray. */
static struct corridor_bars bars_with(const struct crossing *crossing)
{
	struct corridor_bars bars = {0};
	const struct corridor_bars *side = crossing->unit->corridor.side;
	for (size_t k = 0; side && k < side->segments.count; k++)
		*array_push(crossing->arena, &bars.segments) = side->segments.items[k];
	*array_push(crossing->arena, &bars.segments) = crossing->ray;
	return bars;
}

static bool search_all(const struct crossing *crossing, const struct soft_ports *from,
                       const struct soft_ports *to, struct soft_walk *out_walk)
{
	struct corridor *corridor = &crossing->unit->corridor;
	const struct tiling *tiling = corridor->tiling;
	const struct corridor_bars *side = corridor->side, bars = bars_with(crossing);
	bool is_found = false;
	size_t count;
	const struct network_place *places =
		network_near(crossing->arena, tiling->network, tiling->module,
	                     tiling->panels[corridor->panel].position, crossing->ray, 0, &count);
	for (size_t k = 0; k < count; k++) {
		double share;
		struct soft_walk walk;
		struct segment edge = corridor_segment(corridor, places[k]);
		if (!segment_crossing(edge, crossing->ray, &share) ||
		    !corridor_is_open(corridor, places[k]))
			continue;
		struct soft_walk over = across(crossing, places[k], share);
		corridor->side = &bars;
		bool is_way = search_over(crossing, &over, from, to, &walk);
		corridor->side = side;
		if (is_way &&
		    (!is_found || soft_cost_compare(walk.path.least, out_walk->path.least) < 0))
			*out_walk = walk;
		is_found = is_found || is_way;
	}
	return is_found;
}

bool soft_round_walk(struct arena *arena, const struct soft_setting *setting,
                     struct soft_unit *unit, struct soft_walk *out_walk)
{
	struct crossing crossing = {arena, setting, unit, {{0, 0}, {0, 0}}, true};
	return find_ray(setting, unit, &crossing.ray) &&
	       search_all(&crossing, NULL, NULL, out_walk);
}

bool soft_round_walk_over(struct arena *arena, const struct soft_setting *setting,
                          struct soft_unit *unit, struct segment ray, bool anticlockwise,
                          const struct soft_ports *from, const struct soft_ports *to,
                          struct soft_walk *out_walk)
{
	struct crossing crossing = {arena, setting, unit, ray, anticlockwise};
	return search_all(&crossing, from, to, out_walk);
}

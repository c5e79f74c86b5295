#include "layout/soft_port.h"

#include "geometry/clip.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"
#include "layout/strip_piece.h"

struct gathering {
	struct arena *arena;
	const struct soft_setting *setting;
	struct soft_unit *unit;
	struct soft_ports ports;
};

static void add_port(struct gathering *gathering, struct soft_gate gate, struct point at,
                     bool at_border)
{
	*array_push(gathering->arena, &gathering->ports.ports) =
		(struct soft_port){gate, at, at_border};
}

/* True where an edge can be walked from `from` to a border that cuts it. */
static bool can_be_cut(const struct gathering *gathering, struct network_place place,
                       struct segment edge)
{
	const struct corridor *corridor = &gathering->unit->corridor;
	size_t count;
	const struct stretch *on = clip_segment(gathering->arena, edge, &corridor->ground, &count);
	if (count == 0 || on[0].from * segment_length(edge) > TOLERANCE_WHOLE)
		return false;
	struct segment part = {edge.from, point_between(edge.from, edge.to, on[0].to)};
	return region_distance(&corridor->domain, part.to) < TOLERANCE_WHOLE &&
	       segment_length(part) > TOLERANCE_WHOLE && corridor_is_free(corridor, place, part);
}

/* True where a segment lies in the domain for more than what is no tile may be deep: no border
 * cuts it there, it runs along one. */
static bool runs_on(const struct gathering *gathering, struct segment rest)
{
	const struct corridor *corridor = &gathering->unit->corridor;
	double length = segment_length(rest);
	size_t count;
	const struct stretch *on = clip_segment(gathering->arena, rest, &corridor->domain, &count);
	return count > 0 && on[0].from * length < TOLERANCE_WHOLE &&
	       on[0].to * length > corridor_rim(corridor->tiling);
}

/* Of an edge walked from `from`, as far as where tile ends while the edge runs on beside a border;
 * no length: tile does not. */
static struct segment walk_to_rim(const struct gathering *gathering, struct network_place place,
                                  struct segment edge)
{
	const struct corridor *corridor = &gathering->unit->corridor;
	struct segment forward = corridor_segment(corridor, place);
	bool is_back =
		point_dot(point_sub(edge.to, edge.from), point_sub(forward.to, forward.from)) < 0;
	size_t count;
	const struct tile_joint *joints =
		tile_joints_at(gathering->arena, corridor->tiling, corridor->panel, place, &count);
	for (size_t k = 0; k < count; k++) {
		double from = is_back ? 1 - joints[k].on.to : joints[k].on.from;
		double to = is_back ? 1 - joints[k].on.from : joints[k].on.to;
		struct point end = point_between(edge.from, edge.to, to);
		struct segment part = {edge.from, end}, rest = {end, edge.to};
		if (from <= 0 && to < 1 && runs_on(gathering, rest) &&
		    corridor_is_free(corridor, place, part))
			return part;
	}
	return (struct segment){edge.from, edge.from};
}

/* An edge that the border cuts once more, in a panel narrower than the edge, leads from border to
 * border and nowhere else. */
static void add_inward(struct gathering *gathering, struct network_place place, struct point at,
                       bool reversed)
{
	struct corridor *corridor = &gathering->unit->corridor;
	struct segment edge = corridor_segment(corridor, place);
	struct segment inward = {at, reversed ? edge.from : edge.to};
	struct soft_gate gate = {{place, reversed}, segment_length(inward), false};
	if (gate.part < TOLERANCE_WHOLE)
		return;
	gate.is_cut = !corridor_is_free(corridor, place, inward);
	if (!gate.is_cut || can_be_cut(gathering, place, inward))
		add_port(gathering, gate, at, true);
}

/* The vertex at the `to` (or `from`) of a place. */
struct knot {
	int vertex, i, j;
};

static struct knot knot_of(const struct corridor *corridor, struct network_place place, bool at_to)
{
	const struct network_edge *edge = &corridor->tiling->network->edges[place.edge];
	if (at_to)
		return (struct knot){edge->to, place.i + edge->to_i, place.j + edge->to_j};
	return (struct knot){edge->from, place.i, place.j};
}

/* True where tile ends: an edge that leaves the vertex does not lie between two. */
static bool is_at_rim(const struct corridor *corridor, struct knot knot)
{
	const struct tiling *tiling = corridor->tiling;
	const struct network_vertex *here = &tiling->network->vertices[knot.vertex];
	for (size_t k = 0; k < here->leaving_count; k++) {
		struct network_leaving next = here->leaving[k];
		struct network_place place = {next.edge, knot.i + next.i, knot.j + next.j};
		size_t count;
		const struct tile_joint *joints =
			tile_joints_at(corridor->arena, tiling, corridor->panel, place, &count);
		bool goes_on = count > 0 && (next.reversed ? joints[count - 1].on.to >= 1
		                                           : joints[0].on.from <= 0);
		if (!goes_on)
			return true;
	}
	return false;
}

/* Where the tile stops short of the border, a joint between two tiles ends with them: at a corner,
 * or beside the border along an edge. */
static void add_rim(struct gathering *gathering, struct network_place place, struct segment border,
                    bool at_to)
{
	struct corridor *corridor = &gathering->unit->corridor;
	double rim = corridor_rim(corridor->tiling) + TOLERANCE_WHOLE;
	struct segment edge = corridor_segment(corridor, place);
	struct point at = at_to ? edge.to : edge.from;
	struct segment outward = {at_to ? edge.from : edge.to, at};
	struct soft_gate gate = {{place, at_to}, segment_length(edge), false};
	if (segment_gap(border, edge) > rim)
		return;
	if (segment_distance(border, at) <= rim && corridor_is_open(corridor, place) &&
	    is_at_rim(corridor, knot_of(corridor, place, at_to)))
		add_port(gathering, gate, at, true);
	struct segment part = walk_to_rim(gathering, place, outward);
	gate.part = segment_length(part);
	if (gate.part > TOLERANCE_WHOLE && segment_distance(border, part.to) <= rim)
		add_port(gathering, gate, part.to, true);
}

/* Ports where joints meet a stretch of border. */
static void add_crossings(struct gathering *gathering, struct segment border)
{
	struct corridor *corridor = &gathering->unit->corridor;
	const struct tiling *tiling = corridor->tiling;
	size_t count;
	const struct network_place *places =
		network_near(gathering->arena, tiling->network, tiling->module,
	                     tiling->panels[corridor->panel].position, border,
	                     corridor_rim(corridor->tiling), &count);
	for (size_t k = 0; k < count; k++) {
		struct segment edge = corridor_segment(corridor, places[k]);
		double share;
		add_rim(gathering, places[k], border, false);
		add_rim(gathering, places[k], border, true);
		if (!segment_crossing(edge, border, &share))
			continue;
		struct point at = point_between(edge.from, edge.to, share);
		add_inward(gathering, places[k], at, false);
		add_inward(gathering, places[k], at, true);
	}
}

/* A walk along the border of the domain, as long as it lies on some ground. */
struct border_walk {
	size_t ring, side;
	struct point from;
	bool forward; /* the domain to the left */
	const struct region *on;
};

/* Where a walk along a side of the border comes to another end: its ports are of another side of
 * the crack. */
static bool cut_at_ends(const struct gathering *gathering, struct border_walk walk, size_t side,
                        struct segment *along)
{
	bool is_cut = false;
	for (size_t k = 0; k < gathering->unit->end_count; k++) {
		const struct soft_end *end = &gathering->unit->ends[k];
		if (!end->at_border || end->ring != walk.ring || end->side != side ||
		    point_distance(end->at, walk.from) < TOLERANCE_WHOLE ||
		    segment_distance(*along, end->at) > TOLERANCE_WHOLE)
			continue;
		along->to = end->at;
		is_cut = true;
	}
	return is_cut;
}

static void walk_border(struct gathering *gathering, struct border_walk walk)
{
	struct corridor *corridor = &gathering->unit->corridor;
	struct ring ring = region_ring(&corridor->domain, walk.ring);
	struct point from = walk.from;
	size_t side = walk.side, step = walk.forward ? 1 : ring.count - 1;
	for (size_t k = 0; k <= ring.count; k++, side = (side + step) % ring.count) {
		struct segment whole = segment_of_ring(ring, side);
		struct segment along = {from, walk.forward ? whole.to : whole.from};
		double length = segment_length(along);
		from = along.to;
		if (length < TOLERANCE_SAME)
			continue;
		bool is_cut = cut_at_ends(gathering, walk, side, &along);
		length = segment_length(along);
		size_t count;
		const struct stretch *on = clip_segment(gathering->arena, along, walk.on, &count);
		if (count == 0 || on[0].from * length > TOLERANCE_WHOLE)
			return;
		along.to = point_between(along.from, along.to, on[0].to);
		add_crossings(gathering, along);
		if (is_cut || (1 - on[0].to) * length > TOLERANCE_WHOLE)
			return;
	}
}

/* At an end the strip's last leg and what lies within one tile of the crack. The domain lies to
 * the left of its border: looking out at an end, forward is left. */
static void add_border(struct gathering *gathering, const struct soft_end *end, bool left)
{
	struct arena *arena = gathering->arena;
	const struct corridor *corridor = &gathering->unit->corridor;
	const struct strip_leg *leg = crack_part_leg(end->part, end->at);
	struct region own = strip_leg_ground(arena, leg, &corridor->ground);
	struct region own_clear = strip_leg_ground(arena, leg, &corridor->clear_ground);
	const struct region *on[] = {&own, &corridor->beside};
	const struct region *clear[] = {&own_clear, &corridor->clear_beside};
	for (int k = 0; k < 2; k++) {
		struct border_walk walk = {end->ring, end->side, end->at, left, on[k]};
		walk_border(gathering, walk);
		walk.forward = !left;
		walk.on = clear[k];
		if (!end->is_split)
			walk_border(gathering, walk);
	}
}

/* All edges that leave a vertex and can be walked. One that a border cuts leads nowhere but to a
 * port there. */
static void add_vertex(struct gathering *gathering, struct knot knot)
{
	struct corridor *corridor = &gathering->unit->corridor;
	const struct network *network = corridor->tiling->network;
	const struct network_vertex *here = &network->vertices[knot.vertex];
	for (size_t k = 0; k < here->leaving_count; k++) {
		struct network_leaving next = here->leaving[k];
		struct network_place first = {next.edge, knot.i + next.i, knot.j + next.j};
		struct segment line = corridor_segment(corridor, first);
		struct segment edge = next.reversed ? (struct segment){line.to, line.from} : line;
		struct soft_gate gate = {{first, next.reversed},
		                         network->edges[next.edge].length,
		                         !corridor_is_open(corridor, first)};
		if (!gate.is_cut || can_be_cut(gathering, first, edge))
			add_port(gathering, gate, edge.from, false);
	}
}

static bool is_on_side(const struct soft_end *end, struct point p, bool left)
{
	return (point_cross(end->out, point_sub(p, end->at)) > 0) == left;
}

/* Vertices from which an edge leaves the strip over a stretch of its outline, on one side of
 * the crack's prolongation; `out` looks out of the strip there. */
static void add_outline(struct gathering *gathering, const struct soft_end *end, bool left,
                        struct segment outline, struct point out)
{
	struct corridor *corridor = &gathering->unit->corridor;
	const struct tiling *tiling = corridor->tiling;
	size_t count;
	const struct network_place *places =
		network_near(gathering->arena, tiling->network, tiling->module,
	                     tiling->panels[corridor->panel].position, outline, 0, &count);
	for (size_t k = 0; k < count; k++) {
		struct segment edge = corridor_segment(corridor, places[k]);
		double share;
		if (!segment_crossing(edge, outline, &share))
			continue;
		struct point at = point_between(edge.from, edge.to, share);
		bool inner_is_to = point_dot(out, point_sub(edge.to, at)) <
		                   point_dot(out, point_sub(edge.from, at));
		if (is_on_side(end, at, left))
			add_vertex(gathering, knot_of(corridor, places[k], inner_is_to));
	}
}

/* Over the flank from the strip's end back to the crack's end. */
static void add_flank(struct gathering *gathering, const struct soft_end *end, bool left,
                      struct point out)
{
	struct point corner = left ? end->across.from : end->across.to;
	double back = point_dot(out, point_sub(corner, end->at));
	struct segment flank = {corner, point_sub(corner, point_scale(out, back))};
	add_outline(gathering, end, left, flank, point_scale(point_left(out), left ? 1 : -1));
}

/* Every vertex that lies past the crack's end, less `short_by`. */
static void add_beyond(struct gathering *gathering, const struct soft_end *end, bool left,
                       struct point out, enum soft_extent extent)
{
	double short_by = extent == SOFT_EXTENT_NEAR ? gathering->setting->reach.one_tile : 0;
	if (extent < SOFT_EXTENT_BEYOND)
		return;
	struct corridor *corridor = &gathering->unit->corridor;
	const struct tiling *tiling = corridor->tiling;
	struct segment ahead = {end->own, point_between(end->across.from, end->across.to, 0.5)};
	size_t count;
	const struct network_place *places =
		network_near(gathering->arena, tiling->network, tiling->module,
	                     tiling->panels[corridor->panel].position, ahead,
	                     segment_length(end->across), &count);
	for (size_t k = 0; k < 2 * count; k++) {
		struct segment edge = corridor_segment(corridor, places[k / 2]);
		struct point p = k % 2 ? edge.to : edge.from;
		if (point_dot(out, point_sub(p, end->own)) >= -short_by && is_on_side(end, p, left))
			add_vertex(gathering, knot_of(corridor, places[k / 2], k % 2));
	}
}

/* Along a border from beside an end in the field, both ways: on the crack's own side of the end it
 * is the tile's border too, on the other only as far as it is clear of crossed tile. */
static void walk_beside(struct gathering *gathering, struct border_walk walk,
                        const struct region *on, const struct region *clear, bool left)
{
	walk.on = on;
	walk.forward = left;
	walk_border(gathering, walk);
	walk.on = clear;
	walk.forward = !left;
	walk_border(gathering, walk);
}

/* From a border within one tile beside an end in the field: back along the crack and on past the
 * end, as far as it stays within one tile, or between the strip's flanks there. */
static void add_border_beside(struct gathering *gathering, const struct soft_end *end, bool left)
{
	struct arena *arena = gathering->arena;
	const struct soft_setting *setting = gathering->setting;
	struct corridor *corridor = &gathering->unit->corridor;
	struct point points[] = {end->at,
	                         point_add(end->at, point_scale(end->out, TOLERANCE_SAME))};
	struct region near_end =
		overlay_band(arena, (struct line){points, 2}, setting->reach.half_width);
	struct region own = overlay_intersection(arena, &near_end, &corridor->ground);
	struct region own_clear = overlay_intersection(arena, &near_end, &corridor->clear_ground);
	for (size_t r = 0; r < region_ring_count(&corridor->domain); r++) {
		struct ring ring = region_ring(&corridor->domain, r);
		for (size_t i = 0; i < ring.count; i++) {
			struct point near = segment_nearest(segment_of_ring(ring, i), end->at);
			if (point_distance(near, end->at) >
			            setting->reach.one_tile + TOLERANCE_SAME ||
			    !is_on_side(end, near, left))
				continue;
			struct border_walk walk = {.ring = r, .side = i, .from = near};
			walk_beside(gathering, walk, &corridor->beside, &corridor->clear_beside,
			            left);
			walk_beside(gathering, walk, &own, &own_clear, left);
		}
	}
}

struct soft_ports soft_end_ports(struct arena *arena, const struct soft_setting *setting,
                                 struct soft_unit *unit, const struct soft_end *end, bool left,
                                 enum soft_extent extent)
{
	struct gathering gathering = {.arena = arena, .setting = setting, .unit = unit};
	struct point out = point_left(point_unit(point_sub(end->across.to, end->across.from)));
	if (end->at_border) {
		add_border(&gathering, end, left);
	} else {
		add_border_beside(&gathering, end, left);
		add_outline(&gathering, end, left, end->across, out);
		if (extent >= SOFT_EXTENT_FLANK)
			add_flank(&gathering, end, left, out);
	}
	/* What a crack would meet past its end may be too small for a joint to come to it. */
	if (point_distance(end->own, end->at) > TOLERANCE_WHOLE || !end->at_border)
		add_beyond(&gathering, end, left, out, extent);
	return gathering.ports;
}

/* The side of the domain's border nearest to a point. */
static struct border_walk border_at(const struct corridor *corridor, struct point p)
{
	struct border_walk nearest = {.from = p};
	double least = INFINITY;
	for (size_t r = 0; r < region_ring_count(&corridor->domain); r++) {
		struct ring ring = region_ring(&corridor->domain, r);
		for (size_t i = 0; i < ring.count; i++) {
			struct segment side = segment_of_ring(ring, i);
			double distance = segment_distance(side, p);
			if (distance >= least - TOLERANCE_SAME)
				continue;
			least = distance;
			nearest = (struct border_walk){.ring = r,
			                               .side = i,
			                               .from = segment_nearest(side, p)};
		}
	}
	return nearest;
}

struct soft_ports soft_run_ports(struct arena *arena, const struct soft_setting *setting,
                                 struct soft_unit *unit, const struct outline_run *run, bool at_end)
{
	struct gathering gathering = {.arena = arena, .setting = setting, .unit = unit};
	const struct outline_stretch *stretch = at_end ? &run->last : &run->first;
	struct point at = at_end ? stretch->line.to : stretch->line.from;
	add_inward(&gathering, stretch->step.at, at, stretch->step.reversed ^ at_end);
	struct border_walk walk = border_at(&unit->corridor, at);
	walk.on = &unit->corridor.clear_beside;
	for (int way = 0; way < 2; way++) {
		walk.forward = way;
		walk_border(&gathering, walk);
	}
	return gathering.ports;
}

void soft_ports_join(struct arena *arena, struct soft_ports *ports, const struct soft_ports *more)
{
	for (size_t k = 0; k < more->ports.count; k++)
		*array_push(arena, &ports->ports) = more->ports.items[k];
}

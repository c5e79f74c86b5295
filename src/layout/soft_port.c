#include "layout/soft_port.h"

#include "geometry/clip.h"
#include "geometry/tolerance.h"

static void add_inward(struct arena *arena, struct corridor *corridor, struct soft_ports *ports,
                       struct network_place place, struct point at, bool reversed)
{
	struct segment edge = corridor_segment(corridor, place);
	struct segment inward = {at, reversed ? edge.from : edge.to};
	double part = segment_length(inward);
	if (part < TOLERANCE_WHOLE || !corridor_is_free(corridor, place, inward))
		return;
	*array_push(arena, &ports->ports) = (struct soft_port){{{place, reversed}, part}, at, true};
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

/* True where tile ends: a cell round the vertex holds none. */
static bool is_at_rim(const struct corridor *corridor, struct knot knot)
{
	const struct network *network = corridor->tiling->network;
	const struct panel *panel = &corridor->tiling->panels[corridor->panel];
	const struct network_vertex *here = &network->vertices[knot.vertex];
	for (size_t k = 0; k < here->leaving_count; k++) {
		struct network_leaving next = here->leaving[k];
		struct network_place place = {next.edge, knot.i + next.i, knot.j + next.j};
		if (!panel_has_tile(panel, network_beside(network, place, true)) ||
		    !panel_has_tile(panel, network_beside(network, place, false)))
			return true;
	}
	return false;
}

/* How far inside the border the outermost tile may end: what is left is no tile. */
static double rim_width(const struct corridor *corridor)
{
	const struct field *field = corridor->tiling->field;
	return field->gap_max - field->gap + corridor->tiling->module->joint;
}

/* Where the tile stops short of the border, a joint between two tiles ends with them. */
static void add_rim(struct arena *arena, struct corridor *corridor, struct soft_ports *ports,
                    struct network_place place, struct segment border, bool at_to)
{
	struct segment edge = corridor_segment(corridor, place);
	struct point at = at_to ? edge.to : edge.from;
	if (segment_distance(border, at) > rim_width(corridor) + TOLERANCE_WHOLE ||
	    !is_at_rim(corridor, knot_of(corridor, place, at_to)) ||
	    !corridor_is_open(corridor, place))
		return;
	*array_push(arena, &ports->ports) =
		(struct soft_port){{{place, at_to}, segment_length(edge)}, at, true};
}

/* Ports where joints meet a stretch of border. */
static void add_crossings(struct arena *arena, struct corridor *corridor, struct soft_ports *ports,
                          struct segment border)
{
	const struct tiling *tiling = corridor->tiling;
	size_t count;
	const struct network_place *places = network_near(arena, tiling->network, tiling->module,
	                                                  tiling->panels[corridor->panel].position,
	                                                  border, rim_width(corridor), &count);
	for (size_t k = 0; k < count; k++) {
		struct segment edge = corridor_segment(corridor, places[k]);
		double share;
		add_rim(arena, corridor, ports, places[k], border, false);
		add_rim(arena, corridor, ports, places[k], border, true);
		if (!segment_crossing(edge, border, &share))
			continue;
		struct point at = point_between(edge.from, edge.to, share);
		add_inward(arena, corridor, ports, places[k], at, false);
		add_inward(arena, corridor, ports, places[k], at, true);
	}
}

/* Along the border away from the end, as long as the strip lies on it. */
static void walk_border(struct arena *arena, struct corridor *corridor, struct soft_ports *ports,
                        const struct soft_end *end, bool forward)
{
	struct ring ring = region_ring(&corridor->domain, end->ring);
	struct point from = end->at;
	size_t side = end->side;
	for (size_t k = 0; k <= ring.count; k++) {
		struct segment whole = segment_of_ring(ring, side);
		struct segment border = {from, forward ? whole.to : whole.from};
		double length = segment_length(border);
		from = border.to;
		side = forward ? (side + 1) % ring.count : (side + ring.count - 1) % ring.count;
		if (length < TOLERANCE_SAME)
			continue;
		size_t count;
		const struct stretch *on = clip_segment(arena, border, &corridor->ground, &count);
		if (count == 0 || on[0].from * length > TOLERANCE_WHOLE)
			return;
		border.to = point_between(border.from, border.to, on[0].to);
		add_crossings(arena, corridor, ports, border);
		if ((1 - on[0].to) * length > TOLERANCE_WHOLE)
			return;
	}
}

/* All open edges that leave a vertex. */
static void add_vertex(struct arena *arena, struct corridor *corridor, struct soft_ports *ports,
                       struct knot knot)
{
	const struct network *network = corridor->tiling->network;
	const struct network_vertex *here = &network->vertices[knot.vertex];
	for (size_t k = 0; k < here->leaving_count; k++) {
		struct network_leaving next = here->leaving[k];
		struct network_place first = {next.edge, knot.i + next.i, knot.j + next.j};
		struct segment line = corridor_segment(corridor, first);
		if (corridor_is_open(corridor, first))
			*array_push(arena, &ports->ports) =
				(struct soft_port){{{first, next.reversed},
			                            network->edges[next.edge].length},
			                           next.reversed ? line.to : line.from,
			                           false};
	}
}

static bool is_on_side(const struct soft_end *end, struct point p, bool left)
{
	return (point_cross(end->out, point_sub(p, end->at)) > 0) == left;
}

/* Vertices from which an edge leaves the strip over a stretch of its outline, on one side of
 * the crack's prolongation; `out` looks out of the strip there. */
static void add_outline(struct arena *arena, struct corridor *corridor, struct soft_ports *ports,
                        const struct soft_end *end, bool left, struct segment outline,
                        struct point out)
{
	const struct tiling *tiling = corridor->tiling;
	size_t count;
	const struct network_place *places =
		network_near(arena, tiling->network, tiling->module,
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
			add_vertex(arena, corridor, ports,
			           knot_of(corridor, places[k], inner_is_to));
	}
}

/* Over the flank from the strip's end back to the crack's end. */
static void add_flank(struct arena *arena, struct corridor *corridor, struct soft_ports *ports,
                      const struct soft_end *end, bool left, struct point out)
{
	struct point corner = left ? end->across.from : end->across.to;
	double back = point_dot(out, point_sub(corner, end->at));
	struct segment flank = {corner, point_sub(corner, point_scale(out, back))};
	add_outline(arena, corridor, ports, end, left, flank,
	            point_scale(point_left(out), left ? 1 : -1));
}

/* Every vertex that lies past the crack's end, less `short_by`. */
static void add_beyond(struct arena *arena, struct corridor *corridor, struct soft_ports *ports,
                       const struct soft_end *end, bool left, struct point out, double short_by)
{
	const struct tiling *tiling = corridor->tiling;
	struct segment ahead = {end->at, point_between(end->across.from, end->across.to, 0.5)};
	size_t count;
	const struct network_place *places =
		network_near(arena, tiling->network, tiling->module,
	                     tiling->panels[corridor->panel].position, ahead,
	                     segment_length(end->across), &count);
	for (size_t k = 0; k < 2 * count; k++) {
		struct segment edge = corridor_segment(corridor, places[k / 2]);
		struct point p = k % 2 ? edge.to : edge.from;
		if (point_dot(out, point_sub(p, end->at)) >= -short_by && is_on_side(end, p, left))
			add_vertex(arena, corridor, ports, knot_of(corridor, places[k / 2], k % 2));
	}
}

/* The border beside an end in the field, where it is near enough to serve. */
static void add_border_beside(struct arena *arena, struct corridor *corridor,
                              struct soft_ports *ports, const struct soft_end *end, bool left,
                              double one_tile)
{
	struct soft_ports all = soft_border_ports(arena, corridor);
	for (size_t k = 0; k < all.ports.count; k++) {
		struct soft_port port = all.ports.items[k];
		if (point_distance(port.at, end->at) <= one_tile + TOLERANCE_SAME &&
		    is_on_side(end, port.at, left))
			*array_push(arena, &ports->ports) = port;
	}
}

struct soft_ports soft_end_ports(struct arena *arena, struct corridor *corridor,
                                 const struct soft_end *end, bool left, enum soft_extent extent,
                                 double one_tile)
{
	struct soft_ports ports = {0};
	if (end->at_border) {
		/* The domain lies to the left of its border: looking out, forward is left. */
		walk_border(arena, corridor, &ports, end, left);
		return ports;
	}
	struct point out = point_left(point_unit(point_sub(end->across.to, end->across.from)));
	add_outline(arena, corridor, &ports, end, left, end->across, out);
	add_border_beside(arena, corridor, &ports, end, left, one_tile);
	if (extent >= SOFT_EXTENT_FLANK)
		add_flank(arena, corridor, &ports, end, left, out);
	if (extent >= SOFT_EXTENT_BEYOND)
		add_beyond(arena, corridor, &ports, end, left, out,
		           extent == SOFT_EXTENT_NEAR ? one_tile : 0);
	return ports;
}

struct soft_ports soft_border_ports(struct arena *arena, struct corridor *corridor)
{
	struct soft_ports ports = {0};
	struct box box = box_grown(region_box(&corridor->ground), TOLERANCE_WHOLE);
	for (size_t r = 0; r < region_ring_count(&corridor->domain); r++) {
		struct ring ring = region_ring(&corridor->domain, r);
		for (size_t i = 0; i < ring.count; i++) {
			struct segment side = segment_of_ring(ring, i);
			struct box own = box_with(box_with(box_empty(), side.from), side.to);
			if (!box_meets(box, own))
				continue;
			size_t count;
			const struct stretch *on =
				clip_segment(arena, side, &corridor->ground, &count);
			for (size_t k = 0; k < count; k++)
				add_crossings(arena, corridor, &ports,
				              (struct segment){
						      point_between(side.from, side.to, on[k].from),
						      point_between(side.from, side.to, on[k].to)});
		}
	}
	return ports;
}

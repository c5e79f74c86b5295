#include "layout/soft_end.h"

#include <stdlib.h>

#include "geometry/clip.h"
#include "geometry/tolerance.h"

static struct point way_end(const struct crack_part *part, int which)
{
	return part->way.points[which ? part->way.count - 1 : 0];
}

static struct segment way_side(const struct crack_part *part, int which, size_t from_end)
{
	struct line way = part->way;
	if (!which)
		return (struct segment){way.points[from_end + 1], way.points[from_end]};
	return (struct segment){way.points[way.count - 2 - from_end],
	                        way.points[way.count - 1 - from_end]};
}

/* The last crossing of the outward segment with the domain's border. */
static bool leaves_domain(const struct corridor *corridor, struct segment outward,
                          struct soft_end *end)
{
	double last = -1;
	for (size_t r = 0; r < region_ring_count(&corridor->domain); r++) {
		struct ring ring = region_ring(&corridor->domain, r);
		for (size_t i = 0; i < ring.count; i++) {
			double share;
			if (!segment_crossing(outward, segment_of_ring(ring, i), &share) ||
			    share <= last)
				continue;
			last = share;
			end->ring = r;
			end->side = i;
		}
	}
	end->at = point_between(outward.from, outward.to, fmax(last, 0));
	end->out = point_unit(point_sub(outward.to, outward.from));
	return last >= 0;
}

/* Where the way leaves the domain for good at its end. */
static bool find_border_end(const struct corridor *corridor, struct soft_end *end)
{
	for (size_t k = 0; k + 1 < end->part->way.count; k++) {
		struct segment outward = way_side(end->part, end->which, k);
		struct point out = point_unit(point_sub(outward.to, outward.from));
		if (k == 0) /* it ends on the border, give or take */
			outward.to = point_add(outward.to, point_scale(out, TOLERANCE_WHOLE));
		if (leaves_domain(corridor, outward, end))
			return true;
	}
	return false;
}

static void find_field_end(struct soft_end *end)
{
	const struct crack_part *part = end->part;
	const struct strip_leg *leg = &part->legs[end->which ? part->leg_count - 1 : 0];
	struct segment last = way_side(part, end->which, 0);
	double sign = end->which ? 1 : -1;
	struct point out = point_scale(leg->along, sign);
	struct point end_at = point_add(end->which ? leg->to : leg->from,
	                                point_scale(out, end->which ? leg->after : leg->before));
	struct point left = point_left(out);
	double to_left = end->which ? leg->left : leg->right;
	double to_right = end->which ? leg->right : leg->left;
	end->at = end->which ? part->line.points[part->line.count - 1] : part->line.points[0];
	end->out = point_unit(point_sub(last.to, last.from));
	end->across = (struct segment){point_add(end_at, point_scale(left, to_left)),
	                               point_sub(end_at, point_scale(left, to_right))};
}

static bool is_under(struct arena *arena, const struct tiling *tiling,
                     const struct crack_part *part, struct segment line)
{
	for (size_t t = 0; t < part->tile_count; t++) {
		struct ring cell = tile_ref_cell(arena, tiling, part->tiles[t]);
		if (ring_holds(cell, line.from) || ring_holds(cell, line.to))
			return true;
		for (size_t i = 0; i < cell.count; i++)
			if (segment_meets(segment_of_ring(cell, i), line))
				return true;
	}
	return false;
}

static bool shares_tile(const struct crack_part *part, const struct crack_part *other, size_t t)
{
	for (size_t k = 0; k < part->tile_count; k++)
		if (address_is_same(part->tiles[k].at, other->tiles[t].at))
			return true;
	return false;
}

/* An end whose prolongation runs under tile that another part crosses points inwards: the
 * group goes on there. */
static bool points_inwards(struct arena *arena, const struct corridor *corridor,
                           const struct soft_end *end, const struct crack_part *const *parts,
                           size_t part_count)
{
	struct segment ahead = {end->at, way_end(end->part, end->which)};
	for (size_t k = 0; k < part_count; k++) {
		if (parts[k] == end->part)
			continue;
		struct crack_part others = *parts[k];
		others.tiles = ARENA_ARRAY(arena, struct tile_ref, parts[k]->tile_count);
		others.tile_count = 0;
		for (size_t t = 0; t < parts[k]->tile_count; t++)
			if (!shares_tile(end->part, parts[k], t))
				others.tiles[others.tile_count++] = parts[k]->tiles[t];
		if (is_under(arena, corridor->tiling, &others, ahead))
			return true;
	}
	return false;
}

/* Place on the outline where the outward ray leaves it for good; else the nearest place. */
static double place_round(struct ring outline, struct point at, struct point out)
{
	struct box box = ring_box(outline);
	double far = (box.x1 - box.x0) + (box.y1 - box.y0) + ring_distance(outline, at);
	struct segment ray = {at, point_add(at, point_scale(out, far))};
	double last = -1, round = 0, least = INFINITY, nearest = 0;
	for (size_t i = 0; i < outline.count; i++) {
		struct segment side = segment_of_ring(outline, i);
		double share, distance = segment_distance(side, at);
		double length = fmax(segment_length(side), TOLERANCE_SAME);
		if (distance < least - TOLERANCE_SAME) {
			least = distance;
			nearest = (double)i +
			          point_distance(side.from, segment_nearest(side, at)) / length;
		}
		if (segment_crossing(ray, side, &share) && share > last) {
			struct point p = point_between(ray.from, ray.to, share);
			last = share;
			round = (double)i + point_distance(side.from, p) / length;
		}
	}
	return last >= 0 ? round : nearest;
}

static int by_place_round(const void *a, const void *b)
{
	const struct soft_end *x = a, *y = b;
	if (fabs(x->round - y->round) > TOLERANCE_SAME)
		return x->round < y->round ? -1 : 1;
	if (x->part != y->part)
		return x->part < y->part ? -1 : 1;
	return x->which - y->which;
}

struct soft_end *soft_ends(struct arena *arena, const struct corridor *corridor,
                           const struct crack_part *const *parts, size_t part_count,
                           const struct region *crossed, size_t *out_count)
{
	struct soft_end *ends = ARENA_ARRAY(arena, struct soft_end, 2 * part_count);
	size_t count = 0;
	for (size_t k = 0; k < 2 * part_count; k++) {
		struct soft_end end = {.part = parts[k / 2], .which = (int)(k % 2)};
		enum part_end kind = end.part->ends[end.which];
		if (kind == PART_END_JOINED)
			continue;
		end.at_border = kind == PART_END_BORDER;
		if (end.at_border && !find_border_end(corridor, &end))
			continue;
		if (!end.at_border) {
			find_field_end(&end);
			if (points_inwards(arena, corridor, &end, parts, part_count))
				continue;
		}
		if (crossed->count > 0)
			end.round = place_round(crossed->polygons[0].outline, end.at, end.out);
		ends[count++] = end;
	}
	qsort(ends, count, sizeof *ends, by_place_round);
	*out_count = count;
	return ends;
}

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

/* Over the strip's end; where no joint crosses that half of it, over the flank from there
 * back to the crack's end. */
static void add_end_line(struct arena *arena, struct corridor *corridor, struct soft_ports *ports,
                         const struct soft_end *end, bool left)
{
	struct point out = point_left(point_unit(point_sub(end->across.to, end->across.from)));
	add_outline(arena, corridor, ports, end, left, end->across, out);
	if (ports->ports.count > 0)
		return;
	struct point corner = left ? end->across.from : end->across.to;
	double back = point_dot(out, point_sub(corner, end->at));
	struct segment flank = {corner, point_sub(corner, point_scale(out, back))};
	struct point aside = point_scale(point_left(out), left ? 1 : -1);
	add_outline(arena, corridor, ports, end, left, flank, aside);
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
                                 const struct soft_end *end, bool left, double one_tile)
{
	struct soft_ports ports = {0};
	if (end->at_border) {
		/* The domain lies to the left of its border: looking out, forward is left. */
		walk_border(arena, corridor, &ports, end, left);
		return ports;
	}
	add_end_line(arena, corridor, &ports, end, left);
	add_border_beside(arena, corridor, &ports, end, left, one_tile);
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

#include "pattern/network.h"

#include <assert.h>
#include <stdlib.h>

#include "base/array.h"
#include "geometry/tolerance.h"
#include "pattern/lattice.h"

/* A vertex placed in the lattice. */
struct corner {
	int vertex, i, j;
};

struct building {
	struct arena *arena;
	const struct module *module;
	struct lattice lattice;
	ARRAY_OF(struct network_vertex) vertices;
	ARRAY_OF(struct network_edge) edges;
};

/* The corner at `at`; a vertex not met before becomes one. */
static struct corner find_corner(struct building *b, struct point at)
{
	for (size_t v = 0; v < b->vertices.count; v++) {
		struct corner corner = {.vertex = (int)v};
		if (lattice_leads(b->lattice, b->vertices.items[v].at, at, &corner.i, &corner.j))
			return corner;
	}
	array_push(b->arena, &b->vertices)->at = at;
	return (struct corner){.vertex = (int)b->vertices.count - 1};
}

static void add_vertices(struct building *b)
{
	for (size_t f = 0; f < b->module->face_count; f++) {
		struct ring cell = b->module->faces[f].cell;
		for (size_t k = 0; k < cell.count; k++)
			find_corner(b, cell.points[k]);
	}
}

/* A point where a border is split, and how far along it lies. */
struct split {
	struct corner corner;
	double along;
};

static int by_along(const void *a, const void *b)
{
	double x = ((const struct split *)a)->along, y = ((const struct split *)b)->along;
	return x < y ? -1 : x > y;
}

static struct point corner_at(const struct building *b, struct corner corner)
{
	return point_add(b->vertices.items[corner.vertex].at,
	                 module_step(b->module, corner.i, corner.j));
}

struct split_list {
	ARRAY_OF(struct split) splits;
};

static void add_splits_at(struct building *b, struct split_list *list, int vertex,
                          struct segment border)
{
	struct ring shape = {&b->vertices.items[vertex].at, 1};
	struct lattice_walk walk = lattice_walk_near(b->lattice, shape, border, 0);
	struct point along = point_unit(point_sub(border.to, border.from));
	struct corner corner = {.vertex = vertex};
	while (lattice_walk_next(&walk, &corner.i, &corner.j)) {
		struct point at = corner_at(b, corner);
		if (segment_distance(border, at) < TOLERANCE_SAME)
			*array_push(b->arena, &list->splits) =
				(struct split){corner,
			                       point_dot(along, point_sub(at, border.from))};
	}
}

/* Corners on the border, ends included, in the order of walking it. */
static struct split_list split_border(struct building *b, struct segment border)
{
	struct split_list list = {0};
	for (size_t v = 0; v < b->vertices.count; v++)
		add_splits_at(b, &list, (int)v, border);
	qsort(list.splits.items, list.splits.count, sizeof *list.splits.items, by_along);
	return list;
}

static bool is_lesser_end(struct corner a, struct corner b)
{
	if (a.vertex != b.vertex)
		return a.vertex < b.vertex;
	return a.j != b.j ? a.j < b.j : a.i < b.i;
}

/* The stored edge from `low` to `high`, made when it is not there yet. */
static struct network_edge *edge_between(struct building *b, struct corner low, struct corner high)
{
	int to_i = high.i - low.i, to_j = high.j - low.j;
	for (size_t e = 0; e < b->edges.count; e++) {
		struct network_edge *edge = &b->edges.items[e];
		if (edge->from == low.vertex && edge->to == high.vertex && edge->to_i == to_i &&
		    edge->to_j == to_j)
			return edge;
	}
	struct network_edge *edge = array_push(b->arena, &b->edges);
	*edge = (struct network_edge){.from = low.vertex,
	                              .to = high.vertex,
	                              .to_i = to_i,
	                              .to_j = to_j,
	                              .left.face = -1,
	                              .right.face = -1};
	edge->length = point_distance(corner_at(b, low), corner_at(b, high));
	return edge;
}

/* A stretch of the cell of `face` at (0, 0), walked with the cell to its left. */
static void add_stretch(struct building *b, int face, struct corner from, struct corner to)
{
	bool forward = is_lesser_end(from, to);
	struct corner low = forward ? from : to, high = forward ? to : from;
	struct network_edge *edge = edge_between(b, low, high);
	struct network_side side = {face, -low.i, -low.j};
	struct network_side *place = forward ? &edge->left : &edge->right;
	assert(place->face < 0);
	*place = side;
}

static void add_edges(struct building *b)
{
	for (size_t f = 0; f < b->module->face_count; f++) {
		struct ring cell = b->module->faces[f].cell;
		for (size_t k = 0; k < cell.count; k++) {
			struct split_list list = split_border(b, segment_of_ring(cell, k));
			const struct split *splits = list.splits.items;
			for (size_t s = 0; s + 1 < list.splits.count; s++)
				add_stretch(b, (int)f, splits[s].corner, splits[s + 1].corner);
		}
	}
}

static struct point direction_of(const struct building *b, struct network_leaving leaving)
{
	const struct network_edge *edge = &b->edges.items[leaving.edge];
	struct point along =
		point_sub(corner_at(b, (struct corner){edge->to, edge->to_i, edge->to_j}),
	                  b->vertices.items[edge->from].at);
	return point_unit(leaving.reversed ? point_scale(along, -1) : along);
}

/* 0 for directions from east to just before west, 1 for the rest. */
static int half_of(struct point direction)
{
	if (fabs(direction.y) < TOLERANCE_SAME)
		return direction.x < 0;
	return direction.y < 0;
}

static bool is_before(struct point a, struct point b)
{
	int half_a = half_of(a), half_b = half_of(b);
	return half_a != half_b ? half_a < half_b : point_cross(a, b) > 0;
}

static void insert_leaving(struct building *b, struct network_vertex *vertex,
                           struct network_leaving leaving)
{
	size_t at = vertex->leaving_count++;
	for (; at > 0 &&
	       is_before(direction_of(b, leaving), direction_of(b, vertex->leaving[at - 1]));
	     at--)
		vertex->leaving[at] = vertex->leaving[at - 1];
	vertex->leaving[at] = leaving;
}

static void link_vertices(struct building *b)
{
	size_t *degree = ARENA_ARRAY(b->arena, size_t, b->vertices.count);
	for (size_t e = 0; e < b->edges.count; e++) {
		degree[b->edges.items[e].from]++;
		degree[b->edges.items[e].to]++;
	}
	for (size_t v = 0; v < b->vertices.count; v++)
		b->vertices.items[v].leaving =
			ARENA_ARRAY(b->arena, struct network_leaving, degree[v]);
	for (size_t e = 0; e < b->edges.count; e++) {
		const struct network_edge *edge = &b->edges.items[e];
		insert_leaving(b, &b->vertices.items[edge->from],
		               (struct network_leaving){(int)e, 0, 0, false});
		insert_leaving(b, &b->vertices.items[edge->to],
		               (struct network_leaving){(int)e, -edge->to_i, -edge->to_j, true});
	}
}

const struct network *network_from_module(struct arena *arena, const struct module *module)
{
	struct building b = {.arena = arena, .module = module, .lattice = {module->a, module->b}};
	add_vertices(&b);
	add_edges(&b);
	link_vertices(&b);
	struct network *network = ARENA_NEW(arena, struct network);
	*network =
		(struct network){b.vertices.items, b.vertices.count, b.edges.items, b.edges.count};
	return network;
}

struct segment network_segment(const struct network *network, const struct module *module,
                               struct network_place place, struct point position)
{
	const struct network_edge *edge = &network->edges[place.edge];
	return (struct segment){network_vertex_at(network, module, edge->from, place.i, place.j,
	                                          position),
	                        network_vertex_at(network, module, edge->to, place.i + edge->to_i,
	                                          place.j + edge->to_j, position)};
}

struct address network_beside(const struct network *network, struct network_place place, bool left)
{
	const struct network_edge *edge = &network->edges[place.edge];
	struct network_side side = left ? edge->left : edge->right;
	return (struct address){side.face, side.i + place.i, side.j + place.j};
}

struct near_list {
	ARRAY_OF(struct network_place) places;
};

static void add_near(struct arena *arena, struct near_list *list, const struct network *network,
                     const struct module *module, struct point position, int edge,
                     struct segment segment, double reach)
{
	struct network_place place = {edge, 0, 0};
	struct segment home = network_segment(network, module, place, position);
	struct ring shape = {(struct point[]){home.from, home.to}, 2};
	struct lattice lattice = {module->a, module->b};
	struct lattice_walk walk = lattice_walk_near(lattice, shape, segment, reach);
	while (lattice_walk_next(&walk, &place.i, &place.j)) {
		struct segment at = network_segment(network, module, place, position);
		if (segment_gap(at, segment) <= reach + TOLERANCE_SAME)
			*array_push(arena, &list->places) = place;
	}
}

struct network_place *network_near(struct arena *arena, const struct network *network,
                                   const struct module *module, struct point position,
                                   struct segment segment, double reach, size_t *out_count)
{
	struct near_list list = {0};
	for (size_t e = 0; e < network->edge_count; e++)
		add_near(arena, &list, network, module, position, (int)e, segment, reach);
	*out_count = list.places.count;
	return list.places.items;
}

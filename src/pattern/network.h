/* network.h - the joint network: the borders of the cells of one period, as a graph.
 * A place in it is (edge, i, j); nothing is stored per tile, however large the floor.
 * Units: mm in the lay's own axes. Owns: arena.
 * Invariants: edges meet only at their ends (a border is split where a neighbour's corner
 * lies on it); every edge is stored once, from the lesser end: the lesser vertex, or of one
 * vertex and its copy the one with the lesser (j, i). */
#ifndef PATTERN_NETWORK_H
#define PATTERN_NETWORK_H
#include "geometry/segment.h"
#include "pattern/lattice.h"
#include "pattern/module.h"

/* A cell beside an edge that lies at lattice position (0, 0). */
struct network_side {
	int face, i, j;
};

struct network_edge {
	int from, to;   /* vertices; `from` at position (0, 0) */
	int to_i, to_j; /* lattice position of `to` */
	struct network_side left, right;
	double length;
};

/* An edge leaving a vertex: walking `edge` placed at (i, j) from the vertex's own position. */
struct network_leaving {
	int edge, i, j;
	bool reversed; /* walked from `to` to `from` */
};

struct network_vertex {
	struct point at;                 /* at lattice position (0, 0) */
	struct network_leaving *leaving; /* anticlockwise from east */
	size_t leaving_count;
};

struct network {
	struct network_vertex *vertices;
	size_t vertex_count;
	struct network_edge *edges;
	size_t edge_count;
};

const struct network *network_from_module(struct arena *, const struct module *);

struct network_place {
	int edge, i, j;
};

static inline struct point network_vertex_at(const struct network *n, const struct module *m,
                                             int vertex, int i, int j, struct point position)
{
	return lattice_corner(
		point_add(n->vertices[vertex].at, point_add(position, module_step(m, i, j))));
}

static inline bool network_place_is_same(struct network_place a, struct network_place b)
{
	return a.edge == b.edge && a.i == b.i && a.j == b.j;
}

/* Where the edge lies, from `from` to `to`. */
struct segment network_segment(const struct network *, const struct module *, struct network_place,
                               struct point position);
/* The cell to the left (or right) of a place, walked from `from` to `to`. */
struct address network_beside(const struct network *, struct network_place, bool left);
/* Every place that comes within `reach` of the segment, ordered by (edge, j, i). Cost grows
 * with the segment, not with the floor. */
struct network_place *network_near(struct arena *, const struct network *, const struct module *,
                                   struct point position, struct segment, double reach,
                                   size_t *out_count);

#endif

#include "layout/rows.h"

#include <stdlib.h>

static int lowest_first(const void *a, const void *b)
{
	const struct row_edge *x = a, *y = b;
	if (x->walk.j != y->walk.j)
		return x->walk.j < y->walk.j ? -1 : 1;
	return x->edge < y->edge ? -1 : x->edge > y->edge;
}

struct rows rows_of_face(struct arena *arena, struct lattice lattice, struct ring face,
                         struct point position, const struct border_edges *border, double reach)
{
	struct rows rows = {
		.edges = ARENA_ARRAY(arena, struct row_edge, border->count),
		.edge_count = border->count,
		.active = ARENA_ARRAY(arena, struct row_edge *, border->count),
		.middle = lattice_in_rows(lattice, ring_middle(face)),
		.spans = ARENA_ARRAY(arena, struct row_span, border->count),
	};
	for (size_t e = 0; e < border->count; e++) {
		struct segment segment = {point_sub(border->edges[e].from, position),
		                          point_sub(border->edges[e].to, position)};
		rows.edges[e] =
			(struct row_edge){lattice_walk_near(lattice, face, segment, reach), e};
	}
	if (rows.edge_count > 0)
		qsort(rows.edges, rows.edge_count, sizeof *rows.edges, lowest_first);
	return rows;
}

/* Takes up the edges that begin by this row, drops those that end before it. */
static void bring_up_to_date(struct rows *rows)
{
	size_t kept = 0;
	while (rows->taken < rows->edge_count && rows->edges[rows->taken].walk.j <= rows->j)
		rows->active[rows->active_count++] = &rows->edges[rows->taken++];
	for (size_t k = 0; k < rows->active_count; k++)
		if (rows->active[k]->walk.last_j >= rows->j)
			rows->active[kept++] = rows->active[k];
	rows->active_count = kept;
}

static struct row_span span_of(const struct rows *rows, struct row_edge *edge)
{
	struct lattice_walk *walk = &edge->walk;
	lattice_walk_enter(walk, rows->j);
	struct row_span span = {.edge = edge->edge, .first = walk->i, .last = walk->last_i};
	double level = rows->middle.y + rows->j * walk->rise;
	span.crosses = (walk->from.y > level) != (walk->to.y > level);
	if (span.crosses) {
		double share = (level - walk->from.y) / (walk->to.y - walk->from.y);
		double x = point_between(walk->from, walk->to, share).x;
		span.at = (x - rows->middle.x - rows->j * walk->shift) / walk->pitch;
	}
	return span;
}

static int leftmost_first(const void *a, const void *b)
{
	const struct row_span *x = a, *y = b;
	if (x->first != y->first)
		return x->first < y->first ? -1 : 1;
	return x->edge < y->edge ? -1 : x->edge > y->edge;
}

bool rows_next(struct rows *rows)
{
	rows->j++;
	if (rows->active_count == 0) {
		if (rows->taken == rows->edge_count)
			return false;
		rows->j = rows->edges[rows->taken].walk.j;
	}
	bring_up_to_date(rows);
	rows->span_count = rows->active_count;
	for (size_t k = 0; k < rows->span_count; k++)
		rows->spans[k] = span_of(rows, rows->active[k]);
	if (rows->span_count > 1)
		qsort(rows->spans, rows->span_count, sizeof *rows->spans, leftmost_first);
	return true;
}

/* rows.h - one face of a pattern row by row, and where the borders of a panel pass through each
 * row: a scan line, which takes an edge up at the first row it comes near and drops it after
 * the last. The cost is of rows and of edges in each, not of the faces between them.
 * Units: mm in the lay's own axes. Owns: arena. */
#ifndef LAYOUT_ROWS_H
#define LAYOUT_ROWS_H
#include "geometry/window.h"
#include "pattern/lattice.h"

/* A border edge in a row. */
struct row_span {
	size_t edge;
	int first, last; /* faces it may come near; first = last + 1: it passes between the two */
	bool crosses;    /* the line through the middles of the row's faces, */
	double at;       /* there, in faces: left of the middle of face i where at < i */
};

struct row_edge {
	struct lattice_walk walk;
	size_t edge;
};

struct rows {
	struct row_edge *edges; /* by the first row they come near */
	size_t edge_count, taken;
	struct row_edge **active;
	size_t active_count;
	struct point middle; /* of the face at (0, 0), in the axes of the rows */
	int j;
	struct row_span *spans; /* of row j, by first */
	size_t span_count;
};

/* `face` lies where the lattice is at (0, 0). */
struct rows rows_of_face(struct arena *, struct lattice, struct ring face, struct point position,
                         const struct border_edges *, double reach);
/* Goes to the next row that an edge comes near; the rows it leaves out lie wholly outside.
 * False: there is none. */
bool rows_next(struct rows *);

#endif

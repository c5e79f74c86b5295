/* marks.h - which faces of a lattice a straight edge comes near.
 * The cost is one mark a face touched: it grows with the edge's length and not with the
 * floor. The marks are a superset: a face's box in the lattice's row axes is what is met.
 * Units: mm in the lay's own axes. Owns: arena. */
#ifndef LAYOUT_MARKS_H
#define LAYOUT_MARKS_H
#include "base/array.h"
#include "pattern/module.h"

struct mark {
	struct address at;
	size_t edge; /* the caller's number of the edge */
};

struct mark_list {
	struct arena *arena;
	ARRAY_OF(struct mark) marks;
};

/* Marks every face within `reach` of the edge from `from` to `to`. */
void marks_add_edge(struct mark_list *, const struct module *, struct point position,
                    struct point from, struct point to, double reach, size_t edge);
/* By (face, j, i, edge). */
void marks_sort(struct mark_list *);

#endif

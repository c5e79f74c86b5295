/* wish.h - entries of full-at and centre-on as conditions on the lattice position.
 * Units: mm in the lay's own axes. Owns: arena. */
#ifndef LAYOUT_WISH_H
#define LAYOUT_WISH_H
#include "layout/wall_term.h"

/* One entry: either walls where a whole tile must start, or a line to be centred on. */
struct wish {
	const struct plan_ref *ref;
	bool is_centre, along_u; /* which coordinate of the position it speaks of */
	bool is_possible;        /* false: no border of that name runs along the lattice */
	size_t *terms;           /* of full-at: indices of wall terms, all to be met */
	size_t term_count;
	size_t part;   /* of centre-on: the part the line lies in */
	double centre; /* of centre-on: coordinate of the line */
};

struct wishes {
	struct wish *wishes;
	size_t count;
};

struct wishes wishes_of_lay(struct arena *, const struct field *, const struct wall_term *,
                            size_t term_count);
/* From the lattice's position to the middle of a tile, along the axis. */
double wish_middle(const struct module *, bool along_u);
/* True where a joint or a tile's middle lies on the line, within `reach`, in one course
 * (of patterns without courses: in one lane). */
bool wish_is_centred(const struct wish *, const struct module *, double position, double reach);

#endif

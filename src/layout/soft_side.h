/* soft_side.h - one side of a unit: the walks of the soft joint from one end to the next, or the
 * joints that serve where the tile lies against them.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_SIDE_H
#define LAYOUT_SOFT_SIDE_H
#include "layout/soft_search.h"

/* Anticlockwise round the unit's crossed tile. */
struct soft_side {
	const struct soft_end *from, *to; /* NULL: the unit has no ends, and this is all round it */
	bool is_backwards;                /* walked from `to`: along the crack, not against it */
};

struct soft_side_found {
	ARRAY_OF(struct soft_walk) walks; /* in the order they are walked */
	const char *uses;                 /* ids of joints the tile lies against, by blanks; "" */
	bool is_nothing;                  /* its two ends are one */
	bool is_missing;                  /* there is tile between the ends, and no way beside it */
	bool is_enclosed;                 /* crossed tile lies all about: there is no such side */
};

struct soft_side_found soft_side_find(struct arena *, const struct soft_setting *,
                                      struct soft_unit *, struct soft_side);

#endif

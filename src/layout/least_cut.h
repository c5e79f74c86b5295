/* least_cut.h - of all the cuts that a position leaves, the one a setter is asked about.
 * By value; points into field and position. */
#ifndef LAYOUT_LEAST_CUT_H
#define LAYOUT_LEAST_CUT_H
#include "layout/position.h"

struct least_cut {
	const struct border_cut *cut; /* NULL: nothing is cut where it can be helped */
	const char *of;               /* wall, doorway or slab joint it lies at */
	double limit;                 /* mm: less is small */
	double share;                 /* of the limit; below 1 it is small */
};

/* The cut that falls shortest of its limit; of equals the first. Left out are cuts round
 * obstacles, which come as they come, and those at a border so far askew that a small one comes
 * wherever the grid lies. */
struct least_cut least_cut_of(const struct field *, const struct position *);

#endif

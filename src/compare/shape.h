/* shape.h - where an element of the floor lies, for telling whether it has moved.
 * Units: mm in plan axes. Owns: arena; points are the site's. */
#ifndef COMPARE_SHAPE_H
#define COMPARE_SHAPE_H
#include "site/site.h"

struct shape {
	struct line line;
	bool is_ring; /* closed: it may start at any of its points */
};

/* Of a room, obstacle, doorway, crack, slab joint, reading or slab; of anything else, and of
 * one that has no place, no points. */
struct shape shape_find(struct arena *, const struct site *, const char *kind, const char *id);
/* True where no point of one lies farther from its fellow than a setter can see. */
bool shape_is_same(struct shape, struct shape);
/* The same lines, but one of them from its other end. */
bool shape_is_reversed(struct shape, struct shape);

#endif

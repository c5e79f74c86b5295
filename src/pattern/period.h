/* period.h - one period of a pattern of rectangles, exact.
 * A cell is a face and one joint more along and across: it stands where its face does, half a
 * joint to the right of and above the cell around the face, so that nothing is halved.
 * Units: whole nanometres, the pattern's own axes. Owns: arena. */
#ifndef PATTERN_PERIOD_H
#define PATTERN_PERIOD_H
#include "base/arena.h"
#include "plan/plan.h"

struct period_cell {
	int tile;                 /* index into lay->tiles */
	int line;                 /* of its <piece>; 0: the pattern's own */
	int64_t x, y, wide, deep; /* lower left corner, extents */
};

struct period_step {
	int64_t x, y;
};

struct period {
	struct period_cell *cells;
	size_t count;
	struct period_step a, b; /* b to the left of a */
};

/* The patterns whose rectangles lie in whole nanometres and may fail to fill the plane:
 * herringbone, basketweave, pinwheel, module. Whether they do is period_proof.h's to say. */
bool period_has_pattern(enum plan_pattern);
const struct period *period_from_lay(struct arena *, const struct plan_lay *);
/* Twice the signed area, and the like, of lengths up to the limits of a plan. */
__extension__ typedef __int128 period_area;

static inline period_area period_cross(struct period_step a, struct period_step b)
{
	return (period_area)a.x * b.y - (period_area)a.y * b.x;
}

#endif

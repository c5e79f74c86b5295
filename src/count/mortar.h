/* mortar.h - how much floor a bag of mortar sets.
 * Units: mm2. By value; fails never. Source: docs/sources.md#quantities. */
#ifndef COUNT_MORTAR_H
#define COUNT_MORTAR_H
#include "layout/placed.h"

enum mortar_by {
	MORTAR_BY_PLAN,   /* the plan says what a bag covers */
	MORTAR_BY_TROWEL, /* by the depth of its notch */
	MORTAR_BY_TILE,   /* no trowel that can be read: by the size of the tile */
};

struct mortar_cover {
	double bag_mm2;
	enum mortar_by by;
};

struct mortar_cover mortar_cover(const struct placed_lay *, const struct plan_mortar *,
                                 const struct rules *, bool inches);
/* Depth of the notch of a trowel written 1/4x3/8in, 1/4 x 1/4 x 3/8 in or 10mm; 0: not read. */
double mortar_notch(const char *trowel, bool inches);

#endif

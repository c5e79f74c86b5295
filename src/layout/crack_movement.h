/* crack_movement.h - how far a crack may still open: an upper bound. It may raise a question,
 * and never answers one.
 * The concrete on each side shrinks and cools over half the way to the next crack, slab joint
 * or edge, square to the crack, no farther than the slab's usual distance of joints.
 * Units: mm, Celsius, days. By value. Source: E-C4; EN 1992-1-1 3.1.3, 3.1.4. */
#ifndef LAYOUT_CRACK_MOVEMENT_H
#define LAYOUT_CRACK_MOVEMENT_H
#include "rules/rules.h"
#include "rules/shrinkage.h"
#include "site/site.h"

struct crack_movement {
	const struct plan_slab *slab; /* where it is greatest; NULL: the crack is in no room */
	struct concrete concrete;     /* of it, when tile starts */
	double length;                /* of concrete that moves: half the way on both sides */
	double shrinkage;
	double warming; /* kelvin from the coldest day to the hottest */
	double thermal;
	double total;
};

struct crack_movement crack_movement_of(struct arena *, const struct site *, const struct rules *,
                                        const struct site_crack *);

#endif

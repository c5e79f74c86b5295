/* movement_steps.h - across courses that shift, a field joint is cut through tile or steps along
 * it: what each costs, as a length of straight joint.
 * Units: mm. By value; nothing fails. Source: contract E-M3; the table's figures soft-turn-penalty
 * and field-cut-tile. */
#ifndef LAYOUT_MOVEMENT_STEPS_H
#define LAYOUT_MOVEMENT_STEPS_H
#include "layout/tiling.h"

struct movement_steps {
	double cut, stepped; /* what each costs; stepped is infinite for patterns without courses */
	int tiles, turns;    /* cut through, and taken */
};

/* `position`: where the lattice lies in the line's part. A stepped joint follows the head joint of
 * each course that is nearest to the line. */
struct movement_steps movement_steps_of(const struct rules *, const struct tiling *,
                                        struct point position, const struct movement_line *);

#endif

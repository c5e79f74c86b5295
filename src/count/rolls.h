/* rolls.h - pieces of sheet membrane cut from rolls: side by side where a roll is wide enough,
 * and lengths packed into rolls.
 * Units: mm. Owns: the arena given to roll_list_add. */
#ifndef COUNT_ROLLS_H
#define COUNT_ROLLS_H
#include "base/array.h"
#include "count/packing.h"
#include "geometry/region.h"

struct roll_piece {
	double length, wide;
};

struct roll_list {
	ARRAY_OF(struct roll_piece) pieces;
};

/* What a membrane is sold as. */
struct roll_goods {
	double wide, length, lap;
};

/* Rolls for the pieces, and a bound by their area and by the longest alone. Pieces are no
 * larger than a roll. */
struct packing rolls_for(struct arena *, const struct roll_list *, struct roll_goods);
/* Adds the pieces that cover a region in lanes along x, laps included. */
void rolls_cover(struct arena *, const struct region *, struct roll_goods, struct roll_list *);

#endif

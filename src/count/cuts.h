/* cuts.h - length of cutting in tile, by kind.
 * Straight: along a side of the tile; taper: at an angle to both; notch: a piece with an
 * inner corner; hole: inside a tile. What was left at the factory is no cut.
 * Units: mm. Source: contract of the engine, "Count"; common practice. */
#ifndef COUNT_CUTS_H
#define COUNT_CUTS_H
#include "layout/placed.h"

enum cut_kind { CUT_STRAIGHT, CUT_TAPER, CUT_NOTCH, CUT_HOLE, CUT_KINDS };

struct cut_total {
	double length[CUT_KINDS];
};

/* Outside the holds: one for each room of the lay, in its order; a piece is of the room that
 * its middle lies in. Owns: arena. */
struct cut_total *cuts_of_lay(struct arena *, const struct placed_lay *);
/* One piece of a convex face. */
void cuts_add_piece(struct cut_total *, struct ring face, const struct tile_piece *);

#endif

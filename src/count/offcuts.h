/* offcuts.h - how many tiles the cut pieces of a lay take when offcuts are used again.
 * A wall cut keeps one factory edge, so that a tile gives two of them at most, a saw's kerf
 * apart, inside one panel and kind of tile; tile that cannot be turned round gives one for
 * each of two opposite edges. Corner pieces, and those with notches all through, take a tile
 * each. Under this rule the number is the least there is.
 * Units: mm. By value; scratch comes and goes. Source: contract of the engine, "Count". */
#ifndef COUNT_OFFCUTS_H
#define COUNT_OFFCUTS_H
#include "layout/placed.h"

struct offcut_total {
	long pieces;     /* cut pieces outside the holds */
	long tiles;      /* that they are cut from */
	long bound;      /* no fewer would do by any rule: their area, panel by panel */
	double face_mm2; /* of one tile */
};

/* Pieces of one kind of tile: `tile` is its index in the lay. */
struct offcut_total offcuts_pair(const struct placed_lay *, int tile, double kerf);

/* Least number of bins for sizes of which at most two go into one, `kerf` apart. The
 * sizes are put in order. */
size_t offcuts_pairs_of(double *sizes, size_t count, double room, double kerf);
/* The same where each bin takes at most one of either side. */
size_t offcuts_pairs_between(double *low, size_t low_count, double *high, size_t high_count,
                             double room, double kerf);

#endif

/* held.h - whether a tile lies in a hold: it is counted apart, and not bought to be laid yet.
 * By value. Source: contract, "Cracks". */
#ifndef COUNT_HELD_H
#define COUNT_HELD_H
#include "layout/placed.h"

/* `piece` of the panel; NULL: the whole face at the address. */
bool held_tile(const struct placed_lay *, size_t panel, struct address, const struct tile_piece *);

#endif

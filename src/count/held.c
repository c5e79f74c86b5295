#include "count/held.h"

bool held_tile(const struct placed_lay *lay, size_t panel, struct address at,
               const struct tile_piece *piece)
{
	for (size_t h = 0; h < lay->cracks->hold_count; h++) {
		const struct hold *hold = &lay->cracks->holds[h];
		if (tile_refs_hold(hold->tiles, hold->tile_count,
		                   (struct tile_ref){panel, at, piece}))
			return true;
	}
	return false;
}

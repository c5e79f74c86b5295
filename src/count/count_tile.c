/* count_tile.c - ground, tile, and what is held. */
#include "count/counting.h"
#include "count/totals.h"

void count_tile(struct counting *c)
{
	for (size_t i = 0; i < c->placed->lay_count; i++) {
		const struct placed_lay *lay = &c->placed->lays[i];
		struct tile_total total = tile_total(lay);
		const char *where = counting_rooms(c, lay->field);
		counting_area(c, COUNT_FIELD, where, lay->field->area_mm2);
		counting_number(c, COUNT_TILE_WHOLE, where, total.whole);
		counting_number(c, COUNT_TILE_CUT, where, total.cut);
		for (size_t h = 0; h < lay->cracks->hold_count; h++) {
			const struct hold *hold = &lay->cracks->holds[h];
			counting_area(c, COUNT_HOLD, hold->id, hold->area_mm2);
			counting_number(c, COUNT_TILE_WHOLE_HELD, hold->id, hold->whole_count);
			counting_number(c, COUNT_TILE_CUT_HELD, hold->id, hold->cut_count);
		}
	}
}

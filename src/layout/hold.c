#include "layout/hold.h"

#include <stdlib.h>

#include "base/array.h"
#include "geometry/overlay.h"

static int by_tile(const void *a, const void *b)
{
	const struct tile_ref *x = a, *y = b;
	if (x->panel != y->panel)
		return x->panel < y->panel ? -1 : 1;
	if (x->at.face != y->at.face)
		return x->at.face < y->at.face ? -1 : 1;
	if (x->at.j != y->at.j)
		return x->at.j < y->at.j ? -1 : 1;
	if (x->at.i != y->at.i)
		return x->at.i < y->at.i ? -1 : 1;
	/* Pieces of one face lie one behind the other in their panel. */
	return x->piece < y->piece ? -1 : x->piece > y->piece;
}

struct tile_list {
	ARRAY_OF(struct tile_ref) tiles;
};

/* Each tile once, ordered. */
static struct tile_list tiles_round(struct arena *arena, const struct tiling *tiling,
                                    const struct hold_line *lines, size_t count)
{
	struct tile_list list = {0};
	for (size_t k = 0; k < count; k++) {
		size_t near;
		const struct tile_ref *tiles = crossed_by_line(arena, tiling, lines[k].line,
		                                               lines[k].distance, &near);
		for (size_t n = 0; n < near; n++)
			*array_push(arena, &list.tiles) = tiles[n];
	}
	if (list.tiles.count == 0)
		return list;
	qsort(list.tiles.items, list.tiles.count, sizeof *list.tiles.items, by_tile);
	size_t kept = 1;
	for (size_t k = 1; k < list.tiles.count; k++)
		if (by_tile(&list.tiles.items[k], &list.tiles.items[kept - 1]) != 0)
			list.tiles.items[kept++] = list.tiles.items[k];
	list.tiles.count = kept;
	return list;
}

static void count_tile(struct hold *hold, const struct module *module, struct tile_ref tile)
{
	if (tile.piece) {
		hold->cut_count++;
		hold->tile_mm2 += tile.piece->area_mm2;
	} else {
		hold->whole_count++;
		hold->tile_mm2 += module->faces[tile.at.face].area_mm2;
	}
}

struct hold hold_round_lines(struct arena *arena, const struct tiling *tiling,
                             const struct hold_line *lines, size_t count)
{
	struct hold hold = {0};
	struct tile_list list = tiles_round(arena, tiling, lines, count);
	const struct tile_ref *tiles = list.tiles.items;
	ARRAY_OF(struct region) parts = {0};
	for (size_t first = 0, end; first < list.tiles.count; first = end) {
		for (end = first; end < list.tiles.count && tiles[end].panel == tiles[first].panel; end++)
			count_tile(&hold, tiling->module, tiles[end]);
		struct region cells = crossed_ground(arena, tiling, tiles + first, end - first);
		struct region panel = {&tiling->panels[tiles[first].panel].ground, 1};
		*array_push(arena, &parts) = overlay_intersection(arena, &cells, &panel);
	}
	hold.region = overlay_union_all(arena, parts.items, parts.count);
	hold.area_mm2 = region_area(&hold.region);
	return hold;
}

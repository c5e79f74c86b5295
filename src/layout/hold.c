#include "layout/hold.h"

#include "base/array.h"
#include "geometry/overlay.h"
#include "layout/marks.h"

struct tile_list {
	ARRAY_OF(struct tile_ref) tiles;
};

/* A cell is held whole: all pieces of its face go with it. */
static void add_tile(struct arena *arena, const struct tiling *tiling, struct tile_list *list,
                     struct tile_ref tile)
{
	if (!tile.piece) {
		*array_push(arena, &list->tiles) = tile;
		return;
	}
	const struct panel *panel = &tiling->panels[tile.panel];
	for (size_t p = 0; p < panel->piece_count; p++)
		if (address_is_same(panel->pieces[p].at, tile.at))
			*array_push(arena, &list->tiles) =
				(struct tile_ref){tile.panel, tile.at, &panel->pieces[p]};
}

/* Each tile once, ordered. */
static struct tile_list tiles_round(struct arena *arena, const struct tiling *tiling,
                                    const struct hold_line *lines, size_t count)
{
	struct tile_list list = {0};
	for (size_t k = 0; k < count; k++) {
		size_t near;
		const struct tile_ref *tiles =
			crossed_by_line(arena, tiling, lines[k].line, lines[k].distance, &near);
		for (size_t n = 0; n < near; n++)
			add_tile(arena, tiling, &list, tiles[n]);
	}
	list.tiles.count = tile_refs_unique(list.tiles.items, list.tiles.count);
	return list;
}

static bool is_counted(const struct hold *before, size_t count, struct tile_ref tile)
{
	for (size_t h = 0; h < count; h++)
		if (tile_refs_hold(before[h].tiles, before[h].tile_count, tile))
			return true;
	return false;
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

/* Cells under the lines themselves whose face is no tile: slivers at the border, held with
 * the tile beside them. */
static struct region slivers_under(struct arena *arena, const struct tiling *tiling, size_t index,
                                   const struct hold_line *lines, size_t count)
{
	const struct panel *panel = &tiling->panels[index];
	struct tile_list list = {0};
	for (size_t k = 0; k < count; k++) {
		size_t near;
		const struct address *marks =
			marks_near_line(arena, tiling->module, panel->position, lines[k].line,
		                        tiling->module->joint / 2, &near);
		for (size_t m = 0; m < near; m++)
			if (!panel_has_tile(panel, marks[m]))
				*array_push(arena, &list.tiles) =
					(struct tile_ref){index, marks[m], NULL};
	}
	list.tiles.count = tile_refs_unique(list.tiles.items, list.tiles.count);
	return crossed_cells(arena, tiling, list.tiles.items, list.tiles.count);
}

struct hold hold_round_lines(struct arena *arena, const struct tiling *tiling,
                             const struct hold_line *lines, size_t count, const struct hold *before,
                             size_t before_count)
{
	struct tile_list list = tiles_round(arena, tiling, lines, count);
	struct hold hold = {.tiles = list.tiles.items, .tile_count = list.tiles.count};
	const struct tile_ref *tiles = hold.tiles;
	ARRAY_OF(struct region) parts = {0};
	for (size_t first = 0, end; first < list.tiles.count; first = end) {
		for (end = first; end < list.tiles.count && tiles[end].panel == tiles[first].panel;
		     end++)
			if (!is_counted(before, before_count, tiles[end]))
				count_tile(&hold, tiling->module, tiles[end]);
		struct region cells = crossed_cells(arena, tiling, tiles + first, end - first);
		struct region slivers =
			slivers_under(arena, tiling, tiles[first].panel, lines, count);
		cells = overlay_union(arena, &cells, &slivers);
		struct region panel = {&tiling->panels[tiles[first].panel].ground, 1};
		*array_push(arena, &parts) = overlay_intersection(arena, &cells, &panel);
	}
	hold.region = overlay_union_all(arena, parts.items, parts.count);
	hold.area_mm2 = region_area(&hold.region);
	return hold;
}

#include "layout/crossed.h"

#include <stdlib.h>

#include "base/array.h"
#include "geometry/clip.h"
#include "geometry/overlay.h"
#include "geometry/segment.h"
#include "geometry/tolerance.h"

struct panel_line *panel_lines(struct arena *arena, const struct tiling *tiling, struct line line,
                               size_t *out_count)
{
	ARRAY_OF(struct panel_line) lines = {0};
	for (size_t p = 0; p < tiling->panel_count; p++) {
		struct region ground = {&tiling->panels[p].ground, 1};
		size_t count;
		struct line *parts = clip_line(arena, line, &ground, &count);
		for (size_t k = 0; k < count; k++)
			if (parts[k].count > 1)
				*array_push(arena, &lines) = (struct panel_line){p, parts[k]};
	}
	*out_count = lines.count;
	return lines.items;
}

static bool touches_panel(const struct panel_line *lines, size_t count, size_t panel)
{
	for (size_t k = 0; k < count; k++)
		if (lines[k].panel == panel)
			return true;
	return false;
}

struct tile_ref *crossed_by_line(struct arena *arena, const struct tiling *tiling, struct line line,
                                 double reach, size_t *out_count)
{
	size_t line_count, near_count, kept = 0;
	struct panel_line *lines = panel_lines(arena, tiling, line, &line_count);
	struct tile_ref *near = tiling_near(arena, tiling, line, reach, &near_count);
	for (size_t k = 0; k < near_count; k++)
		if (touches_panel(lines, line_count, near[k].panel))
			near[kept++] = near[k];
	*out_count = kept;
	return near;
}

static int by_tile(const void *a, const void *b)
{
	const struct tile_ref *x = a, *y = b;
	if (x->panel != y->panel)
		return x->panel < y->panel ? -1 : 1;
	int order = address_compare(x->at, y->at);
	if (order != 0)
		return order;
	/* Pieces of one face lie one behind the other in their panel. */
	return x->piece < y->piece ? -1 : x->piece > y->piece;
}

size_t tile_refs_unique(struct tile_ref *tiles, size_t count)
{
	if (count == 0)
		return 0;
	qsort(tiles, count, sizeof *tiles, by_tile);
	size_t kept = 1;
	for (size_t k = 1; k < count; k++)
		if (by_tile(&tiles[k], &tiles[kept - 1]) != 0)
			tiles[kept++] = tiles[k];
	return kept;
}

bool tile_refs_hold(const struct tile_ref *tiles, size_t count, struct tile_ref tile)
{
	return count > 0 && bsearch(&tile, tiles, count, sizeof *tiles, by_tile) != NULL;
}

/* A cell and the panel it lies in. */
struct placed_cell {
	size_t panel;
	struct ring ring;
	struct box box;
};

static struct placed_cell *cells_of(struct arena *arena, const struct tiling *tiling,
                                    const struct tile_ref *tiles, size_t count)
{
	struct placed_cell *cells = ARENA_ARRAY(arena, struct placed_cell, count);
	for (size_t k = 0; k < count; k++) {
		struct ring ring = tile_ref_cell(arena, tiling, tiles[k]);
		cells[k] = (struct placed_cell){tiles[k].panel, ring,
		                                box_grown(ring_box(ring), TOLERANCE_SAME)};
	}
	return cells;
}

/* Cells tile the plane: two that share ground share a border. */
static bool borders_touch(struct ring a, struct ring b)
{
	for (size_t i = 0; i < a.count; i++)
		for (size_t k = 0; k < b.count; k++)
			if (segment_meets(segment_of_ring(a, i), segment_of_ring(b, k)))
				return true;
	return false;
}

bool crossed_touch(struct arena *arena, const struct tiling *tiling, const struct tile_ref *a,
                   size_t a_count, const struct tile_ref *b, size_t b_count)
{
	const struct placed_cell *ones = cells_of(arena, tiling, a, a_count);
	const struct placed_cell *others = cells_of(arena, tiling, b, b_count);
	for (size_t i = 0; i < a_count; i++)
		for (size_t k = 0; k < b_count; k++)
			if (ones[i].panel == others[k].panel &&
			    box_meets(ones[i].box, others[k].box) &&
			    borders_touch(ones[i].ring, others[k].ring))
				return true;
	return false;
}

struct region crossed_cells(struct arena *arena, const struct tiling *tiling,
                            const struct tile_ref *tiles, size_t count)
{
	struct region *cells = ARENA_ARRAY(arena, struct region, count);
	for (size_t k = 0; k < count; k++)
		cells[k] = region_from_ring(arena, tile_ref_cell(arena, tiling, tiles[k]));
	return overlay_union_all(arena, cells, count);
}

struct region crossed_ground(struct arena *arena, const struct tiling *tiling,
                             const struct tile_ref *tiles, size_t count)
{
	struct region ground = crossed_cells(arena, tiling, tiles, count);
	for (size_t k = 0; k < ground.count; k++)
		ground.polygons[k].hole_count = 0;
	return ground;
}

struct region crossed_on(struct arena *arena, const struct tiling *tiling,
                         const struct tile_ref *tiles, size_t count, const struct region *ground)
{
	struct region cells = crossed_ground(arena, tiling, tiles, count);
	struct region within = overlay_intersection(arena, &cells, ground);
	return overlay_offset(arena, &within, TOLERANCE_WHOLE, OVERLAY_MITRE);
}

const struct polygon *crossed_home(struct arena *arena, const struct tiling *tiling,
                                   const struct region *on, const struct tile_ref *tiles,
                                   size_t count)
{
	const struct polygon *home = NULL;
	size_t most = 0;
	for (size_t k = 0; k < on->count; k++) {
		struct region polygon = {&on->polygons[k], 1};
		size_t held = 0;
		for (size_t t = 0; t < count; t++)
			held += region_holds(&polygon,
			                     ring_middle(tile_ref_ring(arena, tiling, tiles[t])));
		if (held <= most)
			continue;
		home = &on->polygons[k];
		most = held;
	}
	return home;
}

bool crossed_hang_together(struct arena *arena, const struct tiling *tiling,
                           const struct tile_ref *a, size_t a_count, const struct tile_ref *b,
                           size_t b_count, const struct region *ground)
{
	if (!crossed_touch(arena, tiling, a, a_count, b, b_count))
		return false;
	struct tile_ref *all = ARENA_ARRAY(arena, struct tile_ref, a_count + b_count);
	for (size_t k = 0; k < a_count + b_count; k++)
		all[k] = k < a_count ? a[k] : b[k - a_count];
	struct region on = crossed_on(arena, tiling, all, a_count + b_count, ground);
	const struct polygon *home = crossed_home(arena, tiling, &on, a, a_count);
	return home && home == crossed_home(arena, tiling, &on, b, b_count);
}

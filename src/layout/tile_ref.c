#include "geometry/segment.h"
#include "geometry/tolerance.h"
#include "layout/marks.h"
#include "layout/tiling.h"

struct ring tile_ref_ring(struct arena *arena, const struct tiling *tiling, struct tile_ref tile)
{
	if (tile.piece)
		return tile.piece->ring;
	return module_face_at(arena, tiling->module, tile.at, tiling->panels[tile.panel].position);
}

struct ring tile_ref_cell(struct arena *arena, const struct tiling *tiling, struct tile_ref tile)
{
	return module_cell_at(arena, tiling->module, tile.at, tiling->panels[tile.panel].position);
}

/* Orders a run against an address: negative before it, 0 holds it. */
static int run_against(const struct tile_run *run, struct address at)
{
	if (run->face != at.face)
		return run->face < at.face ? -1 : 1;
	if (run->j != at.j)
		return run->j < at.j ? -1 : 1;
	return run->last < at.i ? -1 : run->first > at.i;
}

bool panel_has_whole(const struct panel *panel, struct address at)
{
	size_t low = 0, high = panel->run_count;
	while (low < high) {
		size_t middle = low + (high - low) / 2;
		int order = run_against(&panel->runs[middle], at);
		if (order == 0)
			return true;
		if (order < 0)
			low = middle + 1;
		else
			high = middle;
	}
	return false;
}

/* First piece at or after the address. */
static size_t first_piece(const struct panel *panel, struct address at)
{
	size_t low = 0, high = panel->piece_count;
	while (low < high) {
		size_t middle = low + (high - low) / 2;
		if (address_compare(panel->pieces[middle].at, at) < 0)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}

const struct tile_piece *panel_pieces_at(const struct panel *panel, struct address at,
                                         size_t *out_count)
{
	size_t first = first_piece(panel, at), end = first;
	while (end < panel->piece_count && address_is_same(panel->pieces[end].at, at))
		end++;
	*out_count = end - first;
	return panel->pieces + first;
}

bool panel_has_tile(const struct panel *panel, struct address at)
{
	size_t count;
	if (panel_has_whole(panel, at))
		return true;
	panel_pieces_at(panel, at, &count);
	return count > 0;
}

/* 0 where the segment touches or enters the ring. */
static double distance_to_segment(struct ring ring, struct point a, struct point b)
{
	if (ring_holds(ring, a) || ring_holds(ring, b))
		return 0;
	double least = INFINITY;
	for (size_t i = 0; i < ring.count; i++)
		least = fmin(least, segment_gap(segment_of_ring(ring, i), (struct segment){a, b}));
	return least;
}

struct search {
	struct arena *arena;
	const struct tiling *tiling;
	struct line line;
	double distance;
	ARRAY_OF(struct tile_ref) found;
};

static bool is_near(const struct search *search, struct ring ring)
{
	struct line line = search->line;
	if (line.count == 1)
		return distance_to_segment(ring, line.points[0], line.points[0]) <=
		       search->distance;
	for (size_t i = 0; i + 1 < line.count; i++)
		if (distance_to_segment(ring, line.points[i], line.points[i + 1]) <=
		    search->distance + TOLERANCE_SAME)
			return true;
	return false;
}

static void try_tile(struct search *search, struct tile_ref tile)
{
	if (is_near(search, tile_ref_ring(search->arena, search->tiling, tile)))
		*array_push(search->arena, &search->found) = tile;
}

static void try_address(struct search *search, size_t index, struct address at)
{
	const struct panel *panel = &search->tiling->panels[index];
	size_t count;
	if (panel_has_whole(panel, at)) {
		try_tile(search, (struct tile_ref){index, at, NULL});
		return;
	}
	const struct tile_piece *pieces = panel_pieces_at(panel, at, &count);
	for (size_t p = 0; p < count; p++)
		try_tile(search, (struct tile_ref){index, at, &pieces[p]});
}

struct tile_ref *tiling_near(struct arena *arena, const struct tiling *tiling, struct line line,
                             double distance, size_t *out_count)
{
	struct search search = {.arena = arena,
	                        .tiling = tiling,
	                        .line = line,
	                        .distance = distance};
	for (size_t p = 0; p < tiling->panel_count; p++) {
		size_t count;
		const struct address *marks =
			marks_near_line(arena, tiling->module, tiling->panels[p].position, line,
		                        distance, &count);
		for (size_t m = 0; m < count; m++)
			try_address(&search, p, marks[m]);
	}
	*out_count = search.found.count;
	return search.found.items;
}

#include "count/offcuts.h"

#include <math.h>
#include <stdlib.h>

#include "base/array.h"
#include "count/held.h"
#include "geometry/tolerance.h"

/* Which factory edge a wall cut keeps, along the side that was cut. */
enum kept { KEPT_LOW, KEPT_HIGH, KEPT_SIDES };

/* Pieces cut off one way: across the longer side of the tile, or across the shorter. */
struct wall_cuts {
	ARRAY_OF(double) sizes[KEPT_SIDES];
};

struct pairing {
	struct arena *scratch;
	const struct placed_lay *lay;
	const struct plan_tile *tile;
	double kerf, long_side, short_side;
	struct wall_cuts across_long, across_short;
	long alone;
	double area_mm2;
};

/* ---- matching ---- */

static int by_size(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return x < y ? -1 : x > y;
}

static bool fit(double a, double b, double room, double kerf)
{
	return a + b + kerf <= room + TOLERANCE_SAME;
}

/* The largest with the smallest that is left, or alone: no other choice saves more. */
size_t offcuts_pairs_of(double *sizes, size_t count, double room, double kerf)
{
	size_t bins = 0, least = 0, end = count;
	if (count > 0)
		qsort(sizes, count, sizeof *sizes, by_size);
	for (; least < end; bins++) {
		end--;
		if (least < end && fit(sizes[least], sizes[end], room, kerf))
			least++;
	}
	return bins;
}

/* From the largest on: what fits beside it fits beside every smaller one. */
size_t offcuts_pairs_between(double *low, size_t low_count, double *high, size_t high_count,
                             double room, double kerf)
{
	size_t pairs = 0;
	if (low_count > 0)
		qsort(low, low_count, sizeof *low, by_size);
	if (high_count > 0)
		qsort(high, high_count, sizeof *high, by_size);
	for (size_t k = low_count; k > 0 && pairs < high_count; k--)
		if (fit(low[k - 1], high[pairs], room, kerf))
			pairs++;
	return low_count + high_count - pairs;
}

/* ---- pieces ---- */

/* What is left of the tile along one of its sides. */
struct extent {
	double size;
	bool is_whole, keeps_low, keeps_high;
};

static struct extent extent_of(double from, double to, double side)
{
	struct extent e = {.size = to - from};
	e.keeps_low = from <= TOLERANCE_WHOLE;
	e.keeps_high = to >= side - TOLERANCE_WHOLE;
	e.is_whole = e.keeps_low && e.keeps_high;
	return e;
}

static void add_wall_cut(struct pairing *p, struct wall_cuts *cuts, struct extent cut)
{
	enum kept kept = cut.keeps_low ? KEPT_LOW : KEPT_HIGH;
	*array_push(p->scratch, &cuts->sizes[kept]) = cut.size;
}

/* A face of four corners is a rectangle along the lay's axes. */
static void add_piece(struct pairing *p, const struct panel *panel, const struct tile_piece *piece)
{
	const struct face *face = &p->lay->module->faces[piece->at.face];
	p->area_mm2 += piece->area_mm2;
	if (face->ring.count != 4 || piece->hole_count > 0) {
		p->alone++;
		return;
	}
	struct point by = module_place(p->lay->module, piece->at, panel->position);
	double x0 = face->box.x0 + by.x, y0 = face->box.y0 + by.y;
	double wide = face->box.x1 - face->box.x0, deep = face->box.y1 - face->box.y0;
	struct extent u = extent_of(piece->box.x0 - x0, piece->box.x1 - x0, wide);
	struct extent v = extent_of(piece->box.y0 - y0, piece->box.y1 - y0, deep);
	bool u_is_long = wide >= deep - TOLERANCE_SAME;
	struct extent along = u_is_long ? u : v, across = u_is_long ? v : u;
	p->long_side = u_is_long ? wide : deep;
	p->short_side = u_is_long ? deep : wide;
	if (across.is_whole && !along.is_whole && (along.keeps_low || along.keeps_high))
		add_wall_cut(p, &p->across_long, along);
	else if (along.is_whole && !across.is_whole && (across.keeps_low || across.keeps_high))
		add_wall_cut(p, &p->across_short, across);
	else
		p->alone++;
}

static void join(struct pairing *p, struct wall_cuts *to, enum kept kept,
                 const struct wall_cuts *from, enum kept of)
{
	for (size_t k = 0; k < from->sizes[of].count; k++)
		*array_push(p->scratch, &to->sizes[kept]) = from->sizes[of].items[k];
}

static long tiles_of(struct pairing *p, struct wall_cuts *cuts, double room)
{
	if (p->tile->direction)
		return (long)offcuts_pairs_between(cuts->sizes[KEPT_LOW].items,
		                                   cuts->sizes[KEPT_LOW].count,
		                                   cuts->sizes[KEPT_HIGH].items,
		                                   cuts->sizes[KEPT_HIGH].count, room, p->kerf);
	join(p, cuts, KEPT_LOW, cuts, KEPT_HIGH);
	return (long)offcuts_pairs_of(cuts->sizes[KEPT_LOW].items, cuts->sizes[KEPT_LOW].count,
	                              room, p->kerf);
}

static long tiles_of_panel(struct pairing *p)
{
	bool is_square = p->long_side - p->short_side <= TOLERANCE_WHOLE;
	long tiles = p->alone;
	if (is_square && !p->tile->direction)
		for (int kept = 0; kept < KEPT_SIDES; kept++) {
			join(p, &p->across_long, KEPT_LOW, &p->across_short, (enum kept)kept);
			p->across_short.sizes[kept].count = 0;
		}
	tiles += tiles_of(p, &p->across_long, p->long_side);
	return tiles + tiles_of(p, &p->across_short, p->short_side);
}

struct offcut_total offcuts_pair(const struct placed_lay *lay, int tile, double kerf)
{
	struct offcut_total total = {0};
	struct arena *scratch = arena_new();
	for (size_t f = 0; f < lay->module->face_count; f++)
		if (lay->module->faces[f].tile == tile)
			total.face_mm2 = lay->module->faces[f].area_mm2;
	for (size_t k = 0; k < lay->tiling->panel_count; k++) {
		const struct panel *panel = &lay->tiling->panels[k];
		struct pairing p = {.scratch = scratch,
		                    .lay = lay,
		                    .tile = lay->field->lay->tiles[tile],
		                    .kerf = kerf};
		for (size_t i = 0; i < panel->piece_count; i++) {
			const struct tile_piece *piece = &panel->pieces[i];
			if (lay->module->faces[piece->at.face].tile != tile ||
			    held_tile(lay, k, piece->at, piece))
				continue;
			total.pieces++;
			add_piece(&p, panel, piece);
		}
		total.tiles += tiles_of_panel(&p);
		total.bound += lround(ceil(p.area_mm2 / total.face_mm2 - TOLERANCE_COUNT));
		arena_clear(scratch);
	}
	arena_free(scratch);
	return total;
}

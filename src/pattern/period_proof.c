#include "pattern/period_proof.h"

#include <stdlib.h>

#include "base/array.h"

/* A cell and its place, edges as coordinates. */
struct extent {
	int64_t x0, y0, x1, y1;
};

static struct extent extent_at(const struct period *period, size_t cell, int64_t i, int64_t j)
{
	const struct period_cell *c = &period->cells[cell];
	int64_t x = c->x + i * period->a.x + j * period->b.x;
	int64_t y = c->y + i * period->a.y + j * period->b.y;
	return (struct extent){x, y, x + c->wide, y + c->deep};
}

static int64_t lesser(int64_t a, int64_t b)
{
	return a < b ? a : b;
}

static int64_t greater(int64_t a, int64_t b)
{
	return a > b ? a : b;
}

/* ---- copies that come near a cell ---- */

/* Steps (i, j) at which a copy of a cell may touch an extent: a superset. */
struct nearby {
	int64_t i0, i1, j0, j1;
};

/* Grows [low, high] by n / d, rounded outward. */
static void span(period_area n, period_area d, int64_t *low, int64_t *high)
{
	period_area down = n / d - (n % d < 0), up = n / d + (n % d > 0);
	*low = lesser(*low, (int64_t)down);
	*high = greater(*high, (int64_t)up);
}

static struct nearby nearby_of(const struct period *period, struct extent at, size_t cell)
{
	struct extent home = extent_at(period, cell, 0, 0);
	period_area area = period_cross(period->a, period->b);
	struct nearby near = {INT64_MAX, INT64_MIN, INT64_MAX, INT64_MIN};
	for (int corner = 0; corner < 4; corner++) {
		struct period_step way = {corner & 1 ? at.x0 - home.x1 : at.x1 - home.x0,
		                          corner & 2 ? at.y0 - home.y1 : at.y1 - home.y0};
		span(period_cross(way, period->b), area, &near.i0, &near.i1);
		span(period_cross(period->a, way), area, &near.j0, &near.j1);
	}
	return near;
}

/* ---- overlaps ---- */

static bool overlap(struct extent a, struct extent b, struct extent *out_common)
{
	*out_common = (struct extent){greater(a.x0, b.x0), greater(a.y0, b.y0), lesser(a.x1, b.x1),
	                              lesser(a.y1, b.y1)};
	return out_common->x0 < out_common->x1 && out_common->y0 < out_common->y1;
}

static struct period_proof proof_at(const struct period *period, enum period_fault fault,
                                    size_t first, size_t second, struct extent common)
{
	const struct period_cell *cell = &period->cells[first];
	return (struct period_proof){
		.fault = fault,
		.first = first,
		.second = second,
		.x = common.x0 - cell->x,
		.y = common.y0 - cell->y,
		.size_nm = lesser(common.x1 - common.x0, common.y1 - common.y0),
	};
}

static bool find_overlap_of(const struct period *period, size_t first, size_t second,
                            struct period_proof *out)
{
	struct extent own = extent_at(period, first, 0, 0), common;
	struct nearby near = nearby_of(period, own, second);
	for (int64_t j = near.j0; j <= near.j1; j++)
		for (int64_t i = near.i0; i <= near.i1; i++) {
			if (first == second && i == 0 && j == 0)
				continue;
			if (!overlap(own, extent_at(period, second, i, j), &common))
				continue;
			*out = proof_at(period, PERIOD_OVERLAPS, first, second, common);
			return true;
		}
	return false;
}

static bool find_overlap(const struct period *period, struct period_proof *out)
{
	for (size_t first = 0; first < period->count; first++)
		for (size_t second = first; second < period->count; second++)
			if (find_overlap_of(period, first, second, out))
				return true;
	return false;
}

/* ---- gaps ---- */

/* The four sides of a cell are looked at in one way, the plane turned so that the side lies
 * on top. */
enum { TURNS = 4 };

/* A quarter turn to the left, `turns` times. */
static struct extent turned(struct extent e, int turns)
{
	for (int k = 0; k < turns; k++)
		e = (struct extent){-e.y1, e.x0, -e.y0, e.x1};
	return e;
}

/* A copy of a cell above the side. */
struct above {
	size_t cell;
	struct extent at;
};

struct look {
	struct arena *arena;
	const struct period *period;
	size_t cell;
	int turns;
	struct extent own;
	ARRAY_OF(struct above) above;
};

/* Beyond the extents of all steps there is surely a copy of every cell. */
static int64_t reach_of(const struct period *period)
{
	return llabs(period->a.x) + llabs(period->a.y) + llabs(period->b.x) + llabs(period->b.y);
}

static void gather(struct look *look)
{
	int64_t reach = reach_of(look->period);
	struct extent window = {look->own.x0 - reach, look->own.y1, look->own.x1 + reach,
	                        look->own.y1 + reach};
	struct extent home = turned(window, TURNS - look->turns);
	for (size_t c = 0; c < look->period->count; c++) {
		struct nearby near = nearby_of(look->period, home, c);
		for (int64_t j = near.j0; j <= near.j1; j++)
			for (int64_t i = near.i0; i <= near.i1; i++) {
				struct extent at =
					turned(extent_at(look->period, c, i, j), look->turns);
				if (at.y1 > window.y0 && at.y0 <= window.y1)
					*array_push(look->arena, &look->above) =
						(struct above){c, at};
			}
	}
}

/* How far from its left end the side is covered without a break. */
static int64_t covered_to(const struct look *look)
{
	int64_t to = look->own.x0, before;
	do {
		before = to;
		for (size_t k = 0; k < look->above.count; k++) {
			struct extent at = look->above.items[k].at;
			if (at.y0 == look->own.y1 && at.x0 <= to && at.x1 > to)
				to = at.x1;
		}
	} while (to > before && to < look->own.x1);
	return to;
}

/* Narrows the gap over `open` to the copies at its left, its right, and above it. */
static void bound(const struct look *look, int64_t open, struct extent *gap, size_t *out_facing)
{
	int64_t floor = look->own.y1, least = INT64_MAX;
	for (size_t k = 0; k < look->above.count; k++) {
		struct extent at = look->above.items[k].at;
		bool is_beside = at.y0 <= floor, is_over = at.x0 <= open && open < at.x1;
		if (is_beside && at.x1 <= open)
			gap->x0 = greater(gap->x0, at.x1);
		else if (is_beside && at.x0 > open)
			gap->x1 = lesser(gap->x1, at.x0);
		else if (is_over)
			gap->y1 = lesser(gap->y1, at.y0);
		else
			continue;
		int64_t away = is_over ? at.y0 - floor : greater(open - at.x1, at.x0 - open);
		if (away < least) {
			least = away;
			*out_facing = look->above.items[k].cell;
		}
	}
}

static bool find_gap_at(struct look *look, struct period_proof *out)
{
	look->own = turned(extent_at(look->period, look->cell, 0, 0), look->turns);
	gather(look);
	int64_t open = covered_to(look), reach = reach_of(look->period);
	if (open >= look->own.x1)
		return false;
	struct extent gap = {open > look->own.x0 ? open : open - reach, look->own.y1, open + reach,
	                     look->own.y1 + reach};
	size_t facing = look->cell;
	bound(look, open, &gap, &facing);
	*out = proof_at(look->period, PERIOD_GAPS, look->cell, facing,
	                turned(gap, TURNS - look->turns));
	return true;
}

/* The narrowest: where gaps meet, each seems wider than it is. */
static void find_gap(struct arena *arena, const struct period *period, struct period_proof *out)
{
	for (size_t cell = 0; cell < period->count; cell++)
		for (int turns = 0; turns < TURNS; turns++) {
			struct period_proof gap;
			struct look look = {.arena = arena,
			                    .period = period,
			                    .cell = cell,
			                    .turns = turns};
			if (find_gap_at(&look, &gap) &&
			    (out->fault == PERIOD_FILLS || gap.size_nm < out->size_nm))
				*out = gap;
		}
}

/* ---- the proof ---- */

static period_area cells_area(const struct period *period)
{
	period_area area = 0;
	for (size_t i = 0; i < period->count; i++)
		area += (period_area)period->cells[i].wide * period->cells[i].deep;
	return area;
}

struct period_proof period_prove(struct arena *arena, const struct period *period)
{
	struct period_proof proof = {.fault = PERIOD_FILLS};
	period_area step = period_cross(period->a, period->b);
	if (step == 0)
		proof.fault = PERIOD_FLAT;
	else if (!find_overlap(period, &proof) && cells_area(period) < step)
		find_gap(arena, period, &proof);
	return proof;
}

/* ---- the cure ---- */

/* The lay with one size changed, and all that names its tile with it. */
static const struct plan_lay *lay_with(struct arena *arena, const struct plan_lay *lay,
                                       struct period_cure cure)
{
	struct plan_lay *changed = ARENA_NEW(arena, struct plan_lay);
	*changed = *lay;
	if (cure.side == PERIOD_JOINT) {
		changed->joint_nm = cure.size_nm;
		return changed;
	}
	struct plan_tile *tile = ARENA_NEW(arena, struct plan_tile);
	*tile = *lay->tiles[cure.tile];
	bool is_square = tile->long_nm == tile->wide_nm;
	*(cure.side == PERIOD_LONG ? &tile->long_nm : &tile->wide_nm) = cure.size_nm;
	if (is_square) /* it stays one */
		tile->long_nm = tile->wide_nm;
	changed->tiles = ARENA_ARRAY(arena, const struct plan_tile *, lay->tile_count);
	for (size_t i = 0; i < lay->tile_count; i++)
		changed->tiles[i] = (int)i == cure.tile ? tile : lay->tiles[i];
	return changed;
}

static bool cures(struct arena *arena, const struct plan_lay *lay, struct period_cure cure)
{
	const struct plan_lay *changed = lay_with(arena, lay, cure);
	if (cure.size_nm <= 0)
		return false;
	if (cure.side != PERIOD_JOINT &&
	    changed->tiles[cure.tile]->long_nm < changed->tiles[cure.tile]->wide_nm)
		return false;
	return period_prove(arena, period_from_lay(arena, changed)).fault == PERIOD_FILLS;
}

static int64_t stated_size(const struct plan_lay *lay, enum period_side side, int tile)
{
	if (side == PERIOD_JOINT)
		return lay->joint_nm;
	return side == PERIOD_LONG ? lay->tiles[tile]->long_nm : lay->tiles[tile]->wide_nm;
}

/* Larger by the gap or smaller by it; also by a part of it, where several side by side
 * make up a block. */
static bool find_cure_of(struct arena *arena, const struct plan_lay *lay, struct period_proof proof,
                         enum period_side side, int tile, struct period_cure *out)
{
	enum { MOST_TILES = 8 }; /* side by side */
	int64_t stated = stated_size(lay, side, tile);
	for (int64_t parts = 1; parts <= MOST_TILES; parts++) {
		if (proof.size_nm % parts != 0)
			continue;
		int64_t by = proof.size_nm / parts;
		bool larger_first = proof.fault == PERIOD_GAPS;
		int64_t sizes[] = {stated + (larger_first ? by : -by),
		                   stated - (larger_first ? by : -by)};
		for (int k = 0; k < 2; k++) {
			*out = (struct period_cure){side, tile, sizes[k]};
			if (cures(arena, lay, *out))
				return true;
		}
	}
	return false;
}

bool period_find_cure(struct arena *arena, const struct plan_lay *lay, struct period_proof proof,
                      struct period_cure *out_cure)
{
	if (proof.fault != PERIOD_GAPS && proof.fault != PERIOD_OVERLAPS)
		return false;
	for (int side = PERIOD_LONG; side <= PERIOD_WIDE; side++)
		for (int tile = 0; tile < (int)lay->tile_count; tile++)
			if (find_cure_of(arena, lay, proof, (enum period_side)side, tile, out_cure))
				return true;
	return find_cure_of(arena, lay, proof, PERIOD_JOINT, 0, out_cure);
}

#include "pattern/period.h"

#include <stdlib.h>
#include <string.h>

/* A tile of a lay with its joint, as a pattern that is being built sees it. */
struct size {
	int64_t along, across; /* long and wide side, joint included */
};

static struct size size_of(const struct plan_lay *lay, int tile)
{
	return (struct size){lay->tiles[tile]->long_nm + lay->joint_nm,
	                     lay->tiles[tile]->wide_nm + lay->joint_nm};
}

static struct period *period_start(struct arena *arena, size_t cells, struct period_step a,
                                   struct period_step b)
{
	struct period *period = ARENA_NEW(arena, struct period);
	period->cells = ARENA_ARRAY(arena, struct period_cell, cells);
	period->a = a;
	period->b = b;
	return period;
}

static void add_lying(struct period *period, int tile, struct size size, int64_t x, int64_t y)
{
	period->cells[period->count++] =
		(struct period_cell){tile, 0, x, y, size.along, size.across};
}

static void add_standing(struct period *period, int tile, struct size size, int64_t x, int64_t y)
{
	period->cells[period->count++] =
		(struct period_cell){tile, 0, x, y, size.across, size.along};
}

/* A lying block and a standing one at its right end; the next two a block's depth down to
 * the right, so that the blocks go down in stairs, and stairs lie on stairs. */
static struct period *herringbone(struct arena *arena, const struct plan_lay *lay)
{
	struct size size = size_of(lay, 0);
	int64_t block = lay->in_pairs * size.across;
	struct period *period =
		period_start(arena, 2 * (size_t)lay->in_pairs, (struct period_step){block, -block},
	                     (struct period_step){size.along, size.along});
	for (int64_t k = 0; k < lay->in_pairs; k++)
		add_lying(period, 0, size, 0, k * size.across);
	for (int64_t k = 0; k < lay->in_pairs; k++)
		add_standing(period, 0, size, size.along + k * size.across, 0);
	return period;
}

/* As many tiles side by side as are as wide as one is long, lying and standing by turns. */
static struct period *basketweave(struct arena *arena, const struct plan_lay *lay)
{
	struct size size = size_of(lay, 0);
	int64_t nearest = (2 * size.along + size.across) / (2 * size.across);
	int64_t tiles = nearest > 2 ? nearest : 2;
	int64_t side = tiles * size.across > size.along ? tiles * size.across : size.along;
	struct period *period =
		period_start(arena, 2 * (size_t)tiles, (struct period_step){2 * side, 0},
	                     (struct period_step){side, side});
	for (int64_t k = 0; k < tiles; k++)
		add_lying(period, 0, size, 0, k * size.across);
	for (int64_t k = 0; k < tiles; k++)
		add_standing(period, 0, size, side + k * size.across, 0);
	return period;
}

/* The large tile, and the small one at the lower end of its right side. */
static struct period *pinwheel(struct arena *arena, const struct plan_lay *lay)
{
	struct size large = size_of(lay, 0), small = size_of(lay, 1);
	struct period *period =
		period_start(arena, 2, (struct period_step){large.along, small.across},
	                     (struct period_step){-small.along, large.across});
	add_lying(period, 0, large, 0, 0);
	add_lying(period, 1, small, large.along, 0);
	return period;
}

/* ---- a module of the plan's own ---- */

static period_area dot(struct period_step a, struct period_step b)
{
	return (period_area)a.x * b.x + (period_area)a.y * b.y;
}

static struct period_step minus(struct period_step a, struct period_step b, int64_t times)
{
	return (struct period_step){a.x - times * b.x, a.y - times * b.y};
}

/* Whole number nearest to n / d, for d > 0. */
static int64_t nearest(period_area n, period_area d)
{
	period_area twice = 2 * n + d;
	period_area whole = twice / (2 * d);
	return (int64_t)(whole * 2 * d > twice ? whole - 1 : whole);
}

/* The shortest two steps of the same lattice: however the plan states it, copies that lie
 * near each other have small numbers. */
static void shorten(struct period_step *a, struct period_step *b)
{
	for (;;) {
		if (dot(*b, *b) < dot(*a, *a)) {
			struct period_step shorter = *b;
			*b = *a;
			*a = shorter;
		}
		int64_t times = nearest(dot(*a, *b), dot(*a, *a));
		if (times == 0)
			return;
		*b = minus(*b, *a, times);
	}
}

/* Rows go along u as nearly as the lattice allows; b to their left. */
static void set_steps(struct period *period, struct period_step a, struct period_step b)
{
	const struct period_step none = {0, 0};
	if (period_cross(a, b) != 0)
		shorten(&a, &b);
	if (llabs(b.y) < llabs(a.y)) {
		struct period_step flatter = b;
		b = a;
		a = flatter;
	}
	period->a = a.x < 0 || (a.x == 0 && a.y < 0) ? minus(none, a, 1) : a;
	period->b = period_cross(period->a, b) < 0 ? minus(none, b, 1) : b;
}

static int tile_of_piece(const struct plan_lay *lay, const struct plan_piece *piece)
{
	size_t tile = 0;
	while (tile + 1 < lay->tile_count && strcmp(lay->tiles[tile]->id, piece->tile->id) != 0)
		tile++;
	return (int)tile;
}

/* The first piece's corner is the origin: a crossing of joints, whatever the plan counts
 * from. */
static struct period *own_module(struct arena *arena, const struct plan_lay *lay)
{
	const struct plan_module *module = lay->module;
	const struct plan_piece *first = &module->pieces[0];
	struct period *period = ARENA_NEW(arena, struct period);
	period->cells = ARENA_ARRAY(arena, struct period_cell, module->piece_count);
	for (size_t i = 0; i < module->piece_count; i++) {
		const struct plan_piece *piece = &module->pieces[i];
		int tile = tile_of_piece(lay, piece);
		int64_t x = piece->x_nm - first->x_nm, y = piece->y_nm - first->y_nm;
		if (piece->turn == PLAN_PIECE_ACROSS)
			add_standing(period, tile, size_of(lay, tile), x, y);
		else
			add_lying(period, tile, size_of(lay, tile), x, y);
		period->cells[i].line = piece->line;
	}
	set_steps(period, (struct period_step){module->steps[0].x_nm, module->steps[0].y_nm},
	          (struct period_step){module->steps[1].x_nm, module->steps[1].y_nm});
	return period;
}

/* ---- all ---- */

static struct period *(*builder_of(enum plan_pattern pattern))(struct arena *,
                                                               const struct plan_lay *)
{
	static struct period *(*const builders[])(struct arena *, const struct plan_lay *) = {
		[PLAN_PATTERN_HERRINGBONE] = herringbone,
		[PLAN_PATTERN_BASKETWEAVE] = basketweave,
		[PLAN_PATTERN_PINWHEEL] = pinwheel,
		[PLAN_PATTERN_MODULE] = own_module,
	};
	return (size_t)pattern < sizeof builders / sizeof *builders ? builders[pattern] : NULL;
}

bool period_has_pattern(enum plan_pattern pattern)
{
	return builder_of(pattern) != NULL;
}

const struct period *period_from_lay(struct arena *arena, const struct plan_lay *lay)
{
	return builder_of(lay->pattern)(arena, lay);
}

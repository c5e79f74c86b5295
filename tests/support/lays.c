#include "support/lays.h"

static const int64_t MM = 1000000;

struct plan_lay *lay_of_tile(struct arena *arena, enum plan_pattern pattern, int tile_long,
                             int tile_wide, int joint)
{
	struct plan_lay *lay = ARENA_NEW(arena, struct plan_lay);
	lay->id = "L";
	lay->line = 20;
	lay->pattern = pattern;
	lay->joint_nm = joint * MM;
	lay->in_pairs = 1;
	lay->shift = (struct share){1, 2};
	lay_add_tile(arena, lay, tile_long, tile_wide);
	return lay;
}

int lay_add_tile(struct arena *arena, struct plan_lay *lay, int tile_long, int tile_wide)
{
	static const char *const ids[] = {"T0", "T1", "T2", "T3"};
	struct plan_tile *tile = ARENA_NEW(arena, struct plan_tile);
	const struct plan_tile **tiles =
		ARENA_ARRAY(arena, const struct plan_tile *, lay->tile_count + 1);
	for (size_t i = 0; i < lay->tile_count; i++)
		tiles[i] = lay->tiles[i];
	tile->id = ids[lay->tile_count];
	tile->long_nm = tile_long * MM;
	tile->wide_nm = tile_wide * MM;
	tiles[lay->tile_count] = tile;
	lay->tiles = tiles;
	return (int)lay->tile_count++;
}

struct plan_module *lay_set_module(struct arena *arena, struct plan_lay *lay, int ax, int ay,
                                   int bx, int by)
{
	struct plan_module *module = ARENA_NEW(arena, struct plan_module);
	module->id = "P";
	module->steps = ARENA_ARRAY(arena, struct plan_step, 2);
	module->step_count = 2;
	module->steps[0].x_nm = ax * MM;
	module->steps[0].y_nm = ay * MM;
	module->steps[1].x_nm = bx * MM;
	module->steps[1].y_nm = by * MM;
	lay->pattern = PLAN_PATTERN_MODULE;
	lay->module = module;
	return module;
}

void lay_add_piece(struct arena *arena, struct plan_lay *lay, int tile, int x, int y,
                   bool is_across)
{
	struct plan_module *module = ARENA_NEW(arena, struct plan_module);
	*module = *lay->module;
	module->pieces = ARENA_ARRAY(arena, struct plan_piece, module->piece_count + 1);
	for (size_t i = 0; i < module->piece_count; i++)
		module->pieces[i] = lay->module->pieces[i];
	module->pieces[module->piece_count++] =
		(struct plan_piece){.line = 10 + (int)module->piece_count,
	                            .tile = lay->tiles[tile],
	                            .x_nm = x * MM,
	                            .y_nm = y * MM,
	                            .turn = is_across ? PLAN_PIECE_ACROSS : PLAN_PIECE_ALONG};
	lay->module = module;
}

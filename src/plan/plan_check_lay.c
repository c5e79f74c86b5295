/* Tile, modules and lays: what one value alone cannot show. */
#include <string.h>

#include "plan/plan_build.h"

/* Each piece is compared with each other: enough for any pattern, and soon done. */
enum { MOST_PIECES = 1000 };

static const struct plan_built *at_of(const struct plan_build *b, size_t built)
{
	return &b->built.items[built];
}

static int line_of(const struct plan_build *b, size_t built, const char *attribute)
{
	return plan_line_of(at_of(b, built), attribute);
}

static bool all_sound(const struct plan_built *at, const char *first, const char *second)
{
	return plan_is_sound(at, first) && plan_is_sound(at, second);
}

void plan_check_tile(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	const struct plan_tile *tile = at->object;
	if (!plan_is_written(at, "long"))
		return;
	if (plan_is_sound(at, "shape") && tile->shape == PLAN_SHAPE_HEXAGON)
		plan_fault(b, built, line_of(b, built, "long"),
		           "<tile> long of a hexagon; expected wide alone, across flats");
	else if (all_sound(at, "long", "wide") && tile->long_nm < tile->wide_nm)
		plan_fault(b, built, line_of(b, built, "long"),
		           "<tile> long is less than wide; expected the longer side");
}

void plan_check_module(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	const struct plan_module *module = at->object;
	if (!at->is_understood)
		return;
	if (module->piece_count == 0)
		plan_fault(b, built, at->node->line,
		           "<module> without a <piece>; expected one or more");
	if (module->piece_count > MOST_PIECES)
		plan_fault(b, built, at->node->line,
		           arena_printf(b->arena, "<module> with %zu <piece>; expected at most %d",
		                        module->piece_count, MOST_PIECES));
	if (module->step_count != 2)
		plan_fault(b, built, at->node->line,
		           arena_printf(b->arena, "<module> with %zu <step>; expected two",
		                        module->step_count));
}

/* ---- lays ---- */

static void check_tile_count(struct plan_build *b, size_t built, const struct plan_lay *lay)
{
	size_t wanted = lay->pattern == PLAN_PATTERN_PINWHEEL ? 2 : 1;
	if (lay->pattern != PLAN_PATTERN_MODULE && lay->tile_count != wanted)
		plan_fault(b, built, line_of(b, built, "tile"),
		           arena_printf(b->arena,
		                        "<lay> tile names %zu; expected %zu for this pattern",
		                        lay->tile_count, wanted));
}

static void check_shapes(struct plan_build *b, size_t built, const struct plan_lay *lay)
{
	bool wants_hexagon = lay->pattern == PLAN_PATTERN_HEXAGON;
	for (size_t i = 0; i < lay->tile_count; i++) {
		const struct plan_tile *tile = lay->tiles[i];
		if (tile->given & PLAN_FAULTY ||
		    (tile->shape == PLAN_SHAPE_HEXAGON) == wants_hexagon)
			continue;
		plan_fault(b, built, line_of(b, built, "tile"),
		           arena_printf(b->arena,
		                        "<lay> tile \"%s\" is a %s; expected a %s for this pattern",
		                        tile->id, wants_hexagon ? "rectangle" : "hexagon",
		                        wants_hexagon ? "hexagon" : "rectangle"));
	}
}

static bool names_tile(const struct plan_lay *lay, const struct plan_tile *tile)
{
	for (size_t i = 0; i < lay->tile_count; i++)
		if (lay->tiles[i] == tile)
			return true;
	return false;
}

static bool has_piece_of(const struct plan_module *module, const struct plan_tile *tile)
{
	for (size_t i = 0; i < module->piece_count; i++)
		if (module->pieces[i].tile == tile || !module->pieces[i].tile)
			return true;
	return false;
}

/* The lay buys the tile of its module: its list and the pieces tell the same. */
static void check_tiles_of_module(struct plan_build *b, size_t built, const struct plan_lay *lay)
{
	const struct plan_module *module = lay->module;
	const char *wrong = NULL;
	for (size_t i = 0; !wrong && i < module->piece_count; i++)
		if (module->pieces[i].tile && !names_tile(lay, module->pieces[i].tile))
			wrong = arena_printf(b->arena,
			                     "<lay> tile lacks \"%s\", a piece of module \"%s\"; "
			                     "expected every tile of the module",
			                     module->pieces[i].tile->id, module->id);
	for (size_t i = 0; !wrong && i < lay->tile_count; i++)
		if (!has_piece_of(module, lay->tiles[i]))
			wrong = arena_printf(b->arena,
			                     "<lay> tile names \"%s\", no piece of module \"%s\"; "
			                     "expected the tiles of the module alone",
			                     lay->tiles[i]->id, module->id);
	if (wrong)
		plan_fault(b, built, line_of(b, built, "tile"), wrong);
}

static void check_module_of_lay(struct plan_build *b, size_t built, const struct plan_lay *lay)
{
	const struct plan_built *at = at_of(b, built);
	bool is_written = plan_is_written(at, "module");
	if (lay->pattern == PLAN_PATTERN_MODULE && !is_written)
		plan_fault(b, built, at->node->line,
		           "<lay> lacks the attribute \"module\"; expected the one its pattern is");
	else if (lay->pattern != PLAN_PATTERN_MODULE && is_written)
		plan_fault(b, built, line_of(b, built, "module"),
		           "<lay> module with another pattern; expected pattern=\"module\"");
	else if (lay->module && plan_is_sound(at, "module") && plan_is_sound(at, "tile"))
		check_tiles_of_module(b, built, lay);
}

void plan_check_lay(struct plan_build *b, size_t built)
{
	const struct plan_built *at = at_of(b, built);
	const struct plan_lay *lay = at->object;
	const char *gap = plan_is_written(at, "gap-max") ? "gap-max" : "gap";
	if (all_sound(at, "pattern", "tile")) {
		check_tile_count(b, built, lay);
		check_shapes(b, built, lay);
	}
	if (plan_is_sound(at, "pattern"))
		check_module_of_lay(b, built, lay);
	if (all_sound(at, "gap", "gap-max") && lay->gap_max_nm < lay->gap_nm)
		plan_fault(b, built, line_of(b, built, gap),
		           "<lay> gap-max is less than gap; expected it no less");
}

#include "layout/tiling.h"

#include "layout/filling.h"

static struct panel panel_start(struct arena *arena, const struct field *field,
                                const struct movement_panel *from, size_t number)
{
	struct panel panel = {
		.id = arena_printf(arena, "%s.panel.%zu", field->lay->id, number),
		.part = from->part,
		.ground = from->ground,
		.position = from->position,
	};
	panel.area_mm2 = polygon_area(&panel.ground);
	struct box box = ring_box(panel.ground.outline);
	panel.long_side = fmax(box.x1 - box.x0, box.y1 - box.y0);
	panel.short_side = fmin(box.x1 - box.x0, box.y1 - box.y0);
	return panel;
}

const struct tiling *tiling_place(struct arena *arena, const struct field *field,
                                  const struct module *module, const struct movement *movement)
{
	struct filling_memory memory = {arena, arena_new(), arena_new()};
	struct tiling *tiling = ARENA_NEW(arena, struct tiling);
	tiling->field = field;
	tiling->module = module;
	tiling->movement = movement;
	tiling->network = network_from_module(arena, module);
	tiling->panel_count = movement->panel_count;
	tiling->panels = ARENA_ARRAY(arena, struct panel, tiling->panel_count);
	for (size_t i = 0; i < tiling->panel_count; i++) {
		tiling->panels[i] = panel_start(arena, field, &movement->panels[i], i + 1);
		filling_lay(&memory, module, field->gap_max - field->gap, &tiling->panels[i]);
	}
	arena_free(memory.face);
	arena_free(memory.panel);
	return tiling;
}

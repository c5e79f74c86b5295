#include "layout/placed.h"

static struct placed_lay place_lay(struct arena *arena, const struct site *site,
                                   const struct rules *rules, const struct plan_lay *lay,
                                   const struct field *before)
{
	struct placed_lay placed = {0};
	placed.field = field_place(arena, site, rules, lay, before);
	placed.module = module_from_lay(arena, lay);
	placed.position = position_search(arena, placed.field, placed.module, rules);
	placed.movement =
		movement_place(arena, placed.field, placed.module, placed.position, rules);
	if (placed.movement->line_count > 0)
		placed.position =
			position_shifted(arena, placed.field, placed.module, rules, placed.position,
		                         movement_shifts(arena, placed.field, placed.position,
		                                         placed.movement));
	placed.tiling = tiling_place(arena, placed.field, placed.module, placed.movement);
	placed.cracks = cracks_place(arena, placed.tiling, rules);
	placed.strips = strips_place(arena, placed.tiling, placed.cracks, rules);
	placed.joints = joints_place(arena, placed.tiling, placed.cracks, placed.strips, rules);
	placed.controls = controls_place(arena, placed.tiling, placed.cracks, rules);
	return placed;
}

const struct placed *placed_from_site(struct arena *arena, const struct site *site,
                                      const struct rules *rules)
{
	const struct plan *plan = site->plan;
	struct placed *placed = ARENA_NEW(arena, struct placed);
	placed->site = site;
	placed->rules = rules;
	placed->lay_count = plan->lay_count;
	placed->lays = ARENA_ARRAY(arena, struct placed_lay, plan->lay_count);
	const struct field *before = NULL;
	for (size_t i = 0; i < plan->lay_count; i++) {
		placed->lays[i] = place_lay(arena, site, rules, &plan->lays[i], before);
		before = placed->lays[i].field;
	}
	return placed;
}

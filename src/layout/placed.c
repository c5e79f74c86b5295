#include "layout/placed.h"

#include "layout/crack_lots.h"
#include "layout/setting.h"

/* What hangs on one lay alone. */
static struct placed_lay place_tile(struct arena *arena, const struct site *site,
                                    const struct rules *rules, const struct plan_lay *lay,
                                    const struct field *before)
{
	struct placed_lay placed = {0};
	placed.field = field_place(arena, site, rules, lay, before);
	struct setting setting = setting_place(arena, placed.field, rules);
	placed.module = setting.module;
	placed.position = setting.position;
	placed.movement = setting.movement;
	placed.tiling = tiling_place(arena, placed.field, placed.module, placed.movement);
	placed.cracks = cracks_place(arena, placed.tiling, rules, NULL);
	return placed;
}

/* Cracks know no lays: what one is in one lay it is in the next. */
static void share_cracks(struct arena *arena, struct placed *placed)
{
	struct laid_cracks *laid = ARENA_ARRAY(arena, struct laid_cracks, placed->lay_count);
	if (placed->lay_count < 2 || placed->site->crack_count == 0)
		return;
	for (size_t i = 0; i < placed->lay_count; i++)
		laid[i] = (struct laid_cracks){placed->lays[i].field, placed->lays[i].cracks};
	const struct crack_lot *lots = crack_lots_of(arena, placed->site, laid, placed->lay_count);
	for (size_t i = 0; i < placed->lay_count; i++)
		placed->lays[i].cracks =
			cracks_place(arena, placed->lays[i].tiling, placed->rules, lots);
}

static void place_rest(struct arena *arena, struct placed_lay *lay, const struct rules *rules)
{
	lay->strips = strips_place(arena, lay->tiling, lay->cracks, rules);
	lay->joints = joints_place(arena, lay->tiling, lay->cracks, lay->strips, rules);
	lay->controls = controls_place(arena, lay->tiling, lay->cracks, rules);
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
		placed->lays[i] = place_tile(arena, site, rules, &plan->lays[i], before);
		before = placed->lays[i].field;
	}
	share_cracks(arena, placed);
	for (size_t i = 0; i < plan->lay_count; i++)
		place_rest(arena, &placed->lays[i], rules);
	return placed;
}

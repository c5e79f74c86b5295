/* fuzz_plan.c - any bytes as a floor description: read, resolved into geometry and, where it
 * is sound and small, placed and judged. */
#include "findings/finding.h"
#include "layout/placed.h"
#include "plan/plan_parse.h"
#include "site/site.h"
#include "units/length.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* What is placed within a blink: a fuzzer has no use for the rest. */
enum { MOST_TILES = 400, MOST_POINTS = 40, MOST_LAYS = 2 };

static double tiles_in(const struct site_room *room, const struct plan_lay *lay)
{
	const struct plan_tile *tile = lay->tiles[0];
	struct box box = ring_box(room->outline);
	double wide = length_mm(tile->wide_nm), across = length_mm(tile->long_nm);
	return ((box.x1 - box.x0) / wide + 1) * ((box.y1 - box.y0) / across + 1);
}

static bool is_small(const struct site *site)
{
	const struct plan *plan = site->plan;
	double tiles = 0;
	size_t points = 0;
	for (size_t i = 0; i < plan->lay_count; i++)
		for (size_t k = 0; k < plan->lays[i].room_count; k++)
			tiles += tiles_in(&site->rooms[plan->lays[i].rooms[k] - plan->rooms],
			                  &plan->lays[i]);
	for (size_t i = 0; i < site->room_count; i++) {
		points += site->rooms[i].outline.count;
		for (size_t k = 0; k < site->rooms[i].obstacle_count; k++)
			points += site->rooms[i].obstacles[k].ring.count;
	}
	for (size_t i = 0; i < site->crack_count; i++)
		points += site->cracks[i].line.count;
	for (size_t i = 0; i < site->slab_joint_count; i++)
		points += site->slab_joints[i].line.count;
	return plan->lay_count <= MOST_LAYS && tiles <= MOST_TILES && points <= MOST_POINTS;
}

static void place(struct arena *arena, const struct site *site)
{
	struct diag_list diags = diag_list_in(arena, "tables");
	const struct rules *rules = rules_load(arena, "us", plan_has_inches(site->plan), &diags);
	const struct words *words = words_load(arena, "en", &diags);
	const struct placed *placed = placed_from_site(arena, site, rules);
	(void)findings_judge(arena, placed, words);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct arena *arena = arena_new();
	struct diag_list diags = diag_list_in(arena, "floor.xml");
	const struct plan *plan = NULL;
	const struct site *site = NULL;
	enum status status = plan_parse(arena, (const char *)data, size, &diags, &plan);
	if (plan && site_build(arena, plan, &diags, &site) == STATUS_OK && status == STATUS_OK &&
	    is_small(site))
		place(arena, site);
	arena_free(arena);
	return 0;
}

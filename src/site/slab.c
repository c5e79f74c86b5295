#include "site/slab.h"

#include "base/array.h"
#include "geometry/crossing.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"
#include "site/spot.h"

/* ---- regions ---- */

static struct region region_of(struct build *build, const struct plan_slab *slab)
{
	struct line line;
	struct crossing at;
	if (slab->corner_count < 3 || build_is_faulty(build, slab->given, slab->line) ||
	    !spot_find_all(build, slab->corners, slab->corner_count, &line))
		return (struct region){0};
	struct ring ring = {line.points, line.count};
	if (!crossing_find(build->arena, ring, &at))
		return region_from_ring(build->arena, ring);
	diag_error(build->diags, slab->corners[at.second].line,
	           "side %zu of slab \"%s\" meets its side %zu; expected sides that touch only "
	           "their neighbours, at the corners",
	           at.second + 1, slab->id, at.first + 1);
	return (struct region){0};
}

static void check_apart(struct build *build, const struct site_slab *a, const struct site_slab *b)
{
	if (!box_meets(region_box(&a->region), region_box(&b->region)))
		return;
	struct region both = overlay_intersection(build->arena, &a->region, &b->region);
	if (region_area(&both) > TOLERANCE_AREA_MM2)
		diag_error(build->diags, b->plan->line,
		           "slab \"%s\" lies over slab \"%s\"; expected slabs side by side",
		           b->plan->id, a->plan->id);
}

void slab_build_all(struct build *build)
{
	struct site *site = build->site;
	const struct plan *plan = build->plan;
	ARRAY_OF(const struct site_slab *) drawn = {0};
	site->slab_count = plan->slab_count;
	site->slabs = ARENA_ARRAY(build->arena, struct site_slab, plan->slab_count);
	for (size_t i = 0; i < plan->slab_count; i++) {
		const struct plan_slab *slab = &plan->slabs[i];
		site->slabs[i] = (struct site_slab){slab, region_of(build, slab)};
		if (!site->slabs[i].region.count)
			continue;
		for (size_t k = 0; k < drawn.count; k++)
			check_apart(build, drawn.items[k], &site->slabs[i]);
		*array_push(build->arena, &drawn) = &site->slabs[i];
	}
}

/* ---- rooms ---- */

static struct site_slab_part part_on(const struct plan_room *room, const struct plan_slab *slab,
                                     struct region ground)
{
	bool is_own_exposure = room->exposure != PLAN_EXPOSURE_NONE;
	return (struct site_slab_part){
		.slab = slab,
		.exposure = is_own_exposure ? room->exposure : slab->exposure,
		.heated = room->has_own_heated ? room->heated : slab->heated,
		.ground = ground,
	};
}

/* Of the ground that is left, what lies on the slab; false: nothing. */
static bool take_part(struct arena *arena, const struct site_slab *slab, struct region *left,
                      struct region *out_part)
{
	*out_part = overlay_intersection(arena, left, &slab->region);
	if (region_area(out_part) <= TOLERANCE_AREA_MM2)
		return false;
	*left = overlay_difference(arena, left, &slab->region);
	return true;
}

void slab_divide_room(struct build *build, struct site_room *room)
{
	const struct site *site = build->site;
	const struct plan_slab *own = room->plan->slab;
	if (!room->edge_count || !own)
		return;
	room->slab_parts = ARENA_ARRAY(build->arena, struct site_slab_part, site->slab_count + 1);
	struct region left = site_room_ground(build->arena, room), part;
	for (size_t i = 0; i < site->slab_count; i++)
		if (site->slabs[i].region.count &&
		    take_part(build->arena, &site->slabs[i], &left, &part))
			room->slab_parts[room->slab_part_count++] =
				part_on(room->plan, site->slabs[i].plan, part);
	if (!room->slab_part_count || region_area(&left) > TOLERANCE_AREA_MM2)
		room->slab_parts[room->slab_part_count++] = part_on(room->plan, own, left);
}

const struct plan_slab *site_slab_at(const struct site *site, const struct site_room *room,
                                     struct point at)
{
	for (size_t i = 0; i < site->slab_count; i++)
		if (region_holds(&site->slabs[i].region, at))
			return site->slabs[i].plan;
	return room->plan->slab;
}

const struct site_slab_part *site_slab_part_at(const struct site *site,
                                               const struct site_room *room, struct point at)
{
	const struct plan_slab *slab = site_slab_at(site, room, at);
	for (size_t i = 0; i < room->slab_part_count; i++)
		if (room->slab_parts[i].slab == slab)
			return &room->slab_parts[i];
	return &room->slab_parts[0];
}

bool site_room_is_on(const struct site_room *room, const struct plan_slab *slab)
{
	for (size_t i = 0; i < room->slab_part_count; i++)
		if (room->slab_parts[i].slab == slab)
			return true;
	return false;
}

bool site_room_is_exposed(const struct site_room *room, enum plan_exposure exposure)
{
	for (size_t i = 0; i < room->slab_part_count; i++)
		if (room->slab_parts[i].exposure == exposure)
			return true;
	return false;
}

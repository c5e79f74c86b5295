#include "site/reading.h"

#include "site/spot.h"

static bool holds(struct build *build, const struct site_room *room, struct point at)
{
	struct region ground = site_room_ground(build->arena, room);
	return region_holds(&ground, at);
}

/* The room in which the point lies; NULL: none, or one whose outline is in error. */
static const struct site_room *room_at(struct build *build, struct point at, bool *out_is_known)
{
	const struct site *site = build->site;
	*out_is_known = true;
	for (size_t i = 0; i < site->room_count; i++) {
		if (site->rooms[i].edge_count == 0)
			*out_is_known = false;
		else if (holds(build, &site->rooms[i], at))
			return &site->rooms[i];
	}
	return NULL;
}

/* Finds its point, and the room it lies in where none is named. */
static bool locate(struct build *build, struct site_reading *reading)
{
	const struct plan_reading *plan = reading->plan;
	bool is_known = true;
	if (!spot_find(build, &plan->at, &reading->at))
		return false;
	reading->has_at = true;
	if (reading->room == NULL) {
		reading->room = room_at(build, reading->at, &is_known);
		if (reading->room == NULL && is_known)
			diag_error(build->diags, plan->line,
			           "reading \"%s\" lies in no room; expected its point inside one",
			           plan->id);
		return reading->room != NULL;
	}
	if (reading->room->edge_count == 0 || holds(build, reading->room, reading->at))
		return reading->room->edge_count > 0;
	diag_error(build->diags, plan->line,
	           "reading \"%s\" lies outside room \"%s\"; expected its point inside", plan->id,
	           reading->room->id);
	return false;
}

void reading_build_all(struct build *build)
{
	struct site *site = build->site;
	const struct plan *plan = build->plan;
	site->readings = ARENA_ARRAY(build->arena, struct site_reading, plan->reading_count);
	for (size_t i = 0; i < plan->reading_count; i++) {
		struct site_reading reading = {.plan = &plan->readings[i],
		                               .id = plan->readings[i].id};
		if (build_is_faulty(build, reading.plan->given, reading.plan->line))
			continue;
		if (reading.plan->room)
			reading.room = &site->rooms[reading.plan->room - plan->rooms];
		if (reading.plan->has_at && !locate(build, &reading))
			continue;
		if (reading.has_at)
			reading.slab = site_slab_at(site, reading.room, reading.at);
		else if (reading.room)
			reading.slab = reading.room->plan->slab;
		site->readings[site->reading_count++] = reading;
	}
}

#include "layout/cover.h"

#include <string.h>

#include "base/array.h"
#include "geometry/overlay.h"

const struct plan_membrane *cover_membrane(const struct field *field)
{
	for (size_t i = 0; i < field->room_count; i++) {
		const struct plan_membrane *membrane =
			plan_membrane_over(field->site->plan, field->rooms[i]->plan);
		if (membrane)
			return membrane;
	}
	return NULL;
}

struct region cover_ground(struct arena *arena, const struct tiling *tiling,
                           const struct cracks *cracks, const struct plan_membrane *membrane)
{
	const struct field *field = tiling->field;
	ARRAY_OF(struct region) rooms = {0};
	ARRAY_OF(struct region) taken = {0};
	for (size_t i = 0; i < field->room_count; i++)
		if (plan_membrane_over(field->site->plan, field->rooms[i]->plan) == membrane) {
			struct region room = site_room_ground(arena, field->rooms[i]);
			*array_push(arena, &rooms) = frame_region_in(arena, field->frame, &room);
		}
	for (size_t i = 0; i < field->carried_count; i++)
		if (field->carried[i].joint)
			*array_push(arena, &taken) = field->carried[i].band;
	for (size_t i = 0; i < cracks->hold_count; i++)
		*array_push(arena, &taken) = cracks->holds[i].region;
	struct region under = overlay_union_all(arena, rooms.items, rooms.count);
	struct region bare = overlay_intersection(arena, &under, &field->ground);
	struct region off = overlay_union_all(arena, taken.items, taken.count);
	return overlay_difference(arena, &bare, &off);
}

bool cover_is_always_full(const struct plan_membrane *membrane)
{
	return membrane->kind == PLAN_MEMBRANE_MAT || membrane->kind == PLAN_MEMBRANE_MORTAR_BED;
}

/* The answer about its full coverage; NULL: none yet. */
static const struct plan_answer *answer_about(const struct plan *plan,
                                              const struct plan_membrane *membrane)
{
	const char *rule = "cover-unapproved";
	for (size_t i = 0; i < plan->answer_count; i++) {
		const struct plan_answer *answer = &plan->answers[i];
		if (strcmp(answer->about.id, membrane->id) == 0 &&
		    (!answer->rule || strcmp(answer->rule, rule) == 0))
			return answer;
	}
	return NULL;
}

bool cover_is_full(const struct plan *plan, const struct plan_membrane *membrane)
{
	const struct plan_answer *answer = answer_about(plan, membrane);
	return cover_is_always_full(membrane) ||
	       (membrane->cover == PLAN_COVER_FULL && answer && answer->decision == PLAN_PROCEED);
}

bool cover_is_wanted(const struct plan *plan, const struct plan_membrane *membrane)
{
	return membrane->cover == PLAN_COVER_FULL && !cover_is_always_full(membrane) &&
	       !answer_about(plan, membrane);
}

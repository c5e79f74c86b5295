#include "layout/crack_facts.h"

#include <string.h>

#include "base/array.h"
#include "geometry/clip.h"

static const enum decision decisions[] = {
	[PLAN_ISOLATE] = DECISION_ISOLATE, [PLAN_CARRY] = DECISION_CARRY,
	[PLAN_HOLD] = DECISION_HOLD,       [PLAN_PROCEED] = DECISION_PROCEED,
	[PLAN_DECLINE] = DECISION_DECLINE,
};

static bool crosses(struct arena *arena, const struct site_crack *crack,
                    const struct region *ground)
{
	size_t count;
	clip_line(arena, crack->line, ground, &count);
	return count > 0;
}

static void add_slabs(struct arena *arena, const struct site_crack *crack,
                      const struct site_room *room, struct crack_facts *facts)
{
	for (size_t i = 0; i < room->slab_part_count; i++) {
		const struct site_slab_part *part = &room->slab_parts[i];
		if (!crosses(arena, crack, &part->ground))
			continue;
		facts->is_suspended |= part->slab->support == PLAN_SUPPORT_SUSPENDED;
		facts->is_tensioned |= part->slab->post_tensioned;
	}
}

static void add_answers(struct arena *arena, const struct plan *plan, const char *id,
                        struct crack_facts *facts)
{
	ARRAY_OF(struct crack_answer) answers = {0};
	for (size_t i = 0; i < plan->answer_count; i++) {
		const struct plan_answer *answer = &plan->answers[i];
		if (strcmp(answer->about.id, id) == 0)
			*array_push(arena, &answers) =
				(struct crack_answer){answer->rule, decisions[answer->decision],
			                              answer->ref != NULL, answer->line};
	}
	facts->answers = answers.items;
	facts->answer_count = answers.count;
}

struct crack_facts crack_facts_of(struct arena *arena, const struct field *field,
                                  const struct site_crack *crack)
{
	struct crack_facts facts = {.width = crack->width, .step = crack->step};
	facts.is_moving = crack->plan->moving == PLAN_MOVING_YES;
	for (size_t i = 0; i < field->room_count; i++)
		if (!crack->room || crack->room == field->rooms[i])
			add_slabs(arena, crack, field->rooms[i], &facts);
	add_answers(arena, field->site->plan, crack->id, &facts);
	return facts;
}

#include "layout/relocated.h"

#include <string.h>

#include "base/array.h"
#include "layout/cover.h"

static bool is_about(const struct plan_answer *answer, const char *id)
{
	return strcmp(answer->about.id, id) == 0 &&
	       (!answer->rule || strcmp(answer->rule, "joint-relocated") == 0);
}

static struct relocating hear(const struct plan *plan, const char *id)
{
	struct relocating heard = {.state = RELOCATION_OPEN};
	for (size_t i = 0; i < plan->answer_count; i++) {
		const struct plan_answer *answer = &plan->answers[i];
		if (!is_about(answer, id))
			continue;
		if (answer->decision != PLAN_PROCEED)
			return (struct relocating){RELOCATION_DECLINED, {answer}};
		if (!heard.answers[0])
			heard = (struct relocating){RELOCATION_HALF, {answer}};
		else if (strcmp(heard.answers[0]->by, answer->by) != 0)
			heard = (struct relocating){RELOCATION_AGREED, {heard.answers[0], answer}};
	}
	return heard;
}

static bool bridges(const struct plan_membrane *membrane)
{
	return membrane &&
	       (membrane->kind == PLAN_MEMBRANE_LIQUID || membrane->kind == PLAN_MEMBRANE_SHEET);
}

struct relocating relocating_of(const struct field *field, const struct site_slab_joint *joint)
{
	if (!joint->relocate)
		return (struct relocating){.state = RELOCATION_NONE};
	if (joint->step > 0 || !bridges(cover_membrane(field)))
		return (struct relocating){.state = RELOCATION_IMPOSSIBLE};
	return hear(field->site->plan, joint->id);
}

static struct site_crack crack_of(struct arena *arena, const struct site_slab_joint *joint)
{
	struct plan_crack *written = ARENA_NEW(arena, struct plan_crack);
	written->id = joint->id;
	written->line = joint->plan->line;
	written->moving = PLAN_MOVING_NO;
	return (struct site_crack){
		.plan = written,
		.joint = joint,
		.id = joint->id,
		.line = joint->line,
		.width = joint->width,
	};
}

struct site_crack *relocated_place(struct arena *arena, const struct field *field,
                                   size_t *out_count)
{
	ARRAY_OF(struct site_crack) list = {0};
	for (size_t i = 0; i < field->site->slab_joint_count; i++) {
		const struct site_slab_joint *joint = &field->site->slab_joints[i];
		if (relocating_of(field, joint).state == RELOCATION_AGREED)
			*array_push(arena, &list) = crack_of(arena, joint);
	}
	*out_count = list.count;
	return list.items;
}

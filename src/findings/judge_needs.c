/* judge_needs.c - what rooms need, against what the membrane over them offers as it is drawn. */
#include "findings/judge.h"
#include "geometry/overlay.h"

static const struct {
	enum plan_need need;
	const char *word;
	bool takes_all; /* strips never give it */
} NEEDS[] = {
	{PLAN_NEED_WATERPROOF, "need.waterproof", true},
	{PLAN_NEED_SOUND, "need.sound", true},
	{PLAN_NEED_HEAVY_TRAFFIC, "need.heavy-traffic", false},
};

static struct raised raised_of_room(const struct judging *judging, enum rule_id id,
                                    const struct site_room *room)
{
	struct box box = ring_box(room->outline);
	return (struct raised){.rule = judge_rule(judging, id),
	                       .about = room->id,
	                       .line = room->plan->line,
	                       .at = {(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2}};
}

/* Whether full coverage is drawn, or asked for and not yet answered. */
static bool is_to_be_full(const struct cover *cover)
{
	return cover->is_full || cover->full_wanted;
}

static void judge_room_needs(struct judging *judging, const struct placed_lay *lay,
                             const struct site_room *room)
{
	const struct plan_membrane *membrane =
		plan_membrane_over(judging->placed->site->plan, room->plan);
	unsigned offers = membrane != NULL ? membrane->offers : 0;
	for (size_t i = 0; i < sizeof NEEDS / sizeof NEEDS[0]; i++) {
		const char *word = words_find(judging->say.words, NEEDS[i].word);
		if (!(room->plan->needs & (unsigned)NEEDS[i].need))
			continue;
		if (!(offers & (unsigned)NEEDS[i].need))
			judge_say(judging, raised_of_room(judging, RULE_NEED_UNMET, room),
			          {"need", word});
		else if (NEEDS[i].takes_all && !is_to_be_full(&lay->strips->cover))
			judge_say(judging, raised_of_room(judging, RULE_PARTIAL_WATERPROOF, room),
			          {"need", word}, {"membrane", membrane->id});
	}
}

/* Carried joints go through the membrane, and water with them. */
static void judge_waterproof_cuts(struct judging *judging, const struct placed_lay *lay,
                                  size_t index)
{
	const struct field *field = lay->field;
	const struct site_room *room = field->rooms[index];
	if (!(room->plan->needs & (unsigned)PLAN_NEED_WATERPROOF) ||
	    !is_to_be_full(&lay->strips->cover))
		return;
	for (size_t c = 0; c < field->carried_count; c++) {
		const struct field_carried *carried = &field->carried[c];
		if (carried->joint == NULL)
			continue;
		struct region met = overlay_intersection(judging->arena, &carried->band,
		                                         &field->room_grounds[index]);
		struct raised raised = raised_of_room(judging, RULE_WATERPROOF_CUT, room);
		if (met.count == 0)
			continue;
		raised.at = frame_out(field->frame, point_between(carried->from, carried->to, 0.5));
		judge_say(judging, raised, {"joint", carried->joint->id});
	}
}

void judge_needs(struct judging *judging)
{
	for (size_t i = 0; i < judging->placed->lay_count; i++) {
		const struct placed_lay *lay = &judging->placed->lays[i];
		for (size_t r = 0; r < lay->field->room_count; r++) {
			judge_room_needs(judging, lay, lay->field->rooms[r]);
			judge_waterproof_cuts(judging, lay, r);
		}
	}
}

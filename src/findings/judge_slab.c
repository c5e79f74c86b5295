/* judge_slab.c - the slab as found: its age and its joints. */
#include <math.h>

#include "findings/judge.h"
#include "geometry/clip.h"
#include "layout/relocated.h"

/* ---- age ---- */

/* The first laid room on a slab, and the most days that a membrane over it asks for. */
struct slab_use {
	const struct site_room *room;
	int64_t membrane_days; /* 0: none says */
};

static struct slab_use use_of(const struct placed *placed, const struct plan_slab *slab)
{
	struct slab_use use = {0};
	for (size_t i = 0; i < placed->lay_count; i++) {
		const struct placed_lay *lay = &placed->lays[i];
		const struct plan_membrane *membrane = lay->strips->cover.membrane;
		for (size_t r = 0; r < lay->field->room_count; r++) {
			if (!site_room_is_on(lay->field->rooms[r], slab))
				continue;
			if (use.room == NULL)
				use.room = lay->field->rooms[r];
			if (membrane != NULL && membrane->min_slab_age_days > use.membrane_days)
				use.membrane_days = membrane->min_slab_age_days;
		}
	}
	return use;
}

static struct raised raised_of_slab(const struct rule *rule, const struct plan_slab *slab,
                                    const struct slab_use *use, double limit)
{
	struct box box = ring_box(use->room->outline);
	return (struct raised){
		.rule = rule,
		.about = slab->id,
		.line = slab->line,
		.at = {(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2},
		.limit = limit,
		.unit = "days",
	};
}

static void judge_slab(struct judging *judging, const struct plan_slab *slab)
{
	const struct plan_job *job = judging->placed->site->plan->job;
	const struct rule *young = judge_rule(judging, RULE_SLAB_YOUNG);
	struct slab_use use = use_of(judging->placed, slab);
	double limit = use.membrane_days > 0 ? (double)use.membrane_days : young->limit;
	if (use.room == NULL)
		return;
	if (slab->placed.day == 0 || job == NULL || job->starts.day == 0) {
		judge_plainly(judging, raised_of_slab(judge_rule(judging, RULE_SLAB_AGE_UNKNOWN),
		                                      slab, &use, limit));
		return;
	}
	struct raised raised = raised_of_slab(young, slab, &use, limit);
	raised.measured = (double)date_days_between(slab->placed, job->starts);
	if (rule_is_raised_by(young, raised.measured, limit))
		judge_plainly(judging, raised);
}

void judge_slabs(struct judging *judging)
{
	const struct plan *plan = judging->placed->site->plan;
	for (size_t i = 0; i < plan->slab_count; i++)
		judge_slab(judging, &plan->slabs[i]);
}

/* ---- slab joints ---- */

static struct raised raised_of_joint(const struct judging *judging, enum rule_id id,
                                     const struct site_slab_joint *joint)
{
	const struct rule *rule = judge_rule(judging, id);
	return (struct raised){
		.rule = rule,
		.about = joint->id,
		.line = joint->plan->line,
		.at = judge_middle_of_line(joint->line),
		.limit = rule->limit,
		.unit = "mm",
	};
}

/* What carrying a joint comes to over all lays; width 0: it is carried nowhere. */
struct carrying {
	double width, deviation; /* the greatest */
};

static struct carrying carrying_of(const struct placed *placed, const struct site_slab_joint *joint)
{
	struct carrying carrying = {0};
	for (size_t i = 0; i < placed->lay_count; i++) {
		const struct field *field = placed->lays[i].field;
		for (size_t c = 0; c < field->carried_count; c++)
			if (field->carried[c].joint == joint) {
				carrying.width = fmax(carrying.width, field->carried[c].width);
				carrying.deviation =
					fmax(carrying.deviation, field->carried[c].deviation);
			}
	}
	return carrying;
}

static void judge_measure(struct judging *judging, enum rule_id id,
                          const struct site_slab_joint *joint, double measured)
{
	struct raised raised = raised_of_joint(judging, id, joint);
	raised.measured = measured;
	if (raised.rule->side == RULE_WHEN || rule_is_raised(raised.rule, measured))
		judge_plainly(judging, raised);
}

/* The lay over the joint; NULL: none. */
static const struct field *field_over(const struct judging *judging,
                                      const struct site_slab_joint *joint)
{
	for (size_t i = 0; i < judging->placed->lay_count; i++) {
		const struct field *field = judging->placed->lays[i].field;
		size_t count = 0;
		clip_line(judging->arena, frame_line_in(judging->arena, field->frame, joint->line),
		          &field->ground, &count);
		if (count > 0)
			return field;
	}
	return NULL;
}

static void judge_relocation(struct judging *judging, const struct site_slab_joint *joint)
{
	static const char *const messages[] = {
		[RELOCATION_IMPOSSIBLE] = "finding.joint-relocated.impossible",
		[RELOCATION_HALF] = "finding.joint-relocated.half",
		[RELOCATION_AGREED] = "finding.joint-relocated.agreed",
	};
	const struct field *field = joint->relocate ? field_over(judging, joint) : NULL;
	if (!field)
		return;
	struct relocating heard = relocating_of(field, joint);
	struct raised raised = raised_of_joint(judging, RULE_JOINT_RELOCATED, joint);
	raised.measured = joint->width;
	raised.message = messages[heard.state];
	raised.is_asked = true;
	if (heard.state == RELOCATION_DECLINED)
		raised.answer = heard.answers[0];
	if (heard.state == RELOCATION_AGREED)
		raised.answer = heard.answers[1];
	if (heard.answers[0])
		judge_use_answer(judging, heard.answers[0]);
	judge_say(judging, raised, {"first", heard.answers[0] ? heard.answers[0]->by : ""});
}

static void judge_slab_joint(struct judging *judging, const struct site_slab_joint *joint)
{
	struct carrying carrying = carrying_of(judging->placed, joint);
	if (carrying.width > 0) {
		judge_measure(judging, RULE_JOINT_CARRIED, joint, carrying.width);
		judge_measure(judging, RULE_JOINT_WIDE, joint, carrying.width);
		judge_measure(judging, RULE_JOINT_CROOKED, joint, carrying.deviation);
		judge_measure(judging, RULE_JOINT_STEP, joint, joint->step);
	}
	judge_relocation(judging, joint);
}

void judge_slab_joints(struct judging *judging)
{
	const struct site *site = judging->placed->site;
	for (size_t i = 0; i < site->slab_joint_count; i++)
		judge_slab_joint(judging, &site->slab_joints[i]);
}

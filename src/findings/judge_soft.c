/* judge_soft.c - soft joints: how crooked, how long, how narrow. */
#include <math.h>

#include "findings/judge.h"
#include "geometry/line.h"
#include "geometry/segment.h"
#include "units/length.h"
#include "units/number.h"

/* A soft joint, with the crack that its line in the plan is told by. */
struct soft {
	const struct soft_joint *joint;
	const struct placed_crack *crack;
	double crack_length; /* of its whole group, in this lay */
};

static struct soft soft_of(const struct placed_lay *lay, const struct soft_joint *joint)
{
	const struct crack_group *group = &lay->cracks->groups[joint->group];
	struct soft soft = {joint, &lay->cracks->cracks[group->cracks[0]], 0};
	for (size_t i = 0; i < group->crack_count; i++) {
		const struct placed_crack *crack = &lay->cracks->cracks[group->cracks[i]];
		soft.crack_length += line_length_of_all(crack->runs, crack->run_count);
	}
	return soft;
}

static struct raised raised_of_soft(const struct placed_lay *lay, const struct rule *rule,
                                    const struct soft *soft)
{
	return (struct raised){
		.rule = rule,
		.about = soft->joint->id,
		.of = soft->crack->id,
		.line = soft->crack->crack->plan->line,
		.at = frame_out(lay->field->frame, judge_middle_of_line(soft->joint->line)),
		.limit = rule->limit,
	};
}

/* What a crew would rather build than steps: a straight joint between the same ends, and the
 * tile that it cuts. */
static struct segment straight_joint(const struct soft *soft)
{
	struct line line = soft->joint->line;
	return (struct segment){line.points[0], line.points[line.count - 1]};
}

static size_t tiles_under(const struct judging *judging, const struct placed_lay *lay,
                          struct segment joint)
{
	size_t count;
	struct line line = {(struct point[]){joint.from, joint.to}, 2};
	tiling_near(judging->arena, lay->tiling, line, 0, &count);
	return count;
}

/* Turns of less than a right angle count as a part of one; a part begun is one. */
static const char *say_turns(const struct judging *judging, double turns)
{
	return say_number(&judging->say, ceil(turns), 0);
}

static void say_ragged(struct judging *judging, const struct placed_lay *lay, struct raised raised,
                       const struct soft *soft, const char *why)
{
	struct segment joint = straight_joint(soft);
	size_t tiles = tiles_under(judging, lay, joint);
	judge_say(judging, raised, {"why", why},
	          {"partial", judge_area(judging, judge_partial_mm2(lay))},
	          {"full", judge_area(judging, judge_full_mm2(lay))},
	          {"straight", judge_length(judging, segment_length(joint))},
	          {"tiles", say_number(&judging->say, (double)tiles, 0)});
}

static void judge_ragged(struct judging *judging, const struct placed_lay *lay,
                         const struct soft *soft)
{
	const struct rule *rule = judge_rule(judging, RULE_SOFT_PATH_RAGGED);
	struct arena *arena = judging->arena;
	struct raised raised = raised_of_soft(lay, rule, soft);
	double ratio_most = judge_figure(judging, FIGURE_SOFT_LENGTH_RATIO);
	double length = soft->joint->length, turns = soft->joint->turns;
	double ratio = soft->crack_length > 0 ? length / soft->crack_length : 0;
	double by_foot = length > 0 ? turns / (length / LENGTH_MM_PER_FOOT) : 0;
	const char *length_text = judge_length(judging, length);
	if (rule_is_raised(rule, by_foot)) {
		raised.measured = by_foot;
		say_ragged(judging, lay, raised, soft,
		           words_fill(arena, judging->say.words, "finding.soft-path-ragged.turns",
		                      {"turns", say_turns(judging, turns)}, {"length", length_text},
		                      {"limit", say_number(&judging->say, rule->limit, 2)},
		                      {"foot", judge_length(judging, LENGTH_MM_PER_FOOT)}));
	} else if (number_order(ratio, ratio_most) > 0) {
		raised.measured = ratio;
		raised.limit = ratio_most;
		raised.unit = "none";
		say_ragged(judging, lay, raised, soft,
		           words_fill(arena, judging->say.words, "finding.soft-path-ragged.long",
		                      {"measured", length_text},
		                      {"limit", say_number(&judging->say, ratio_most, 2)}));
	}
}

/* Once a lay: the joint with the most turns speaks for all. */
static void judge_stepped(struct judging *judging, const struct placed_lay *lay)
{
	const struct rule *rule = judge_rule(judging, RULE_SOFT_PATH_STEPPED);
	const struct soft_joint *most = NULL;
	for (size_t i = 0; i < lay->strips->soft_count; i++) {
		const struct soft_joint *joint = &lay->strips->softs[i];
		if (most == NULL || number_order(joint->turns, most->turns) > 0)
			most = joint;
	}
	if (most == NULL || !rule_is_raised(rule, most->turns))
		return;
	struct soft soft = soft_of(lay, most);
	struct raised raised = raised_of_soft(lay, rule, &soft);
	raised.measured = most->turns;
	judge_say(judging, raised, {"turns", say_turns(judging, most->turns)});
}

static double width_wanted(const struct judging *judging, const struct placed_lay *lay)
{
	return judge_figure(judging, field_is_outdoor(lay->field) ? FIGURE_CARRIED_WIDTH_OUTDOOR
	                                                          : FIGURE_CARRIED_WIDTH_INDOOR);
}

/* Once a floor. True: said. */
static bool judge_narrow(struct judging *judging, const struct placed_lay *lay)
{
	const struct rule *rule = judge_rule(judging, RULE_MOVEMENT_JOINT_NARROW);
	double wanted = width_wanted(judging, lay), width = lay->module->joint;
	if (lay->strips->soft_count == 0 || !rule_is_raised_by(rule, width, wanted))
		return false;
	struct raised raised = {.rule = rule,
	                        .about = lay->field->lay->id,
	                        .line = lay->field->lay->line,
	                        .at = judge_middle_of_lay(lay),
	                        .measured = width,
	                        .limit = wanted};
	judge_plainly(judging, raised);
	return true;
}

void judge_soft_joints(struct judging *judging)
{
	bool is_said = false;
	for (size_t i = 0; i < judging->placed->lay_count; i++) {
		const struct placed_lay *lay = &judging->placed->lays[i];
		for (size_t k = 0; k < lay->strips->soft_count; k++) {
			struct soft soft = soft_of(lay, &lay->strips->softs[k]);
			/* A side that a carried or perimeter joint serves has no path; beside
			 * full coverage nobody asks for full coverage. */
			if (soft.joint->line.count > 1 && !lay->strips->cover.is_full)
				judge_ragged(judging, lay, &soft);
		}
		judge_stepped(judging, lay);
		is_said = is_said || judge_narrow(judging, lay);
	}
}

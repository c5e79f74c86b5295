/* judge_cracks.c - cracks, the strips over them, and the soft joints beside them. */
#include <math.h>

#include "findings/beside.h"
#include "findings/judge.h"
#include "geometry/segment.h"
#include "units/number.h"

/* ---- the table of cracks ---- */

static struct raised raised_of_crack(const struct rule *rule, const struct placed_crack *crack)
{
	return (struct raised){
		.rule = rule,
		.about = crack->id,
		.line = crack->crack->plan->line,
		.at = judge_middle_of_line(crack->crack->line),
		.limit = rule->limit,
	};
}

static void judge_verdict(struct judging *judging, const struct placed_crack *crack)
{
	for (size_t i = 0; i < crack->verdict.cause_count; i++) {
		const struct crack_cause *cause = &crack->verdict.causes[i];
		struct raised raised = raised_of_crack(cause->rule, crack);
		raised.measured = cause->measured;
		raised.unit = "mm";
		raised.is_asked = cause->rule->weight != RULE_NOTE;
		if (cause->answer != NULL)
			raised.answer = judge_answer_on(judging, cause->answer->line);
		judge_plainly(judging, raised);
	}
}

static void judge_uncovered(struct judging *judging, const struct placed_lay *lay,
                            const struct placed_crack *crack)
{
	if (lay->strips->cover.membrane == NULL && crack->state == CRACK_ISOLATE)
		judge_plainly(judging,
		              raised_of_crack(judge_rule(judging, RULE_CRACK_UNCOVERED), crack));
}

static void judge_beside(struct judging *judging, const struct placed_lay *lay,
                         const struct placed_crack *crack)
{
	const struct rule *rule = judge_rule(judging, RULE_CRACK_BESIDE_JOINT);
	const struct site *site = judging->placed->site;
	double tile = lay->module->tile_long;
	for (size_t i = 0; i < site->slab_joint_count; i++) {
		const struct site_slab_joint *joint = &site->slab_joints[i];
		struct line line = joint->line;
		if (joint->plan->kind != PLAN_JOINT_CONTRACTION)
			continue;
		double beside = beside_length(crack->crack->line, line.points[0],
		                              line.points[line.count - 1], tile) /
		                tile;
		if (!rule_is_raised(rule, beside))
			continue;
		struct raised raised = raised_of_crack(rule, crack);
		raised.measured = beside;
		judge_say(judging, raised, {"joint", joint->id});
	}
}

/* ---- partial coverage is questioned ---- */

static double ring_gap(struct ring a, struct ring b)
{
	double least = INFINITY;
	for (size_t i = 0; i < a.count; i++)
		for (size_t k = 0; k < b.count; k++)
			least = fmin(least,
			             segment_gap(segment_of_ring(a, i), segment_of_ring(b, k)));
	return least;
}

/* Least distance between the borders; 0 where they cross. */
static double border_gap(const struct region *a, const struct region *b)
{
	double least = INFINITY;
	for (size_t p = 0; p < a->count; p++)
		for (size_t q = 0; q < b->count; q++)
			least = fmin(least,
			             ring_gap(a->polygons[p].outline, b->polygons[q].outline));
	return least;
}

static bool is_near(const struct strip *a, const struct strip *b, double distance)
{
	struct box reach = box_grown(region_box(&a->region), distance);
	return box_meets(reach, region_box(&b->region)) &&
	       number_order(border_gap(&a->region, &b->region), distance) < 0;
}

static bool has_strips_near(const struct placed_lay *lay, double distance)
{
	const struct strips *strips = lay->strips;
	for (size_t i = 0; i < strips->strip_count; i++)
		for (size_t k = i + 1; k < strips->strip_count; k++)
			if (is_near(&strips->strips[i], &strips->strips[k], distance))
				return true;
	return false;
}

/* Why partial coverage is questioned here; NULL: it is not. */
static const char *why_many(const struct judging *judging, const struct placed_lay *lay,
                            double share)
{
	const struct rule *rule = judge_rule(judging, RULE_CRACKS_MANY);
	struct arena *arena = judging->arena;
	double near = judge_figure(judging, FIGURE_STRIP_NEAR_TILES) * lay->module->tile_long;
	if (rule_is_raised(rule, share))
		return words_fill(arena, judging->say.words, "finding.cracks-many.area",
		                  {"measured", say_value(&judging->say, share, "share")},
		                  {"limit", say_value(&judging->say, rule->limit, "share")});
	if (has_strips_near(lay, near))
		return words_find(judging->say.words, "finding.cracks-many.near");
	if (judge_is_large(judging, lay))
		return words_fill(arena, judging->say.words, "finding.cracks-many.large",
		                  {"measured", judge_length(judging, lay->module->tile_long)},
		                  {"limit",
		                   judge_length(judging,
		                                judge_figure(judging, FIGURE_LARGE_TILE_SIDE))});
	return NULL;
}

static void judge_many(struct judging *judging, const struct placed_lay *lay)
{
	if (lay->strips->strip_count == 0 || lay->strips->cover.is_full)
		return;
	double partial = judge_partial_mm2(lay);
	double share = partial / lay->field->area_mm2;
	const char *why = why_many(judging, lay, share);
	if (why == NULL)
		return;
	const struct rule *rule = judge_rule(judging, RULE_CRACKS_MANY);
	struct raised raised = {rule,
	                        .about = lay->field->lay->id,
	                        .line = lay->field->lay->line,
	                        .at = judge_middle_of_lay(lay),
	                        .measured = share,
	                        .limit = rule->limit};
	judge_say(judging, raised, {"why", why}, {"partial", judge_area(judging, partial)},
	          {"full", judge_area(judging, judge_full_mm2(lay))});
}

void judge_cracks(struct judging *judging)
{
	for (size_t i = 0; i < judging->placed->lay_count; i++) {
		const struct placed_lay *lay = &judging->placed->lays[i];
		for (size_t c = 0; c < lay->cracks->crack_count; c++) {
			if (lay->cracks->cracks[c].crack->joint)
				continue; /* judged with the joints of the slab */
			judge_verdict(judging, &lay->cracks->cracks[c]);
			judge_uncovered(judging, lay, &lay->cracks->cracks[c]);
			judge_beside(judging, lay, &lay->cracks->cracks[c]);
		}
		judge_many(judging, lay);
	}
}

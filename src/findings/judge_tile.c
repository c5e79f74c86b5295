/* judge_tile.c - tile, its joint and its setting out; the membrane's scope. */
#include <math.h>

#include "findings/judge.h"
#include "layout/movement_steps.h"
#include "rules/workmanship.h"
#include "units/length.h"
#include "units/number.h"

/* ---- pattern ---- */

/* How far a course lies from the next, the shorter way round. */
static double shift_of(const struct plan_lay *lay)
{
	double shift = share_value(lay->shift);
	shift -= floor(shift);
	return fmin(shift, 1 - shift);
}

static void judge_shift(struct judging *judging, const struct placed_lay *lay)
{
	struct raised raised = judge_raise_lay(judging, RULE_SHIFT_LARGE, lay);
	if (lay->field->lay->pattern != PLAN_PATTERN_RUNNING || !judge_is_large(judging, lay))
		return;
	raised.measured = shift_of(lay->field->lay);
	raised.unit = "share";
	if (rule_is_raised(raised.rule, raised.measured))
		judge_plainly(judging, raised);
}

/* The least joint of this tile: the table's, what its sizes vary by, what running bond of
 * large tile asks for; and the warpage of its edge on top. */
static double joint_least(const struct judging *judging, const struct placed_lay *lay)
{
	double least = judge_rule(judging, RULE_JOINT_NARROW)->limit, warpage = 0;
	bool runs = lay->field->lay->pattern == PLAN_PATTERN_RUNNING;
	for (size_t i = 0; i < lay->field->lay->tile_count; i++) {
		const struct plan_tile *tile = lay->field->lay->tiles[i];
		bool is_rectified = tile->edge == PLAN_TILE_EDGE_RECTIFIED;
		least = fmax(least, judge_figure(judging, FIGURE_JOINT_SPREAD_FACTOR) *
		                            length_mm(tile->size_spread_nm));
		if (runs && judge_is_large(judging, lay))
			least = fmax(least,
			             judge_figure(judging,
			                          is_rectified ? FIGURE_JOINT_RUNNING_RECTIFIED
			                                       : FIGURE_JOINT_RUNNING_CALIBRATED));
		warpage = fmax(warpage, length_mm(tile->warpage_nm));
	}
	return least + warpage;
}

static void judge_joint(struct judging *judging, const struct placed_lay *lay)
{
	struct raised raised = judge_raise_lay(judging, RULE_JOINT_NARROW, lay);
	raised.measured = lay->module->joint;
	raised.limit = joint_least(judging, lay);
	if (rule_is_raised_by(raised.rule, raised.measured, raised.limit))
		judge_plainly(judging, raised);
}

/* One lot of ground tile is of one size, as far as its class has it. */
static void judge_spread(struct judging *judging, const struct placed_lay *lay)
{
	for (size_t i = 0; i < lay->field->lay->tile_count; i++) {
		const struct plan_tile *tile = lay->field->lay->tiles[i];
		struct raised raised = judge_raise_lay(judging, RULE_TILE_UNEVEN, lay);
		raised.about = tile->id;
		raised.line = tile->line;
		raised.measured = length_mm(tile->size_spread_nm);
		raised.limit = workmanship_spread(judging->placed->rules, length_mm(tile->wide_nm));
		raised.unit = "mm";
		if (tile->edge == PLAN_TILE_EDGE_RECTIFIED &&
		    number_order(raised.measured, raised.limit) > 0)
			judge_plainly(judging, raised);
	}
}

/* ---- setting out ---- */

static void judge_unmet(struct judging *judging, const struct placed_lay *lay)
{
	const struct plan_ref *unmet = lay->position->unmet;
	if (unmet != NULL)
		judge_say(judging, judge_raise_lay(judging, RULE_FULL_AT_UNMET, lay),
		          {"edge", unmet->id});
}

/* ---- field joints ---- */

/* Drawn cut all the same: nobody steps a field joint without the sealant's maker. */
static void judge_steps(struct judging *judging, const struct placed_lay *lay,
                        const struct movement_line *line, struct raised raised)
{
	struct movement_steps steps = movement_steps_of(judging->placed->rules, lay->tiling,
	                                                lay->position->parts[line->part], line);
	if (number_order(steps.stepped, steps.cut) >= 0)
		return;
	raised.rule = judge_rule(judging, RULE_FIELD_JOINT_STEPPED);
	raised.limit = raised.rule->limit;
	judge_say(judging, raised, {"turns", say_number(&judging->say, steps.turns, 0)},
	          {"tiles", say_number(&judging->say, steps.tiles, 0)});
}

static void judge_cut_lines(struct judging *judging, const struct placed_lay *lay)
{
	for (size_t i = 0; i < lay->movement->line_count; i++) {
		const struct movement_line *line = &lay->movement->lines[i];
		struct raised raised = judge_raise_lay(judging, RULE_FIELD_JOINT_CUT, lay);
		if (line->on_joint || line->run_count == 0)
			continue;
		raised.of = raised.about;
		raised.about = line->id;
		raised.at = frame_out(lay->field->frame, judge_middle_of_line(line->runs[0]));
		raised.measured = line->width;
		raised.unit = "mm";
		judge_plainly(judging, raised);
		judge_steps(judging, lay, line, raised);
	}
}

static void judge_missing_lines(struct judging *judging, const struct placed_lay *lay)
{
	struct raised raised = judge_raise_lay(judging, RULE_FIELD_JOINT_MISSING, lay);
	raised.limit = raised.measured = lay->movement->limit;
	raised.unit = "mm";
	if (lay->movement->missing_count > 0)
		judge_plainly(judging, raised);
}

void judge_tile(struct judging *judging)
{
	for (size_t i = 0; i < judging->placed->lay_count; i++) {
		const struct placed_lay *lay = &judging->placed->lays[i];
		judge_shift(judging, lay);
		judge_joint(judging, lay);
		judge_spread(judging, lay);
		judge_cuts(judging, i);
		judge_unmet(judging, lay);
		judge_cut_lines(judging, lay);
		judge_missing_lines(judging, lay);
	}
}

/* ---- membrane ---- */

/* Mats and mortar beds are full by their nature: nobody is asked. */
static bool is_chosen_full(const struct plan_membrane *membrane)
{
	return membrane->cover == PLAN_COVER_FULL &&
	       (membrane->kind == PLAN_MEMBRANE_LIQUID || membrane->kind == PLAN_MEMBRANE_SHEET);
}

static void judge_cover(struct judging *judging, const struct placed_lay *lay)
{
	const struct plan_membrane *membrane = lay->strips->cover.membrane;
	struct raised raised = judge_raise_lay(judging, RULE_COVER_UNAPPROVED, lay);
	if (!is_chosen_full(membrane))
		return;
	raised.about = membrane->id;
	raised.line = membrane->line;
	if (lay->strips->cover.is_full)
		raised.message = "finding.cover-unapproved.full";
	judge_say(judging, raised, {"partial", judge_area(judging, judge_partial_mm2(lay))},
	          {"full", judge_area(judging, judge_full_mm2(lay))});
}

/* Small tile over a membrane is crushed by point loads: the maker says from which side on. */
static void judge_sides(struct judging *judging, const struct placed_lay *lay)
{
	const struct plan_membrane *membrane = lay->strips->cover.membrane;
	for (size_t i = 0; i < lay->field->lay->tile_count; i++) {
		const struct plan_tile *tile = lay->field->lay->tiles[i];
		struct raised raised = judge_raise_lay(judging, RULE_TILE_SMALL, lay);
		if (tile->wide_nm >= membrane->min_tile_nm)
			continue;
		raised.about = membrane->id;
		raised.line = membrane->line;
		raised.measured = length_mm(tile->wide_nm);
		raised.limit = length_mm(membrane->min_tile_nm);
		raised.unit = "mm";
		judge_say(judging, raised, {"tile", tile->id});
	}
}

void judge_membranes(struct judging *judging)
{
	for (size_t i = 0; i < judging->placed->lay_count; i++) {
		const struct placed_lay *lay = &judging->placed->lays[i];
		if (lay->strips->cover.membrane == NULL)
			continue;
		judge_cover(judging, lay);
		judge_sides(judging, lay);
	}
}

/* count_joints.c - joints by length, and what fills them: sealant, rod, tape. */
#include "count/counting.h"
#include "count/formula.h"

static enum count_kind kind_of(const struct joint *joint)
{
	static const enum count_kind kinds[] = {[JOINT_SOFT] = COUNT_JOINT_SOFT,
	                                        [JOINT_MOVEMENT] = COUNT_JOINT_MOVEMENT,
	                                        [JOINT_CARRIED] = COUNT_JOINT_CARRIED,
	                                        [JOINT_PERIMETER] = COUNT_JOINT_PERIMETER};
	return joint->is_open ? COUNT_JOINT_PERIMETER_OPEN : kinds[joint->kind];
}

static void add_sealant(struct counting *c, const struct joint *joint)
{
	double ml = formula_sealant_ml(joint->length, joint->width, joint->depth);
	struct count_row *row = counting_volume(c, COUNT_SEALANT, joint->id, ml);
	counting_how(c, row, {"width", counting_width(c, joint->width)},
	             {"depth", counting_width(c, joint->depth)});
}

static void add_rod(struct counting *c, const struct joint *joint)
{
	struct formula_rod rod = {
		.oversize = counting_figure(c, FIGURE_ROD_OVERSIZE),
		.wide_from = counting_figure(c, FIGURE_ROD_WIDE_FROM),
		.wide_share = counting_figure(c, FIGURE_ROD_WIDE_SHARE),
	};
	struct count_row *row = counting_length(c, COUNT_ROD, joint->id, joint->length);
	counting_size(c, row, counting_width(c, formula_rod_diameter(joint->width, rod)));
	counting_how(c, row, {"width", counting_width(c, joint->width)});
}

static void add_joint(struct counting *c, const struct joint *joint)
{
	counting_length(c, kind_of(joint), joint->id, joint->length);
	if (joint->is_open)
		return;
	add_sealant(c, joint);
	if (joint->back == JOINT_BACK_ROD)
		add_rod(c, joint);
	else if (joint->back == JOINT_BACK_TAPE)
		counting_length(c, COUNT_TAPE, joint->id, joint->length);
}

static void add_packages(struct counting *c)
{
	double waste = counting_figure(c, FIGURE_SEALANT_WASTE);
	double tube = c->placed->site->plan->sealant.per_tube_ml;
	double sausage = counting_figure(c, FIGURE_SEALANT_SAUSAGE_ML);
	const char *share = counting_percent(c, waste);
	double ml = counting_sum(c, COUNT_SEALANT);
	struct count_row *row =
		counting_packages(c, COUNT_SEALANT_TUBE, "total", "each", ml, waste, tube);
	if (row == NULL)
		return;
	counting_how(c, row, {"each", counting_volume_text(c, tube)}, {"waste", share});
	row = counting_packages(c, COUNT_SEALANT_SAUSAGE, "total", "each", ml, waste, sausage);
	counting_how(c, row, {"each", counting_volume_text(c, sausage)}, {"waste", share});
}

void count_joints(struct counting *c)
{
	for (size_t i = 0; i < c->placed->lay_count; i++) {
		const struct joints *joints = c->placed->lays[i].joints;
		for (size_t j = 0; j < joints->joint_count; j++)
			add_joint(c, &joints->joints[j]);
	}
	add_packages(c);
}

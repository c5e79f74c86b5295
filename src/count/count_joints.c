/* count_joints.c - joints by length, and what fills them: sealant, rod, tape. */
#include "count/counting.h"
#include "count/formula.h"
#include "count/room_shares.h"

static enum count_kind kind_of(const struct joint *joint)
{
	static const enum count_kind kinds[] = {[JOINT_SOFT] = COUNT_JOINT_SOFT,
	                                        [JOINT_MOVEMENT] = COUNT_JOINT_MOVEMENT,
	                                        [JOINT_CARRIED] = COUNT_JOINT_CARRIED,
	                                        [JOINT_PERIMETER] = COUNT_JOINT_PERIMETER};
	return joint->is_open ? COUNT_JOINT_PERIMETER_OPEN : kinds[joint->kind];
}

static void add_sealant(struct counting *c, const struct joint *joint, const char *where,
                        double length)
{
	double ml = formula_sealant_ml(length, joint->width, joint->depth);
	struct count_row *row = counting_volume(c, COUNT_SEALANT, where, ml);
	counting_how(c, row, {"width", counting_width(c, joint->width)},
	             {"depth", counting_width(c, joint->depth)});
}

static void add_rod(struct counting *c, const struct joint *joint, const char *where, double length)
{
	struct formula_rod rod = {
		.oversize = counting_figure(c, FIGURE_ROD_OVERSIZE),
		.wide_from = counting_figure(c, FIGURE_ROD_WIDE_FROM),
		.wide_share = counting_figure(c, FIGURE_ROD_WIDE_SHARE),
	};
	struct count_row *row = counting_length(c, COUNT_ROD, where, length);
	counting_size(c, row, counting_width(c, formula_rod_diameter(joint->width, rod)));
	counting_how(c, row, {"width", counting_width(c, joint->width)});
}

static void add_stretch(struct counting *c, const struct joint *joint, const char *where,
                        double length)
{
	counting_length(c, kind_of(joint), where, length);
	if (joint->is_open)
		return;
	add_sealant(c, joint, where, length);
	if (joint->back == JOINT_BACK_ROD)
		add_rod(c, joint, where, length);
	else if (joint->back == JOINT_BACK_TAPE)
		counting_length(c, COUNT_TAPE, where, length);
}

static void add_joint(struct counting *c, const struct field *field, const struct joint *joint)
{
	const double *lengths =
		room_shares_of_line(c->arena, field, joint->line, joint->is_closed, joint->length);
	for (size_t r = 0; r < field->room_count; r++)
		if (lengths[r] > 0)
			add_stretch(c, joint, counting_in_room(c, field, r, joint->id), lengths[r]);
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
			add_joint(c, c->placed->lays[i].field, &joints->joints[j]);
	}
	add_packages(c);
}

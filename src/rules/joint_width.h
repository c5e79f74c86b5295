/* joint_width.h - how wide a joint must be for what moves at it.
 * Units: mm, K; shares are bare numbers. By value; nothing fails.
 * Source: R-E01, W = (100/X) (e L dT + M) + t; R-M09, wider joints for a wide range. */
#ifndef RULES_JOINT_WIDTH_H
#define RULES_JOINT_WIDTH_H
#include "rules/rules.h"

struct joint_movement {
	double expansion_per_k, range_k;
	double length;      /* that moves at the joint */
	double moisture;    /* movement by moisture, as a share of the length */
	double drift;       /* what else moves there */
	double class_share; /* of its width that the sealant moves */
	double allowance;   /* for building it */
};

double joint_width_of(struct joint_movement);
/* On top of the printed widths, for a range of temperature over the one they are printed for. */
double joint_width_increment(const struct rules *, double range_k);

#endif

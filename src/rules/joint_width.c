#include "rules/joint_width.h"

#include <math.h>

double joint_width_of(struct joint_movement m)
{
	double moved = (m.expansion_per_k * m.range_k + m.moisture) * m.length + m.drift;
	return moved / m.class_share + m.allowance;
}

double joint_width_increment(const struct rules *rules, double range_k)
{
	const double JUST = 1e-6; /* 115 F is a whole step, whatever its kelvin round to */
	double beyond = range_k - rules_figure(rules, FIGURE_WIDTH_RANGE);
	if (beyond <= JUST)
		return 0;
	return ceil(beyond / rules_figure(rules, FIGURE_WIDTH_RANGE_STEP) - JUST) *
	       rules_figure(rules, FIGURE_WIDTH_RANGE_INCREMENT);
}

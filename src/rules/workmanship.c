#include "rules/workmanship.h"

#include <math.h>

double workmanship_lippage(const struct rules *rules, double joint, double warpage)
{
	bool is_wide = joint >= rules_figure(rules, FIGURE_LIPPAGE_JOINT);
	return rules_figure(rules, is_wide ? FIGURE_LIPPAGE_WIDE : FIGURE_LIPPAGE_NARROW) +
	       rules_figure(rules, FIGURE_LIPPAGE_WARPAGE) * warpage;
}

double workmanship_spread(const struct rules *rules, double side)
{
	return 2 * fmin(rules_figure(rules, FIGURE_CALIBRE_SHARE) * side,
	                rules_figure(rules, FIGURE_CALIBRE_MOST));
}

double workmanship_air_cfm(const struct rules *rules, double wheel_inches)
{
	return rules_figure(rules, FIGURE_VACUUM_PER_INCH) * wheel_inches;
}

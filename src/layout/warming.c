#include "layout/warming.h"

#include <math.h>

bool warming_is_stated(const struct plan_slab *slab)
{
	return !isnan(slab->coldest_c) && !isnan(slab->hottest_c);
}

static enum figure figure_for(const struct site_slab_part *part)
{
	switch (part->exposure) {
	case PLAN_EXPOSURE_OUTDOOR:
		return FIGURE_WARMING_OUTDOOR;
	case PLAN_EXPOSURE_SUNLIT:
		return FIGURE_WARMING_SUNLIT;
	default:
		return part->heated ? FIGURE_WARMING_HEATED : FIGURE_WARMING_INDOOR;
	}
}

double warming_of(const struct rules *rules, const struct site_slab_part *part)
{
	if (warming_is_stated(part->slab))
		return part->slab->hottest_c - part->slab->coldest_c;
	return rules_figure(rules, figure_for(part));
}

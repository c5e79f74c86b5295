#include "layout/courses.h"

#include "geometry/tolerance.h"

static double across(struct point p, bool along_u)
{
	return along_u ? p.y : p.x;
}

/* The panel that holds the point, or lies nearest to it. */
static const struct panel *panel_at(const struct tiling *tiling, struct point p)
{
	const struct panel *best = NULL;
	double least = INFINITY;
	for (size_t i = 0; i < tiling->panel_count; i++) {
		const struct panel *panel = &tiling->panels[i];
		struct region ground = {(struct polygon *)&panel->ground, 1};
		double distance = region_holds(&ground, p) ? 0 : region_distance(&ground, p);
		if (distance < least - TOLERANCE_SAME) {
			least = distance;
			best = panel;
		}
	}
	return best;
}

/* Number of the row's border nearest to a coordinate; false: it lies farther than `reach`. */
static bool border_number(const struct tiling *tiling, const struct panel *panel, bool along_u,
                          double at, double reach, double *out_number)
{
	const struct module *module = tiling->module;
	double period = along_u ? module->course : module->pitch;
	double offset = at - across(panel->position, along_u);
	*out_number = nearbyint(offset / period);
	return fabs(offset - *out_number * period) <= reach + TOLERANCE_WHOLE;
}

bool courses_between(const struct tiling *tiling, const struct first_tile *first, bool along_u,
                     struct segment run, double width, long *out_count)
{
	const struct panel *here = &tiling->panels[first->panel];
	const struct panel *there = panel_at(tiling, point_between(run.from, run.to, 0.5));
	double from, to, joint = tiling->module->joint;
	if (tiling->module->offset_count == 0)
		return false;
	if (!there || there->part != here->part ||
	    fabs(across(run.from, along_u) - across(run.to, along_u)) > TOLERANCE_WHOLE)
		return false;
	if (!border_number(tiling, here, along_u, across(first->at, along_u), joint / 2, &from) ||
	    !border_number(tiling, there, along_u, across(run.from, along_u), width / 2, &to))
		return false;
	*out_count = lround(fabs(to - from));
	return true;
}

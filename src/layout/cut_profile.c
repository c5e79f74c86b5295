#include "layout/cut_profile.h"

#include <math.h>

#include "geometry/tolerance.h"

double cut_profile_phase(const struct cut_profile *profile, double offset)
{
	double phase = offset - floor(offset / profile->period) * profile->period;
	return phase >= profile->period ? 0 : phase;
}

static double end_of_face(const struct cut_profile *profile)
{
	return profile->joint / 2 + profile->extent;
}

double cut_profile_cut(const struct cut_profile *profile, double phase)
{
	double cut = end_of_face(profile) - phase;
	if (cut <= profile->slack + TOLERANCE_CUT || cut >= profile->extent - TOLERANCE_CUT)
		return profile->extent;
	return cut;
}

/* True where the wall, moved by the tolerance, passes the place at which the cut jumps from
 * the narrowest that is still a tile to a whole one. */
static bool may_jump(const struct cut_profile *profile, double phase)
{
	double jump = end_of_face(profile) - profile->slack;
	double ahead = jump - phase;
	double nearest = ahead - profile->period * nearbyint(ahead / profile->period);
	/* Just short of the jump lies the narrowest cut; just past it a whole tile. */
	return nearest < profile->tolerance + TOLERANCE_CUT &&
	       nearest > TOLERANCE_CUT - profile->tolerance;
}

double cut_profile_worst_cut(const struct cut_profile *profile, double phase)
{
	if (may_jump(profile, phase))
		return profile->slack;
	return cut_profile_cut(profile, cut_profile_phase(profile, phase + profile->tolerance));
}

double cut_profile_penalty(const struct cut_profile *profile, double cut)
{
	if (cut >= profile->small)
		return 0;
	double penalty = (profile->small - cut) / profile->small;
	if (cut < profile->steep)
		penalty += (profile->steep_factor - 1) * (profile->steep - cut) / profile->small;
	return penalty;
}

double cut_profile_worst_penalty(const struct cut_profile *profile, double phase)
{
	return cut_profile_penalty(profile, cut_profile_worst_cut(profile, phase));
}

/* The worst penalty is linear between these phases, where the trapezoid is exact. */
static void find_breaks(struct cut_profile *profile)
{
	double end = end_of_face(profile), tolerance = profile->tolerance;
	double places[CUT_PROFILE_BREAKS] = {
		0,
		profile->joint / 2 - tolerance,   /* the cut begins */
		end - profile->small - tolerance, /* it becomes small, */
		end - profile->steep - tolerance, /* and steep */
		end - profile->slack - tolerance, /* the jump comes within reach, */
		end - profile->slack + tolerance, /* and is passed */
	};
	for (int i = 0; i < CUT_PROFILE_BREAKS; i++) {
		double phase = cut_profile_phase(profile, places[i]);
		int at = i;
		for (; at && profile->breaks[at - 1] > phase; at--)
			profile->breaks[at] = profile->breaks[at - 1];
		profile->breaks[at] = phase;
	}
	profile->breaks[CUT_PROFILE_BREAKS] = profile->period;
}

/* Between two breaks the penalty is a straight line, found just inside them: it may jump at a
 * break, and comparisons there are a hair wide. */
static void integrate(struct cut_profile *profile)
{
	for (int i = 0; i < CUT_PROFILE_BREAKS; i++) {
		double from = profile->breaks[i], length = profile->breaks[i + 1] - from;
		double inset = fmin(10 * TOLERANCE_CUT, length / 4);
		double first = cut_profile_worst_penalty(profile, from + inset);
		double last = cut_profile_worst_penalty(profile, from + length - inset);
		double slope = length > 0 ? (last - first) / (length - 2 * inset) : 0;
		profile->starts[i] = first - slope * inset;
		profile->slopes[i] = slope;
		profile->integrals[i + 1] =
			profile->integrals[i] + (profile->starts[i] + slope * length / 2) * length;
	}
}

struct cut_profile cut_profile_from(const struct rules *rules, double period, double joint,
                                    double slack, double tolerance, double reachable)
{
	double extent = period - joint;
	double small = fmin(rules_figure(rules, FIGURE_CUT_SMALL_SHARE), reachable) * extent;
	struct cut_profile profile = {
		.period = period,
		.joint = joint,
		.extent = extent,
		.slack = slack,
		.tolerance = tolerance,
		.small = small,
		.steep = small * rules_figure(rules, FIGURE_CUT_STEEP_SHARE),
		.steep_factor = rules_figure(rules, FIGURE_CUT_STEEP_FACTOR),
	};
	find_breaks(&profile);
	integrate(&profile);
	return profile;
}

/* Integral of the worst penalty from phase 0 to `phase`. */
static double integral_to(const struct cut_profile *profile, double phase)
{
	int i = 0;
	while (i + 1 < CUT_PROFILE_BREAKS && profile->breaks[i + 1] <= phase)
		i++;
	double past = fmax(0, phase - profile->breaks[i]);
	return profile->integrals[i] + (profile->starts[i] + profile->slopes[i] * past / 2) * past;
}

double cut_profile_mean_penalty(const struct cut_profile *profile, double from, double to)
{
	if (fabs(to - from) < TOLERANCE_CUT)
		return cut_profile_worst_penalty(profile,
		                                 cut_profile_phase(profile, (from + to) / 2));
	double low = fmin(from, to), high = fmax(from, to);
	double turns = floor(high / profile->period) - floor(low / profile->period);
	double sum = turns * profile->integrals[CUT_PROFILE_BREAKS] +
	             integral_to(profile, cut_profile_phase(profile, high)) -
	             integral_to(profile, cut_profile_phase(profile, low));
	return sum / (high - low);
}

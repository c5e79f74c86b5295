/* cut_profile.h - how large the cut at a wall is, and how bad, by where the wall falls in
 * the tile. Units: mm. By value; nothing is owned.
 * Phase: from the joint centre line before a tile to the wall, in the direction away from
 * the wall's inside, so 0 .. period. A remainder up to `slack` is no tile: the next tile is
 * met whole. The penalty is convex: nothing from `small` up, rising below, steeper below
 * the steep share. Source: docs/sources.md#setting-out. */
#ifndef LAYOUT_CUT_PROFILE_H
#define LAYOUT_CUT_PROFILE_H
#include "rules/rules.h"

enum { CUT_PROFILE_BREAKS = 6 };

struct cut_profile {
	double period, joint, extent; /* module, tile joint, face along the axis */
	double slack, tolerance;
	double small;               /* cuts from here up cost nothing */
	double steep, steep_factor; /* below this cut the penalty rises faster */
	/* Phases between which the worst penalty is linear, rising, and its integral up to each;
	 * after each, where the penalty starts and how it goes on. */
	double breaks[CUT_PROFILE_BREAKS + 1], integrals[CUT_PROFILE_BREAKS + 1];
	double starts[CUT_PROFILE_BREAKS], slopes[CUT_PROFILE_BREAKS];
};

/* `reachable`: the largest smallest-cut share the pattern can have at a wall, at most 1. */
struct cut_profile cut_profile_from(const struct rules *, double period, double joint, double slack,
                                    double tolerance, double reachable);

double cut_profile_phase(const struct cut_profile *, double offset); /* into [0, period) */
/* Extent of the first face met; `extent` where it is whole. */
double cut_profile_cut(const struct cut_profile *, double phase);
/* Least cut when the wall moves by the tolerance either way. */
double cut_profile_worst_cut(const struct cut_profile *, double phase);
/* Penalty of a cut: 0 at `small` and above, 1 at nothing on the gentle slope. */
double cut_profile_penalty(const struct cut_profile *, double cut);
double cut_profile_worst_penalty(const struct cut_profile *, double phase);
/* Mean of the worst penalty while the phase runs from one offset to another. */
double cut_profile_mean_penalty(const struct cut_profile *, double from, double to);

#endif

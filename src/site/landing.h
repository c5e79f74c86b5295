/* landing.h - ends that nearly reach something come to lie on it.
 * Units: mm. The arena is scratch; the points of the lines are moved where they are.
 * An end moves to the nearest point within reach and is then fixed; the first line of equal
 * ones counts. An end never moves where its line would be left without length. */
#ifndef SITE_LANDING_H
#define SITE_LANDING_H
#include "geometry/region.h"

struct landing {
	struct line line;
	bool start_fixed, end_fixed;
};

/* A closed line (last point = first) has no ends: both are fixed. */
struct landing landing_from_line(struct line);
void landing_on_region(struct landing *, const struct region *, double reach);
/* Lands each of `lines` on the `targets` that are not itself. */
void landing_on_others(struct arena *, struct landing *lines, size_t count,
                       const struct landing *targets, size_t target_count, double reach);

#endif

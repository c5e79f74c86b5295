/* wall_lanes.h - the cuts at a wall of a pattern without straight courses: one in each lane
 * that the wall crosses.
 * Places are along the axis and across it from where the lattice lies. Units: mm.
 * Owns: arena. Source: docs/sources.md#setting-out. */
#ifndef LAYOUT_WALL_LANES_H
#define LAYOUT_WALL_LANES_H
#include "layout/cut_profile.h"
#include "pattern/lanes.h"

struct wall_lanes {
	const struct lanes *lanes;    /* NULL: the pattern has courses */
	struct cut_profile *profiles; /* one for each extent that cells have along the axis */
	size_t profile_count;
	double sign; /* +1: the floor lies towards the greater coordinate */
};

/* The lanes of a wall across the axis from `low` to `high`. */
struct wall_stretch {
	double low, high;
};

/* What one lane shows. */
struct wall_cut {
	double cut, whole, small; /* whole: the face's extent; a lesser cut than small is small */
	double worst;             /* the cut with the wall moved by the tolerance */
};

/* None for patterns with courses (lanes NULL) and for those whose period is too long. */
struct wall_lanes wall_lanes_from(struct arena *, const struct lanes *, const struct rules *,
                                  double joint, double slack, double tolerance, double sign);
bool wall_lanes_has_any(const struct wall_lanes *);
/* No lane has one cut across all its width: those told are of middle lines. */
bool wall_lanes_is_slanted(const struct wall_lanes *);
/* One period of lanes, of which every wall of some length shows its share. */
struct wall_stretch wall_lanes_all(const struct wall_lanes *);

/* Mean over all lanes: a wall of some length crosses each in proportion. */
double wall_lanes_penalty(const struct wall_lanes *, double at);
/* Share of the wall at which tile is cut. */
double wall_lanes_cut_share(const struct wall_lanes *, double at);
bool wall_lanes_starts_whole(const struct wall_lanes *, double at, double reach);
/* The cut that is the least share of its face, of lanes that are not slanted where there are
 * such; its `worst` is the least of all of them. A whole face where nothing is cut. */
struct wall_cut wall_lanes_least(const struct wall_lanes *, double at, struct wall_stretch);
/* Distinct cuts, greatest first. */
double *wall_lanes_cuts(struct arena *, const struct wall_lanes *, double at, struct wall_stretch,
                        size_t *out_count);

#endif

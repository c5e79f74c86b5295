/* chords.h - the straight runs of an area along one axis that are too long: where each must
 * be cut. A run from a to b longer than the limit holds a window [x, x + limit] for every x
 * from a to b - limit; a set of cuts is enough when every window holds one.
 * Units: mm. Owns: arena. Source: own derivation; every chord is a limit of chords at the
 * corners' heights, so only those are looked at. */
#ifndef LAYOUT_CHORDS_H
#define LAYOUT_CHORDS_H
#include <stdbool.h>

#include "geometry/region.h"

/* Starts of windows, from `low` to `high`. */
struct chord_windows {
	double low, high;
};

struct chords {
	struct chord_windows *windows; /* apart, in rising order */
	size_t count;
};

/* Runs along x (along_u) or along y of the polygon that are longer than `limit`. */
struct chords chords_over(struct arena *, const struct polygon *, bool along_u, double limit);
/* Start of the first window that begins after `place`; false: there is none. */
bool chords_next_window(const struct chords *, double place, double *out_start);

#endif

/* traverse.h - a tape run round a room, and the closing of it.
 * Units: any one unit of length (the site walks in nanometres, whose sums are exact);
 * degrees anticlockwise from east. Owns: results live in the arena given.
 * Source: compass rule, TV1 to TV7 in docs/sources.md; least squares by Gauss and Newton,
 * TR1 to TR5. */
#ifndef SITE_TRAVERSE_H
#define SITE_TRAVERSE_H
#include "base/arena.h"
#include "geometry/point.h"

/* Leg i runs `lengths[i]` on `headings_deg[i]` from corner i; the last one should end
 * where the first one began. */
struct traverse {
	struct point start;
	const double *lengths, *headings_deg;
	size_t count;
};

/* A length taped across, from corner to corner. */
struct traverse_tie {
	size_t from, to;
	double length;
};

struct traverse_closing {
	struct point *corners; /* `count` of them, the first is the start */
	struct point error;    /* where the run ended, less where it began */
	double error_length;
	double perimeter; /* sum of the lengths as taped */
	double misfit;    /* greatest change to a length as taped, ties among them */
};

/* The heading of each leg, when after leg i one turns left by `turns_deg[i]`. */
double *traverse_headings(struct arena *, double first_deg, const double *turns_deg, size_t count);
/* Spreads the closing error over the legs in proportion to their lengths (compass rule). */
struct traverse_closing traverse_close(struct arena *, const struct traverse *);
/* Fits the corners to all lengths, ties too, by least squares. The first leg keeps its
 * heading; the other headings decide only what the lengths leave free. Cost: the cube of
 * the count. */
struct traverse_closing traverse_adjust(struct arena *, const struct traverse *,
                                        const struct traverse_tie *ties, size_t tie_count);

#endif

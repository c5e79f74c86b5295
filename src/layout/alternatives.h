/* alternatives.h - how else the tile of one lay could start, lie or be jointed, and the smallest
 * cut each would leave: why it lies as it does, and what would cure a cut that is too small.
 * Units: mm, degrees. Owns: arena. Source: docs/sources.md R-W03, R-W05 (trade teaching). */
#ifndef LAYOUT_ALTERNATIVES_H
#define LAYOUT_ALTERNATIVES_H
#include "layout/least_cut.h"
#include "layout/placed.h"

enum alternative_kind {
	ALTERNATIVE_START, /* a whole tile at `at`, all else the best it can be */
	ALTERNATIVE_ALONG, /* the same, the tile turned to run with the carried joint `at` */
	ALTERNATIVE_FREE,  /* no start, no full-at, no centre-on of the plan */
	ALTERNATIVE_JOINT, /* tile joints of `joint` */
	ALTERNATIVE_TURN,  /* the tile turned a quarter */
};

struct alternative {
	enum alternative_kind kind;
	const char *at;  /* wall, doorway or slab joint; NULL: none */
	double turn_deg; /* anticlockwise from the lay's angle */
	double joint;
	struct least_cut least;
};

struct alternatives {
	struct least_cut taken; /* of the position that the lay has */
	struct alternative *items;
	size_t count;
};

/* Starts at the doorways, the carried joints and the longest wall on each side, where the
 * position has no whole tile now; and where its least cut is small the cures: free of the plan's
 * wishes, each wider joint up to the first that leaves none, a quarter turn. */
const struct alternatives *alternatives_of_lay(struct arena *, const struct rules *,
                                               const struct placed_lay *);
/* It leaves no small cut. */
bool alternative_cures(const struct alternative *);

#endif

/* sample_floor.h - a placed floor filled by hand, for tests of sheets without any pass.
 * One room of 20 ft by 15 ft, running tile, a column, a doorway, two cracks (one held), a
 * construction joint. Owns: the arena given. */
#ifndef SUPPORT_SAMPLE_FLOOR_H
#define SUPPORT_SAMPLE_FLOOR_H
#include "findings/finding.h"
#include "layout/placed.h"

struct sample_floor {
	const struct site *site;
	const struct placed *placed;
	const struct findings *findings;
};

struct sample_floor sample_floor_make(struct arena *);

#endif

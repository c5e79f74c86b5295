/* soft_round.h - the closed soft joint round a unit that has no ends, as a crack that comes back to
 * its start.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_ROUND_H
#define LAYOUT_SOFT_ROUND_H
#include "layout/soft_side.h"

/* The least of all walks that go once round the unit's crossed tile; its first and last step are
 * parts of one edge. False: none does, for the tile lies against a border, or none is crossed. */
bool soft_round_walk(struct arena *, const struct soft_setting *, struct soft_unit *,
                     struct soft_walk *out_walk);

#endif

/* soft_bars.h - what keeps the joint of one side of a unit on that side.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_BARS_H
#define LAYOUT_SOFT_BARS_H
#include "layout/soft_unit.h"

/* What no joint of the side from one end to another may cross: the way on from other ends, and
 * from ends that are split; of two ends also a line across the side that is not meant. */
struct corridor_bars soft_bars(struct arena *, const struct soft_setting *,
                               const struct soft_unit *, const struct soft_end *from,
                               const struct soft_end *to);

/* From the middle of a joint along the outline square outwards, to where it would meet the crossed
 * tile again. */
struct segment soft_spoke(const struct soft_setting *, struct ring outline, struct segment joint);

#endif

/* soft_round.h - soft joints that go round all of a unit's crossed tile: closed, as round a crack
 * that comes back to its start, or from an obstacle in such a crack's way back to that obstacle.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_ROUND_H
#define LAYOUT_SOFT_ROUND_H
#include "layout/soft_search.h"

/* The least of all walks that go once round the unit's crossed tile; its first and last step are
 * parts of one edge. False: none does, for the tile lies against a border, or none is crossed. */
bool soft_round_walk(struct arena *, const struct soft_setting *, struct soft_unit *,
                     struct soft_walk *out_walk);
/* The least walk between the ports that crosses a ray, `out` of the tile, once; anticlockwise round
 * the ray's beginning, or not. The bars of the corridor's side hold too. */
bool soft_round_walk_over(struct arena *, const struct soft_setting *, struct soft_unit *,
                          struct segment ray, bool anticlockwise, const struct soft_ports *from,
                          const struct soft_ports *to, struct soft_walk *out_walk);

#endif

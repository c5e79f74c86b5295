/* movement_anchor.h - the place whose tile field joints leave where setting out put it: the
 * stated start, the edge that is to show whole tile or be centred on, else the middle of the
 * part, where the control lines cross.
 * Units: mm in the lay's own axes. Source: contract, "Movement joints". */
#ifndef LAYOUT_MOVEMENT_ANCHOR_H
#define LAYOUT_MOVEMENT_ANCHOR_H
#include "layout/field.h"

/* Its coordinate across field joints along u (along v). */
double movement_anchor(const struct field *, size_t part, bool along_u);

#endif

/* hatch_turn.h - hatches that lie over tile, turned so that they run neither along its joints
 * nor along the sheet, where they would look like tile.
 * Units: degrees, by steps that a style may have. Source: ISO 128-3:2022 (R-D10): hatching at
 * 45 degrees to the main outlines; here the outlines are those of the tile. */
#ifndef SHEETS_HATCH_TURN_H
#define SHEETS_HATCH_TURN_H
#include "drawing/style.h"
#include "layout/placed.h"

/* The style with its hatches over tile as they suit all lays; lives in the arena. */
const struct style *hatch_turned(struct arena *, const struct style *, const struct placed *);

#endif

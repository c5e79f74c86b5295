/* strip_offsets.h - how far the two edges of a strip lie from its crack, on the plan: what a
 * crew measures when it lays the membrane.
 * Units: mm of the lay's axes. */
#ifndef SHEETS_STRIP_OFFSETS_H
#define SHEETS_STRIP_OFFSETS_H
#include "sheets/lay_view.h"
#include "sheets/sheet.h"

/* Square to the longest stretch of each crack that the strip isolates, once to each side. */
void strip_offsets_draw(struct sheet *, const struct lay_view *, const struct strip *);

#endif

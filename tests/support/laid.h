/* laid.h - a floor laid out from the text of a plan, for tests of the passes.
 * Owns: the arena given. A text with an error fails the test. */
#ifndef SUPPORT_LAID_H
#define SUPPORT_LAID_H
#include "layout/placed.h"

/* The lay of a plan that has one. */
const struct placed_lay *laid_from_text(struct arena *, const char *text);
/* A room `wide` by `deep` mm of grid tile of `tile` mm with a 3 mm joint that starts 100 mm
 * in from the south-west corner, under a sheet membrane; `more` is written into the room,
 * `cracks` beside it. */
const struct placed_lay *laid_room(struct arena *, int wide, int deep, int tile, const char *more,
                                   const char *cracks);

#endif

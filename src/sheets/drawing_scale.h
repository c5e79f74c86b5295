/* drawing_scale.h - the scales a sheet may have, as a rule has them on its edge.
 * A scale is floor mm per paper mm: 48 for 1/4 in to the foot.
 * Source: docs/sources.md R-D25 to R-D27. */
#ifndef SHEETS_DRAWING_SCALE_H
#define SHEETS_DRAWING_SCALE_H
#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"

/* The standard scales of a unit system, largest first; 0 past the last. */
double drawing_scale_at(bool inches, size_t index);
/* The scales of sections through a joint, in the same way. */
double detail_scale_at(bool inches, size_t index);
/* Reads `1:50`, `1/4in`, `1 1/2in`; false where the text is neither. */
bool drawing_scale_parse(const char *text, double *out_scale);
/* As printed: `1:50`, or `1/4" = 1'-0"` where inches are used and it is an architect's scale. */
const char *drawing_scale_text(struct arena *, bool inches, double scale);

#endif

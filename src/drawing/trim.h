/* trim.h - hatch and thin repeated lines make room for text, so that it reads on white and
 * nothing heavier is painted over.
 * Units: paper mm. Source: docs/sources.md R-D10. */
#ifndef DRAWING_TRIM_H
#define DRAWING_TRIM_H
#include "drawing/list.h"

void trim_under_text(struct list *);

#endif

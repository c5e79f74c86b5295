/* slab_readings.h - what was measured on the slab: a tag where it was taken, a line for each
 * beside the drawing, and whether it passes. */
#ifndef SHEETS_SLAB_READINGS_H
#define SHEETS_SLAB_READINGS_H
#include "drawing/view.h"
#include "sheets/notes.h"

void slab_readings_draw(struct sheet *, const struct view *);
void slab_readings_list(struct notes *);

#endif

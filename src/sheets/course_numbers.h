/* course_numbers.h - the courses counted from the control lines, numbered on the drawing.
 * Only patterns with courses have them. */
#ifndef SHEETS_COURSE_NUMBERS_H
#define SHEETS_COURSE_NUMBERS_H
#include "sheets/lay_view.h"
#include "sheets/sheet.h"

/* Beside the other control line, 1 next to the line they are counted from; every one where
 * there is room for it, else every fifth. */
void course_numbers_draw(struct sheet *, const struct lay_view *, bool along_u);

#endif

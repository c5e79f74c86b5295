/* part_marks.h - what a sheet that shows a part of a floor says of the other parts: match
 * lines with the sheet and zone where the floor goes on, and a key plan with the part shaded.
 * Units: paper mm. Source: docs/sources.md M04. */
#ifndef SHEETS_PART_MARKS_H
#define SHEETS_PART_MARKS_H
#include "drawing/view.h"
#include "sheets/sheet.h"

/* Ends the view of a part; nothing to do on a sheet that shows all. Takes the key plan's
 * height off the foot of sheet->column. */
void part_marks_draw(struct sheet *, const struct view *);

#endif

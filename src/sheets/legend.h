/* legend.h - the marks this sheet used, each with its meaning; nothing else.
 * Drawn last, when it is known what was used. */
#ifndef SHEETS_LEGEND_H
#define SHEETS_LEGEND_H
#include "sheets/sheet.h"

/* True where all marks that the sheet used find room in `box`. */
bool legend_fits(const struct sheet *, struct paper_box box);
/* Fills `box` by columns. */
void legend_draw(struct sheet *, struct paper_box box);
/* One mark with its meaning, its upper left corner at (x, y). */
void legend_draw_entry(struct sheet *, enum text_role, enum legend_mark, double x, double y);
double legend_row_height(void);

#endif

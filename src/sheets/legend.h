/* legend.h - the marks this sheet used, each with its meaning; nothing else.
 * Drawn last, when it is known what was used. */
#ifndef SHEETS_LEGEND_H
#define SHEETS_LEGEND_H
#include "sheets/sheet.h"

/* Fills `box` by columns. Gives how many marks found no room (0 is expected). */
size_t legend_draw(struct sheet *, struct paper_box box);

#endif

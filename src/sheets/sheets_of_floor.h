/* sheets_of_floor.h - sheets of the whole floor: one function each, all of one form.
 * Owns: the draft's arena. */
#ifndef SHEETS_SHEETS_OF_FLOOR_H
#define SHEETS_SHEETS_OF_FLOOR_H
#include "sheets/sheet.h"

/* Every joint that is not grouted: where, how wide, why; panel sizes. */
enum sheet_fit joints_sheet_draw(struct sheet *);
/* The count as a table, partial beside full. */
enum sheet_fit count_sheet_draw(struct sheet *);
/* Tile with control lines, first tile, cuts and courses; whole and cut told apart. */
enum sheet_fit setting_out_draw(struct sheet *);
/* Strips or full coverage: outline, corners, pieces. */
enum sheet_fit membrane_draw(struct sheet *);
/* Sections of its joints and strips, one of each kind. */
enum sheet_fit details_sheet_draw(struct sheet *);
/* Those that the sheet before had no room for; false: not one of them fits. */
bool details_sheet_continue(struct sheet *, struct details *);
/* What the set is: questions by who answers, defaults, materials, cautions, sheets. */
enum sheet_fit read_first_draw(struct sheet *);

#endif

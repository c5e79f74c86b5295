/* changes_sheet.h - the change order: the floor clouded, what was changed and why, what each
 * line costs, with a box to accept or decline it, and room to sign.
 * Owns: the draft's arena. Of a draft that compares something. */
#ifndef SHEETS_CHANGES_SHEET_H
#define SHEETS_CHANGES_SHEET_H
#include "sheets/sheet.h"

enum sheet_fit changes_sheet_draw(struct sheet *);

#endif

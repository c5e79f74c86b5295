/* column.h - the text column of a sheet, filled from its top.
 * Units: paper mm. Each call takes its height off sheet->column. */
#ifndef SHEETS_COLUMN_H
#define SHEETS_COLUMN_H
#include "sheets/sheet.h"

void column_heading(struct sheet *, const char *text);
void column_paragraph(struct sheet *, enum text_role, const char *text);
/* `mark` hangs at the left of the text: `1`, a dash, the id of an element. */
void column_item(struct sheet *, const char *mark, const char *text);
/* The same in the height of tables, for what is looked up rather than read. */
void column_row(struct sheet *, const char *mark, double indent, const char *text);
/* A box with a heavy border: what must not be missed. */
void column_warning(struct sheet *, const char *text);
/* Clear space of `height`. */
void column_space(struct sheet *, double height);
/* Height still free. */
double column_room(const struct sheet *);

#endif

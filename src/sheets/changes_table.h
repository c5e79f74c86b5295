/* changes_table.h - quantities, money and days of each line of a change order, before and
 * after, as a table.
 * Owns: the draft's arena. */
#ifndef SHEETS_CHANGES_TABLE_H
#define SHEETS_CHANGES_TABLE_H
#include "sheets/table.h"

struct table *changes_table(struct sheet *);
/* How a line is called in lists: its mark, with the sign of a triangle. */
const char *changes_mark(const struct draft *, const struct comparison_line *);

#endif

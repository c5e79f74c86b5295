/* csv.h - cells of a table for spreadsheets: RFC 4180, UTF-8.
 * A cell that a spreadsheet would take for a formula is quoted and led by an apostrophe. */
#ifndef BASE_CSV_H
#define BASE_CSV_H
#include "base/strbuf.h"

void csv_add_cell(struct strbuf *, const char *text);
/* The line end of a row. */
void csv_end_row(struct strbuf *);

#endif

/* text_table.h - rows and columns to read on a screen.
 * Owns: arena. A column without any text takes no place. */
#ifndef BASE_TEXT_TABLE_H
#define BASE_TEXT_TABLE_H
#include "base/array.h"
#include "base/strbuf.h"

enum { TEXT_TABLE_COLUMNS_MOST = 12 };

struct text_row {
	const char *cells[TEXT_TABLE_COLUMNS_MOST]; /* one for each column */
};

struct text_table {
	size_t column_count;
	unsigned right; /* set of columns whose texts end at their right edge */
	ARRAY_OF(struct text_row) rows;
};

/* Adds the table, each line after `indent` blanks. */
void text_table_write(const struct text_table *, size_t indent, struct strbuf *);

#endif

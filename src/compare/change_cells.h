/* change_cells.h - the columns of a change order, the same in every form of it, and what a
 * quantity, a sum of money or a number of days says in them.
 * Owns: arena. */
#ifndef COMPARE_CHANGE_CELLS_H
#define COMPARE_CHANGE_CELLS_H
#include "compare/row_change.h"

/* Column, its name in tables for spreadsheets, the key of its head. */
#define CHANGE_COLUMNS(COLUMN)                                             \
	COLUMN(LINE, "line", "changes.line")                               \
	COLUMN(KIND, "kind", "")                                           \
	COLUMN(WHAT, "what", "count.what")                                 \
	COLUMN(WHERE, "where", "count.where")                              \
	COLUMN(BEFORE, "before", "compare.before")                         \
	COLUMN(AFTER, "after", "compare.after")                            \
	COLUMN(MORE, "difference", "compare.difference")                   \
	COLUMN(UNIT, "unit", "count.unit")                                 \
	COLUMN(RATE, "rate", "count.rate")                                 \
	COLUMN(PRICE_BEFORE, "price-before", "compare.price-before")       \
	COLUMN(PRICE_AFTER, "price-after", "compare.price-after")          \
	COLUMN(PRICE_MORE, "price-difference", "compare.price-difference") \
	COLUMN(HOW, "how", "count.how")                                    \
	COLUMN(FOUND, "found", "")

enum change_column {
#define COLUMN(id, name, key) CHANGE_##id,
	CHANGE_COLUMNS(COLUMN)
#undef COLUMN
		CHANGE_COLUMN_COUNT
};

struct change_cells {
	const char *texts[CHANGE_COLUMN_COUNT]; /* NULL: blank */
};

const char *change_column_name(enum change_column);
const char *change_column_key(enum change_column);
/* Numbers that are set to the right. */
bool change_column_is_number(enum change_column);

/* In the names of the count, differences with their sign; no line, kind and date. */
struct change_cells change_cells_of_row(struct arena *, const struct row_change *);
/* The same as it is read: in the language of the words, more with a plus. */
struct change_cells change_cells_read(struct arena *, const struct row_change *,
                                      const struct words *);

#endif

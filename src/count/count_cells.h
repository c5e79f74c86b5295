/* count_cells.h - the columns of a count, the same in every form of it, and what a row says in
 * them.
 * Owns: arena. */
#ifndef COUNT_COUNT_CELLS_H
#define COUNT_COUNT_CELLS_H
#include "count/count.h"

/* Column, its name; the key of its head is count.NAME. */
#define COUNT_COLUMNS(COLUMN)    \
	COLUMN(WHAT, "what")     \
	COLUMN(WHERE, "where")   \
	COLUMN(AMOUNT, "amount") \
	COLUMN(UNIT, "unit")     \
	COLUMN(RATE, "rate")     \
	COLUMN(PRICE, "price")   \
	COLUMN(HOW, "how")

enum count_column {
#define COLUMN(id, name) COUNT_IN_##id,
	COUNT_COLUMNS(COLUMN)
#undef COLUMN
		COUNT_COLUMN_COUNT
};

struct count_cells {
	const char *texts[COUNT_COLUMN_COUNT];
};

const char *count_column_name(enum count_column);
bool count_column_is_number(enum count_column);

/* In the names of the count, which are the same in every language. */
struct count_cells count_cells_of(struct arena *, const struct count_row *);
/* As they are read, in the language of the words. Sums of money have a price alone. */
struct count_cells count_cells_read(struct arena *, const struct count_row *, const struct words *);
/* Heads to read; rates and prices, in their currency, only where there are any: else NULL. */
struct count_cells count_cells_heads(struct arena *, const struct count *, const struct words *);

#endif

/* table.h - rows and columns of text: as wide as their texts, the last column wrapped.
 * Units: paper mm. Owns: the draft's arena.
 * What does not fit its place goes on on a further sheet, under the heads once more. */
#ifndef SHEETS_TABLE_H
#define SHEETS_TABLE_H
#include "sheets/sheet.h"

enum { TABLE_COLUMNS_MOST = 10 };

struct table_row {
	const char *cells[TABLE_COLUMNS_MOST]; /* NULL: blank */
	bool is_strong;                        /* a total, or the name of what follows */
	bool is_kept;                          /* not without the row after it */
};

struct table {
	const char *heads[TABLE_COLUMNS_MOST];
	size_t column_count;
	unsigned right; /* set of columns whose texts end at their right edge */
	unsigned ditto; /* set of those with a ditto mark for what stands above on the sheet */
	ARRAY_OF(struct table_row) rows;
	size_t next;   /* the first row that is not set yet */
	bool is_tight; /* its rows stand as close as can be read */
	double cap;    /* 0: the style's for tables */
};

void table_add(struct sheet *, struct table *, struct table_row);
/* Leaves out the columns that no row has anything in. */
void table_drop_blank(struct table *);
/* True where all rows that are left find room in `box`. */
bool table_fits(const struct sheet *, const struct table *, struct paper_box box);
/* Sets the rows that fit; what is left becomes sheet->more. Gives the y under the last. */
double table_draw(struct sheet *, struct table *, struct paper_box box);
/* To be set in the height of notes, where all of it finds room so on this sheet in lines that
 * need no wrapping; else nothing happens. */
bool table_enlarge(const struct sheet *, struct table *);
/* The same all over the drawing's place, clear of the centring marks: several times side by
 * side where it is long and the sheet is wide. */
void table_draw_sheet(struct sheet *, struct table *);
/* The column of text, for a table alone in it. */
struct paper_box table_column(const struct sheet *);
/* Under the text in sheet->column, its rows close where that makes it fit; false: it does not all
 * fit there, and none is set. */
bool table_carry(struct sheet *, struct table *);
/* Under the text in sheet->column where all of it fits there, else on a further sheet; an
 * empty one nowhere. */
void table_place(struct sheet *, struct table *);

#endif

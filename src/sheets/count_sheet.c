/* count_sheet.c - the count as a table, all over the sheet. */
#include <string.h>

#include "count/count.h"
#include "sheets/sheets_of_floor.h"
#include "sheets/table.h"
#include "units/number.h"

enum { WHAT, WHERE, AMOUNT, UNIT, HOW, COLUMNS };

static struct table_row count_row(const struct draft *draft, const struct count_row *row)
{
	struct strbuf amount = strbuf_in(draft->arena);
	const char *what = count_row_what(draft->arena, row, draft->words);
	const char *unit = arena_printf(draft->arena, "unit.%s", row->unit);
	number_add(&amount, row->amount, row->decimals);
	return (struct table_row){
		.cells = {what,
	                  row->is_total ? draft_word(draft, "count.total")
	                                : draft_tag(draft, row->where),
	                  amount.text, draft_word(draft, unit), row->how},
		.is_strong = row->is_total,
	};
}

enum sheet_fit count_sheet_draw(struct sheet *sheet)
{
	static const char *const HEADS[COLUMNS] = {"count.what", "count.where", "count.amount",
	                                           "count.unit", "count.how"};
	const struct draft *draft = sheet->draft;
	const struct count *count = count_from_placed(draft->arena, draft->placed, draft->words);
	struct table table = {.column_count = COLUMNS, .right = 1u << AMOUNT};
	for (int k = 0; k < COLUMNS; k++)
		table.heads[k] = draft_word(draft, HEADS[k]);
	for (size_t i = 0; i < count->row_count; i++)
		table_add(sheet, &table, count_row(draft, &count->rows[i]));
	table_draw(sheet, &table, sheet->drawing);
	return SHEET_FITS;
}

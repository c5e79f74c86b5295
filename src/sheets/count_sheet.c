/* count_sheet.c - the count as a table, all over the sheet. */
#include <string.h>

#include "count/count.h"
#include "sheets/sheets_of_floor.h"
#include "sheets/table.h"
#include "units/number.h"

enum { WHAT, WHERE, AMOUNT, UNIT, RATE, PRICE, HOW, COLUMNS };

/* What stands in each column; NULL in those that a count without rates has not. */
struct cells {
	const char *texts[COLUMNS];
};

static struct cells heads_of(const struct draft *draft, const struct count *count)
{
	static const char *const HEADS[COLUMNS] = {"count.what", "count.where", "count.amount",
	                                           "count.unit", "count.rate",  "count.price",
	                                           "count.how"};
	struct cells heads;
	for (int k = 0; k < COLUMNS; k++)
		heads.texts[k] = draft_word(draft, HEADS[k]);
	if (count->currency == NULL)
		heads.texts[RATE] = heads.texts[PRICE] = NULL;
	else
		heads.texts[PRICE] =
			arena_printf(draft->arena, "%s %s", heads.texts[PRICE], count->currency);
	return heads;
}

static struct cells cells_of(const struct draft *draft, const struct count_row *row)
{
	struct strbuf amount = strbuf_in(draft->arena);
	const char *unit = arena_printf(draft->arena, "unit.%s", row->unit);
	number_add(&amount, row->amount, row->decimals);
	return (struct cells){{
		[WHAT] = count_row_what(draft->arena, row, draft->words),
		[WHERE] = row->is_total ? draft_word(draft, "count.total")
	                                : draft_tag(draft, row->where),
		[AMOUNT] = amount.text,
		[UNIT] = draft_word(draft, unit),
		[RATE] = row->rate,
		[PRICE] = count_row_price(draft->arena, row),
		[HOW] = row->how,
	}};
}

enum sheet_fit count_sheet_draw(struct sheet *sheet)
{
	const struct draft *draft = sheet->draft;
	const struct count *count = count_from_placed(draft->arena, draft->placed, draft->words);
	struct cells heads = heads_of(draft, count);
	struct table table = {.column_count = 0};
	for (int k = 0; k < COLUMNS; k++) {
		if (heads.texts[k] == NULL)
			continue;
		if (k == AMOUNT || k == RATE || k == PRICE)
			table.right |= 1u << table.column_count;
		table.heads[table.column_count++] = heads.texts[k];
	}
	for (size_t i = 0; i < count->row_count; i++) {
		struct cells cells = cells_of(draft, &count->rows[i]);
		struct table_row row = {.is_strong = count->rows[i].is_total};
		size_t filled = 0;
		for (int k = 0; k < COLUMNS; k++)
			if (heads.texts[k] != NULL)
				row.cells[filled++] = cells.texts[k];
		table_add(sheet, &table, row);
	}
	table_draw(sheet, &table, table_whole_sheet(sheet));
	return SHEET_FITS;
}

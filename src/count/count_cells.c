#include "count/count_cells.h"

#include <string.h>

#include "count/decimal.h"
#include "units/number.h"

const char *count_column_name(enum count_column column)
{
	static const char *const names[] = {
#define COLUMN(id, name) name,
		COUNT_COLUMNS(COLUMN)
#undef COLUMN
	};
	return names[column];
}

bool count_column_is_number(enum count_column column)
{
	return column == COUNT_IN_AMOUNT || column == COUNT_IN_RATE || column == COUNT_IN_PRICE;
}

struct count_cells count_cells_of(struct arena *arena, const struct count_row *row)
{
	return (struct count_cells){{
		[COUNT_IN_WHAT] = row->what,
		[COUNT_IN_WHERE] = row->where,
		[COUNT_IN_AMOUNT] = number_text(arena, row->amount, row->decimals),
		[COUNT_IN_UNIT] = row->unit,
		[COUNT_IN_RATE] = row->rate,
		[COUNT_IN_PRICE] = row->is_priced ? decimal_text(arena, row->cents) : "",
		[COUNT_IN_HOW] = row->how,
	}};
}

struct count_cells count_cells_read(struct arena *arena, const struct count_row *row,
                                    const struct words *words)
{
	struct count_cells cells = count_cells_of(arena, row);
	bool is_money = strcmp(row->unit, "sum") == 0;
	cells.texts[COUNT_IN_WHAT] = count_row_what(arena, row, words);
	cells.texts[COUNT_IN_WHERE] = count_row_where(row, words);
	cells.texts[COUNT_IN_UNIT] = words_find(words, arena_printf(arena, "unit.%s", row->unit));
	if (is_money)
		cells.texts[COUNT_IN_AMOUNT] = cells.texts[COUNT_IN_UNIT] = "";
	return cells;
}

struct count_cells count_cells_heads(struct arena *arena, const struct count *count,
                                     const struct words *words)
{
	struct count_cells heads;
	for (int k = 0; k < COUNT_COLUMN_COUNT; k++)
		heads.texts[k] =
			words_find(words, arena_printf(arena, "count.%s",
		                                       count_column_name((enum count_column)k)));
	if (count->currency == NULL)
		heads.texts[COUNT_IN_RATE] = heads.texts[COUNT_IN_PRICE] = NULL;
	else
		heads.texts[COUNT_IN_PRICE] =
			arena_printf(arena, "%s %s", heads.texts[COUNT_IN_PRICE], count->currency);
	return heads;
}

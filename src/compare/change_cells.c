#include "compare/change_cells.h"

#include "compare/change_text.h"
#include "units/number.h"

const char *change_column_name(enum change_column column)
{
	static const char *const names[] = {
#define COLUMN(id, name, key) name,
		CHANGE_COLUMNS(COLUMN)
#undef COLUMN
	};
	return names[column];
}

const char *change_column_key(enum change_column column)
{
	static const char *const keys[] = {
#define COLUMN(id, name, key) key,
		CHANGE_COLUMNS(COLUMN)
#undef COLUMN
	};
	return keys[column];
}

bool change_column_is_number(enum change_column column)
{
	return (column >= CHANGE_BEFORE && column <= CHANGE_MORE) ||
	       (column >= CHANGE_RATE && column <= CHANGE_PRICE_MORE);
}

struct change_cells change_cells_of_row(struct arena *arena, const struct row_change *change)
{
	const struct count_row *row = row_change_row(change);
	int64_t more = change->cents_after - change->cents_before;
	return (struct change_cells){{
		[CHANGE_WHAT] = row->what,
		[CHANGE_WHERE] = row->where,
		[CHANGE_BEFORE] = change_text_amount(arena, change, change->amount_before),
		[CHANGE_AFTER] = change_text_amount(arena, change, change->amount_after),
		[CHANGE_MORE] = number_text(arena, change->amount_more, change->decimals),
		[CHANGE_UNIT] = row->unit,
		[CHANGE_RATE] = change_text_rate(arena, change),
		[CHANGE_PRICE_BEFORE] = change_text_cents(arena, change, change->cents_before),
		[CHANGE_PRICE_AFTER] = change_text_cents(arena, change, change->cents_after),
		[CHANGE_PRICE_MORE] = change_text_cents(arena, change, more),
		[CHANGE_HOW] = row->how,
	}};
}

struct change_cells change_cells_read(struct arena *arena, const struct row_change *change,
                                      const struct words *words)
{
	const struct count_row *row = row_change_row(change);
	struct change_cells cells = change_cells_of_row(arena, change);
	cells.texts[CHANGE_WHAT] = count_row_what(arena, row, words);
	cells.texts[CHANGE_WHERE] = count_row_where(row, words);
	cells.texts[CHANGE_UNIT] = words_find(words, arena_printf(arena, "unit.%s", row->unit));
	cells.texts[CHANGE_MORE] = change_text_more(arena, change);
	cells.texts[CHANGE_PRICE_MORE] = change_text_cents_more(arena, change);
	return cells;
}

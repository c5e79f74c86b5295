/* count_sheet.c - the count as a table, all over the sheet; what is ordered and paid, in short,
 * beside it. Of a change order each row that has changed bears the mark of its line. */
#include <string.h>

#include "count/count_cells.h"
#include "sheets/changes_table.h"
#include "sheets/sheets_of_floor.h"
#include "sheets/table.h"

/* Before the columns of the count: the line of a change order that changed a row. */
enum { LINE, FIRST, COLUMNS = FIRST + COUNT_COLUMN_COUNT };

struct cells {
	const char *texts[COLUMNS]; /* of heads NULL: the count has no such column */
};

static struct cells beside(const char *line, const struct count_cells *count)
{
	struct cells cells = {{[LINE] = line}};
	for (int k = 0; k < COUNT_COLUMN_COUNT; k++)
		cells.texts[FIRST + k] = count->texts[k];
	return cells;
}

static struct cells heads_of(const struct draft *draft, const struct count *count)
{
	struct count_cells heads = count_cells_heads(draft->arena, count, draft->words);
	bool is_compared = draft->comparison != NULL;
	return beside(is_compared ? draft_word(draft, "changes.line") : NULL, &heads);
}

static bool is_same(const struct count_row *a, const struct count_row *b)
{
	return strcmp(a->what, b->what) == 0 && strcmp(a->where, b->where) == 0;
}

/* Marks of the lines that change a row; NULL: none does. */
static const char *marks_of(const struct draft *draft, const struct count_row *row)
{
	struct strbuf marks = strbuf_in(draft->arena);
	const struct comparison *comparison = draft->comparison;
	for (size_t i = 0; comparison != NULL && i < comparison->line_count; i++) {
		const struct comparison_line *line = &comparison->lines[i];
		const struct row_changes *rows = &line->difference.rows;
		bool is_changed = false;
		for (size_t k = 0; k < rows->list.count; k++)
			is_changed =
				is_changed || is_same(row_change_row(&rows->list.items[k]), row);
		if (is_changed)
			strbuf_printf(&marks, "%s%s", marks.length > 0 ? " " : "",
			              changes_mark(draft, line));
	}
	return marks.length > 0 ? marks.text : NULL;
}

static struct count_cells read_row(const struct draft *draft, const struct count_row *row)
{
	struct count_cells cells = count_cells_read(draft->arena, row, draft->words);
	if (!row->is_total)
		cells.texts[COUNT_IN_WHERE] = draft_tag(draft, row->where);
	return cells;
}

static struct cells cells_of(const struct draft *draft, const struct count_row *row)
{
	struct count_cells cells = read_row(draft, row);
	return beside(marks_of(draft, row), &cells);
}

static void add_heads(struct table *table, const struct cells *heads)
{
	for (int k = 0; k < COLUMNS; k++) {
		if (heads->texts[k] == NULL)
			continue;
		unsigned column = 1u << table->column_count;
		if (k >= FIRST && count_column_is_number((enum count_column)(k - FIRST)))
			table->right |= column;
		if (k == FIRST + COUNT_IN_WHAT || k == FIRST + COUNT_IN_HOW)
			table->ditto |= column;
		table->heads[table->column_count++] = heads->texts[k];
	}
}

static void add_row(struct sheet *sheet, struct table *table, const struct cells *heads,
                    const struct cells *cells, bool is_strong)
{
	struct table_row row = {.is_strong = is_strong};
	size_t filled = 0;
	for (int k = 0; k < COLUMNS; k++)
		if (heads->texts[k] != NULL)
			row.cells[filled++] = cells->texts[k];
	table_add(sheet, table, row);
}

/* ---- in short ---- */

/* What a purchase order, a bid and a calendar are made of: packages of one material each, and
 * else the totals. */
static bool is_in_short(const struct count_row *row)
{
	static const struct {
		enum count_kind kind;
		bool is_by_material;
	} kinds[] = {
		{COUNT_TILE_BOX, true},        {COUNT_TILE_AREA, true},
		{COUNT_MEMBRANE_PAIL, true},   {COUNT_MEMBRANE_ROLL, true},
		{COUNT_MORTAR_BAG, false},     {COUNT_GROUT_BAG, false},
		{COUNT_SEALANT_TUBE, false},   {COUNT_ROD, false},
		{COUNT_TAPE, false},           {COUNT_PROFILE, false},
		{COUNT_LABOUR, false},         {COUNT_WAIT_DAYS, false},
		{COUNT_PRICE_MATERIAL, false}, {COUNT_PRICE_LABOUR, false},
		{COUNT_PRICE_MARKUP, false},   {COUNT_PRICE_TOTAL, false},
	};
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		if (row->kind == kinds[i].kind)
			return row->is_total != kinds[i].is_by_material;
	return false;
}

static struct table_row short_row(const struct draft *draft, const struct count *count,
                                  const struct count_row *row)
{
	struct count_cells cells = read_row(draft, row);
	bool is_money = *cells.texts[COUNT_IN_AMOUNT] == '\0';
	const char *what = cells.texts[COUNT_IN_WHAT];
	if (!row->is_total)
		what = draft_text(draft, "changes.quantity", {"what", what},
		                  {"where", row->element});
	return (struct table_row){{is_money ? cells.texts[COUNT_IN_PRICE]
	                                    : cells.texts[COUNT_IN_AMOUNT],
	                           is_money ? count->currency : cells.texts[COUNT_IN_UNIT], what},
	                          .is_strong = row->kind == COUNT_PRICE_TOTAL};
}

static void draw_short(struct sheet *sheet, const struct count *count)
{
	const struct draft *draft = sheet->draft;
	struct table table = {.heads = {draft_word(draft, "count.amount"),
	                                draft_word(draft, "count.unit"),
	                                draft_word(draft, "count.in-short")},
	                      .column_count = 3,
	                      .right = 1u << 0};
	for (size_t i = 0; i < count->row_count; i++)
		if (is_in_short(&count->rows[i]))
			table_add(sheet, &table, short_row(draft, count, &count->rows[i]));
	if (table.rows.count > 0 && table_fits(sheet, &table, table_column(sheet)))
		table_draw(sheet, &table, table_column(sheet));
}

/* The sum of a single row says nothing more: that row stands for it. */
static bool is_alone(const struct count *count, size_t index)
{
	const struct count_row *rows = count->rows;
	bool is_first = index == 0 || strcmp(rows[index - 1].what, rows[index].what) != 0;
	return is_first && !rows[index].is_total && index + 1 < count->row_count &&
	       rows[index + 1].is_total && strcmp(rows[index + 1].what, rows[index].what) == 0;
}

enum sheet_fit count_sheet_draw(struct sheet *sheet)
{
	const struct draft *draft = sheet->draft;
	const struct count *count = count_from_placed(draft->arena, draft->placed, draft->words);
	struct cells heads = heads_of(draft, count);
	struct table table = {.column_count = 0};
	sheet_release_band(sheet);
	add_heads(&table, &heads);
	for (size_t i = 0; i < count->row_count; i++) {
		struct cells cells = cells_of(draft, &count->rows[i]);
		bool alone = is_alone(count, i);
		add_row(sheet, &table, &heads, &cells, alone || count->rows[i].is_total);
		i += alone;
	}
	draw_short(sheet, count);
	table_draw_sheet(sheet, &table);
	return SHEET_FITS;
}

#include "sheets/table.h"

#include <math.h>
#include <string.h>

/* Paper mm, own design: white between columns, over and under a row's text, and the least
 * width that the wrapped column is set in; and the most that it needs beside another block. */
static const double GAP = 4, PAD = 1.1, WRAP_LEAST = 22, WRAP_MOST = 100;
/* The least white over and under a row, where that saves a further sheet. */
static const double PAD_LEAST = 0.75;
static const double COLUMN_INSET = 4, SHEET_INSET = 2, BLOCK_GAP = 10;
/* A text as wide as its column is not wrapped for the last bits of its width. */
static const double WRAP_SLACK = 0.01;
static const char DITTO[] = "″";

struct layout {
	const struct draft *draft;
	const struct table *table;
	struct paper_box box;
	double x[TABLE_COLUMNS_MOST], width[TABLE_COLUMNS_MOST];
	double cap, pad;
};

void table_add(struct sheet *sheet, struct table *table, struct table_row row)
{
	*array_push(sheet->draft->arena, &table->rows) = row;
}

static bool is_blank(const struct table *table, size_t column)
{
	for (size_t i = 0; i < table->rows.count; i++)
		if (table->rows.items[i].cells[column] != NULL)
			return false;
	return true;
}

static unsigned without_bit(unsigned set, size_t bit)
{
	unsigned under = (1u << bit) - 1;
	return (set & under) | (set >> 1 & ~under);
}

void table_drop_blank(struct table *table)
{
	for (size_t k = table->column_count; k-- > 0;) {
		if (!is_blank(table, k))
			continue;
		table->column_count--;
		table->right = without_bit(table->right, k);
		table->ditto = without_bit(table->ditto, k);
		for (size_t c = k; c < table->column_count; c++) {
			table->heads[c] = table->heads[c + 1];
			for (size_t i = 0; i < table->rows.count; i++)
				table->rows.items[i].cells[c] = table->rows.items[i].cells[c + 1];
		}
	}
	/* The last column is as wide as what is left; a table without rows has lost them all. */
	if (table->column_count > 0)
		table->right &= ~(1u << (table->column_count - 1));
}

static double cap_of(const struct sheet *sheet, const struct table *table)
{
	return table->cap > 0 ? table->cap : sheet->draft->style->texts[TEXT_TABLE].cap;
}

static double text_wide(const struct sheet *sheet, const struct table *table, bool is_strong,
                        const char *text)
{
	const struct draft *draft = sheet->draft;
	enum text_role role = is_strong ? TEXT_TABLE_HEAD : TEXT_TABLE;
	return text_width(draft->text, draft->style->texts[role].weight, cap_of(sheet, table),
	                  text);
}

static double natural_width(const struct sheet *sheet, const struct table *table, size_t column)
{
	double width = text_wide(sheet, table, true, table->heads[column]);
	for (size_t i = 0; i < table->rows.count; i++) {
		const struct table_row *row = &table->rows.items[i];
		const char *cell = row->cells[column];
		if (cell)
			width = fmax(width, text_wide(sheet, table, row->is_strong, cell));
	}
	return width;
}

/* Columns of words are wrapped, the widest first, where the last would not be on the sheet. */
static void narrow(struct layout *l)
{
	size_t last = l->table->column_count - 1;
	double over = WRAP_LEAST - l->box.x1 + l->box.x0;
	for (size_t k = 0; k < last; k++)
		over += l->width[k] + GAP;
	for (size_t tries = 0; tries < last && over > 0; tries++) {
		size_t widest = last;
		for (size_t k = 0; k < last; k++)
			if (!(l->table->right >> k & 1) && l->width[k] > WRAP_LEAST &&
			    (widest == last || l->width[k] > l->width[widest]))
				widest = k;
		if (widest == last)
			return;
		double narrower = fmax(WRAP_LEAST, l->width[widest] - over);
		over -= l->width[widest] - narrower;
		l->width[widest] = narrower;
	}
}

static struct layout lay_out(const struct sheet *sheet, const struct table *table,
                             struct paper_box box)
{
	struct layout l = {.draft = sheet->draft,
	                   .table = table,
	                   .box = box,
	                   .cap = cap_of(sheet, table),
	                   .pad = table->is_tight ? PAD_LEAST : PAD};
	size_t last = table->column_count - 1;
	for (size_t k = 0; k < last; k++)
		l.width[k] = natural_width(sheet, table, k);
	narrow(&l);
	l.x[0] = box.x0;
	for (size_t k = 0; k < last; k++)
		l.x[k + 1] = l.x[k] + l.width[k] + GAP;
	l.width[last] = fmax(box.x1 - l.x[last], WRAP_LEAST);
	return l;
}

/* The row as it is set: with ditto marks, but not as the first on its sheet. */
static struct table_row row_as_set(const struct table *table, size_t index)
{
	struct table_row row = table->rows.items[index];
	if (index == table->next || row.is_strong)
		return row;
	const struct table_row *above = &table->rows.items[index - 1];
	for (size_t k = 0; k < table->column_count; k++)
		if (table->ditto >> k & 1 && row.cells[k] != NULL && above->cells[k] != NULL &&
		    strcmp(row.cells[k], above->cells[k]) == 0)
			row.cells[k] = DITTO;
	return row;
}

/* The lines of a cell; numbers are never wrapped. */
static struct text_lines cell_lines(const struct layout *l, bool is_strong, size_t column,
                                    const char *cell)
{
	enum text_role role = is_strong ? TEXT_TABLE_HEAD : TEXT_TABLE;
	double width = l->width[column] + WRAP_SLACK;
	if (l->table->right >> column & 1)
		width = HUGE_VAL;
	return text_wrap(l->draft->text, l->draft->arena, l->draft->style->texts[role].weight,
	                 l->cap, width, cell);
}

static double wrapped_height(const struct layout *l, const struct table_row *row)
{
	const struct text_style *style =
		&l->draft->style->texts[row->is_strong ? TEXT_TABLE_HEAD : TEXT_TABLE];
	size_t count = 1;
	for (size_t k = 0; k < l->table->column_count; k++)
		if (row->cells[k]) {
			size_t lines = cell_lines(l, row->is_strong, k, row->cells[k]).count;
			count = lines > count ? lines : count;
		}
	return 2 * l->pad + text_descent(l->draft->text, style->weight, l->cap) + l->cap +
	       (double)(count - 1) * text_pitch(l->cap);
}

static void set_row(struct sheet *sheet, const struct layout *l, const struct table_row *row,
                    double y)
{
	enum text_role role = row->is_strong ? TEXT_TABLE_HEAD : TEXT_TABLE;
	for (size_t k = 0; k < l->table->column_count; k++) {
		if (!row->cells[k])
			continue;
		bool is_right = l->table->right >> k & 1;
		struct text_place place = {l->cap, is_right ? ALIGN_END : ALIGN_START, false};
		double x = is_right ? l->x[k] + l->width[k] : l->x[k], base = y + l->pad + l->cap;
		struct text_lines lines = cell_lines(l, row->is_strong, k, row->cells[k]);
		for (size_t i = 0; i < lines.count; i++)
			list_text_at(sheet->list, LAYER_NOTES, role, NULL,
			             paper_at(x, base + (double)i * text_pitch(l->cap)), place,
			             lines.lines[i]);
	}
}

static void add_rule(struct sheet *sheet, const struct layout *l, enum pen pen, double y)
{
	list_stroke(sheet->list, LAYER_NOTES, pen, NULL,
	            paper_path_segment(sheet->draft->arena, paper_at(l->box.x0, y),
	                               paper_at(l->box.x1, y)));
}

static struct table_row head_row(const struct table *table)
{
	struct table_row row = {.is_strong = true};
	for (size_t k = 0; k < table->column_count; k++)
		row.cells[k] = table->heads[k];
	return row;
}

static size_t count_fitting(const struct layout *l)
{
	struct table_row head = head_row(l->table);
	double y = l->box.y0 + wrapped_height(l, &head);
	size_t i = l->table->next, first = i;
	for (; i < l->table->rows.count; i++) {
		struct table_row row = row_as_set(l->table, i);
		y += wrapped_height(l, &row);
		if (y > l->box.y1)
			break;
	}
	size_t fitting = i;
	while (i < l->table->rows.count && i > first && l->table->rows.items[i - 1].is_kept)
		i--;
	return (i > first ? i : fitting) - first;
}

bool table_fits(const struct sheet *sheet, const struct table *table, struct paper_box box)
{
	struct layout l = lay_out(sheet, table, box);
	size_t last = table->column_count - 1;
	return l.x[last] + WRAP_LEAST <= box.x1 + WRAP_SLACK &&
	       count_fitting(&l) == table->rows.count - table->next;
}

double table_draw(struct sheet *sheet, struct table *table, struct paper_box box)
{
	struct layout l = lay_out(sheet, table, box);
	struct table_row head = head_row(table);
	size_t count = count_fitting(&l);
	double y = box.y0;
	set_row(sheet, &l, &head, y);
	y += wrapped_height(&l, &head);
	add_rule(sheet, &l, PEN_RULE_HEAVY, y);
	for (size_t i = 0; i < count; i++) {
		struct table_row row = row_as_set(table, table->next + i);
		set_row(sheet, &l, &row, y);
		y += wrapped_height(&l, &row);
		add_rule(sheet, &l, PEN_RULE, y);
	}
	table->next += count;
	sheet->more = NULL;
	if (table->next < table->rows.count) {
		sheet->more = ARENA_NEW(sheet->draft->arena, struct table);
		*sheet->more = *table;
	}
	return y;
}

/* How many times the table stands side by side in a width, its last column alone wrapped. */
static int blocks_in(const struct sheet *sheet, const struct table *table, double width)
{
	size_t last = table->column_count - 1;
	double wide = fmin(natural_width(sheet, table, last), WRAP_MOST) + BLOCK_GAP;
	for (size_t k = 0; k < last; k++)
		wide += natural_width(sheet, table, k) + GAP;
	return (int)fmax(1, floor((width + BLOCK_GAP) / wide));
}

/* The box of the block beside this one. */
static struct paper_box box_beside(struct paper_box box, double step)
{
	return (struct paper_box){box.x0 + step, box.y0, box.x1 + step, box.y1};
}

static bool blocks_fit(const struct sheet *sheet, const struct table *table, struct paper_box box,
                       int blocks, double step)
{
	struct table left = *table;
	for (int i = 0; i < blocks; i++, box = box_beside(box, step)) {
		struct layout l = lay_out(sheet, &left, box);
		left.next += count_fitting(&l);
	}
	return left.next == left.rows.count;
}

/* Blocks that the rows do not fill are as short as they can be, and so alike. */
static double short_bottom(const struct sheet *sheet, const struct table *table,
                           struct paper_box box, int blocks, double step)
{
	enum { STEPS = 32 };
	double high = box.y1 - box.y0;
	for (int i = 1; i < STEPS; i++) {
		struct paper_box shorter = box;
		shorter.y1 = box.y0 + high * i / STEPS;
		if (blocks_fit(sheet, table, shorter, blocks, step))
			return shorter.y1;
	}
	return box.y1;
}

/* Sheets that the table takes, with its rows as close as can be read, or not. */
static int sheets_of(const struct sheet *sheet, const struct table *table, struct paper_box box,
                     bool is_tight)
{
	struct table left = *table;
	int count = 0;
	left.is_tight = is_tight;
	for (size_t before; left.next < left.rows.count; count++) {
		struct layout l = lay_out(sheet, &left, box);
		before = left.next;
		left.next += count_fitting(&l);
		if (left.next == before)
			break;
	}
	return count;
}

static struct paper_box sheet_box(const struct sheet *sheet)
{
	struct paper_box box = sheet->drawing;
	box.x0 += SHEET_INSET;
	box.x1 -= SHEET_INSET;
	return box;
}

bool table_enlarge(const struct sheet *sheet, struct table *table)
{
	struct paper_box box = sheet_box(sheet);
	double before = table->cap, wide = 0;
	table->cap = sheet->draft->style->texts[TEXT_BODY].cap;
	for (size_t k = 0; k < table->column_count; k++)
		wide += natural_width(sheet, table, k) + GAP;
	bool is_larger =
		table->next == 0 && wide - GAP <= box.x1 - box.x0 && table_fits(sheet, table, box);
	if (!is_larger)
		table->cap = before;
	return is_larger;
}

void table_draw_sheet(struct sheet *sheet, struct table *table)
{
	struct paper_box box = sheet_box(sheet);
	int blocks = table_fits(sheet, table, box) ? 1 : blocks_in(sheet, table, box.x1 - box.x0);
	if (table->next == 0 && blocks == 1)
		table->is_tight =
			sheets_of(sheet, table, box, true) < sheets_of(sheet, table, box, false);
	double step = (box.x1 - box.x0 + BLOCK_GAP) / blocks;
	box.x1 = box.x0 + step - BLOCK_GAP;
	box.y1 = short_bottom(sheet, table, box, blocks, step);
	for (int i = 0; i < blocks && table->next < table->rows.count; i++) {
		table_draw(sheet, table, box);
		box = box_beside(box, step);
	}
}

struct paper_box table_column(const struct sheet *sheet)
{
	struct paper_box box = sheet->column;
	box.x0 += COLUMN_INSET;
	box.x1 -= COLUMN_INSET;
	box.y0 += COLUMN_INSET;
	return box;
}

bool table_carry(struct sheet *sheet, struct table *table)
{
	struct paper_box box = table_column(sheet);
	table->is_tight = !table_fits(sheet, table, box);
	if (!table_fits(sheet, table, box)) {
		table->is_tight = false;
		return false;
	}
	sheet->column.y0 = table_draw(sheet, table, box);
	return true;
}

void table_place(struct sheet *sheet, struct table *table)
{
	if (table->rows.count == 0)
		return;
	if (sheet->rest || !table_carry(sheet, table))
		sheet->more = table;
}

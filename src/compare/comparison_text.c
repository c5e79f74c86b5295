/* comparison_text.c - line by line, to read on a screen. */
#include "base/text_table.h"
#include "compare/change_cells.h"
#include "compare/change_text.h"
#include "compare/comparison_write.h"

enum { INDENT = 4 };

/* Of the columns of a change order those that are read on a screen. */
enum { FIRST = CHANGE_WHAT, LAST = CHANGE_PRICE_MORE, COLUMNS = LAST - FIRST + 1 };

struct writing {
	struct arena *arena;
	const struct words *words;
	const struct comparison *comparison;
	struct strbuf out;
};

static void add_line(struct writing *w, size_t indent, const char *text)
{
	strbuf_printf(&w->out, "%*s%s\n", (int)indent, "", text);
}

/* ---- what was done ---- */

static void add_edits(struct writing *w, const struct change *change)
{
	for (size_t i = 0; i < change->edit_count; i++)
		add_line(w, INDENT, change_text_edit(w->arena, w->words, &change->edits[i]));
}

static void add_change(struct writing *w, const char *mark, const struct change *change)
{
	strbuf_printf(&w->out, "%-*s%s. %s\n", INDENT, mark,
	              change_text_what(w->arena, w->words, change),
	              change_text_where(w->words, change));
	const char *reason = change_text_reason(w->arena, w->words, change);
	if (*reason != '\0')
		add_line(w, INDENT, reason);
	add_edits(w, change);
}

/* ---- what follows ---- */

static struct text_row heads(struct writing *w)
{
	struct text_row row = {{0}};
	for (int k = 0; k < COLUMNS; k++)
		row.cells[k] =
			words_find(w->words, change_column_key((enum change_column)(FIRST + k)));
	return row;
}

static void blank(struct text_row *row, enum change_column from, enum change_column to)
{
	for (enum change_column column = from; column <= to; column++)
		row->cells[column - FIRST] = "";
}

static struct text_row row_of(struct writing *w, const struct row_change *change)
{
	struct change_cells cells = change_cells_read(w->arena, change, w->words);
	struct text_row row = {{0}};
	for (int k = 0; k < COLUMNS; k++)
		row.cells[k] = cells.texts[FIRST + k];
	return row;
}

/* Sums have no amounts. */
static struct text_row money_row(struct writing *w, const struct row_change *change)
{
	struct text_row row = row_of(w, change);
	blank(&row, CHANGE_BEFORE, CHANGE_RATE);
	return row;
}

static unsigned right_columns(void)
{
	unsigned right = 0;
	for (int k = 0; k < COLUMNS; k++)
		if (change_column_is_number((enum change_column)(FIRST + k)))
			right |= 1u << k;
	return right;
}

static bool has_prices(const struct row_changes *rows)
{
	for (size_t i = 0; i < rows->list.count; i++)
		if (rows->list.items[i].is_priced)
			return true;
	return false;
}

static void add_table(struct writing *w, const struct difference *difference)
{
	struct text_table table = {.column_count = COLUMNS, .right = right_columns()};
	struct text_row head = heads(w);
	if (!has_prices(&difference->rows) && difference->money.list.count == 0)
		blank(&head, CHANGE_RATE, CHANGE_PRICE_MORE);
	*array_push(w->arena, &table.rows) = head;
	for (size_t i = 0; i < difference->rows.list.count; i++)
		*array_push(w->arena, &table.rows) = row_of(w, &difference->rows.list.items[i]);
	for (size_t i = 0; i < difference->money.list.count; i++)
		*array_push(w->arena, &table.rows) = money_row(w, &difference->money.list.items[i]);
	if (row_change_row(&difference->days) != NULL)
		*array_push(w->arena, &table.rows) = row_of(w, &difference->days);
	if (table.rows.count > 1)
		text_table_write(&table, INDENT, &w->out);
}

static void add_difference(struct writing *w, const struct difference *difference)
{
	add_table(w, difference);
	for (size_t i = 0; i < difference->findings.list.count; i++)
		add_line(w, INDENT,
		         change_text_finding(w->arena, w->words,
		                             &difference->findings.list.items[i]));
}

/* ---- all of it ---- */

static void add_comparison_line(struct writing *w, const struct comparison_line *line)
{
	const char *mark = comparison_mark(w->arena, w->comparison, line);
	if (line->change_count == 0)
		strbuf_printf(&w->out, "%-*s%s\n", INDENT, mark,
		              words_find(w->words, "change.order"));
	for (size_t i = 0; i < line->change_count; i++)
		add_change(w, i == 0 ? mark : "", line->changes[i]);
	add_difference(w, &line->difference);
	strbuf_add(&w->out, "\n");
}

/* Other ids, other names: nothing is built otherwise for it. */
static void add_remarks(struct writing *w)
{
	const struct change_list *changes = &w->comparison->changes;
	bool is_headed = false;
	for (size_t i = 0; i < changes->list.count; i++) {
		const struct change *change = &changes->list.items[i];
		if (change->is_work)
			continue;
		if (!is_headed)
			add_line(w, 0, words_find(w->words, "compare.no-work"));
		is_headed = true;
		add_line(w, INDENT, change_text_what(w->arena, w->words, change));
		add_edits(w, change);
	}
}

struct bytes comparison_text(struct arena *arena, const struct comparison *comparison,
                             const struct words *words)
{
	struct writing w = {arena, words, comparison, strbuf_in(arena)};
	for (size_t i = 0; i < comparison->line_count; i++)
		add_comparison_line(&w, &comparison->lines[i]);
	if (comparison->line_count == 0)
		add_line(&w, 0, words_find(words, "compare.no-change"));
	if (comparison->line_count > 1) {
		add_line(&w, 0, words_find(words, "compare.total"));
		add_difference(&w, &comparison->total);
		strbuf_add(&w.out, "\n");
	}
	if (comparison->line_count > 0 && comparison->total.money.list.count == 0) {
		add_line(&w, 0, words_find(words, "changes.no-money"));
		strbuf_add(&w.out, "\n");
	}
	add_remarks(&w);
	return strbuf_bytes(&w.out);
}

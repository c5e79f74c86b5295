/* comparison_text.c - line by line, to read on a screen. */
#include "base/text_table.h"
#include "compare/change_text.h"
#include "compare/comparison_write.h"

enum {
	WHAT,
	WHERE,
	BEFORE,
	AFTER,
	MORE,
	UNIT,
	RATE,
	PRICE_BEFORE,
	PRICE_AFTER,
	PRICE_MORE,
	COLUMNS
};
enum { INDENT = 4 };
static const unsigned right = 1u << BEFORE | 1u << AFTER | 1u << MORE | 1u << RATE |
                              1u << PRICE_BEFORE | 1u << PRICE_AFTER | 1u << PRICE_MORE;

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
	static const char *const keys[COLUMNS] = {
		"count.what",          "count.where",
		"compare.before",      "compare.after",
		"compare.difference",  "count.unit",
		"count.rate",          "compare.price-before",
		"compare.price-after", "compare.price-difference"};
	struct text_row row = {{0}};
	for (int k = 0; k < COLUMNS; k++)
		row.cells[k] = words_find(w->words, keys[k]);
	return row;
}

static struct text_row row_of(struct writing *w, const struct row_change *change)
{
	const struct count_row *row = row_change_row(change);
	const char *unit = arena_printf(w->arena, "unit.%s", row->unit);
	return (struct text_row){{
		[WHAT] = count_row_what(w->arena, row, w->words),
		[WHERE] = count_row_where(row, w->words),
		[BEFORE] = change_text_amount(w->arena, change, change->amount_before),
		[AFTER] = change_text_amount(w->arena, change, change->amount_after),
		[MORE] = change_text_more(w->arena, change),
		[UNIT] = words_find(w->words, unit),
		[RATE] = change_text_rate(w->arena, change),
		[PRICE_BEFORE] = change_text_cents(w->arena, change, change->cents_before),
		[PRICE_AFTER] = change_text_cents(w->arena, change, change->cents_after),
		[PRICE_MORE] = change_text_cents_more(w->arena, change),
	}};
}

/* Sums have no amounts. */
static struct text_row money_row(struct writing *w, const struct row_change *change)
{
	struct text_row row = row_of(w, change);
	row.cells[BEFORE] = row.cells[AFTER] = row.cells[MORE] = row.cells[UNIT] = row.cells[RATE] =
		"";
	return row;
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
	struct text_table table = {.column_count = COLUMNS, .right = right};
	struct text_row head = heads(w);
	if (!has_prices(&difference->rows) && difference->money.list.count == 0)
		head.cells[RATE] = head.cells[PRICE_BEFORE] = head.cells[PRICE_AFTER] =
			head.cells[PRICE_MORE] = "";
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
	add_remarks(&w);
	return strbuf_bytes(&w.out);
}

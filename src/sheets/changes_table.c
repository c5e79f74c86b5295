#include "sheets/changes_table.h"

#include "compare/change_cells.h"
#include "compare/change_text.h"

/* What is said in words stands last, where it can be wrapped. */
enum {
	LINE,
	BEFORE,
	AFTER,
	MORE,
	UNIT,
	RATE,
	PRICE_BEFORE,
	PRICE_AFTER,
	PRICE_MORE,
	WHAT,
	COLUMNS
};

/* Which columns a table has: those of prices only where there are any. */
struct columns {
	int of[COLUMNS];
	size_t count;
};

struct cells {
	const char *texts[COLUMNS]; /* NULL: blank */
};

const char *changes_mark(const struct draft *draft, const struct comparison_line *line)
{
	return draft_text(draft, "changes.mark",
	                  {"mark", comparison_mark(draft->arena, draft->comparison, line)});
}

static struct columns columns_of(const struct comparison *comparison)
{
	bool is_priced = comparison->total.money.list.count > 0;
	struct columns columns = {.count = 0};
	for (int k = 0; k < COLUMNS; k++)
		if (is_priced || k < RATE || k > PRICE_MORE)
			columns.of[columns.count++] = k;
	return columns;
}

/* Of the rows from the name of a line to its first, and from the sum of all to the signatures,
 * none stands without the next. */
enum weight { PLAIN, STRONG, KEPT = 2 };

static void add_row(struct sheet *sheet, struct table *table, const struct columns *columns,
                    struct cells cells, unsigned weight)
{
	struct table_row row = {.is_strong = weight & STRONG, .is_kept = weight & KEPT};
	for (size_t k = 0; k < columns->count; k++)
		row.cells[k] = cells.texts[columns->of[k]];
	table_add(sheet, table, row);
}

static const char *where_of(const struct draft *draft, const struct count_row *row)
{
	return row->is_total ? draft_word(draft, "count.total") : draft_tag(draft, row->where);
}

static struct cells quantity(const struct draft *draft, const struct row_change *change)
{
	const struct count_row *row = row_change_row(change);
	struct change_cells read = change_cells_read(draft->arena, change, draft->words);
	return (struct cells){{
		[BEFORE] = read.texts[CHANGE_BEFORE],
		[AFTER] = read.texts[CHANGE_AFTER],
		[MORE] = read.texts[CHANGE_MORE],
		[UNIT] = read.texts[CHANGE_UNIT],
		[RATE] = read.texts[CHANGE_RATE],
		[PRICE_BEFORE] = read.texts[CHANGE_PRICE_BEFORE],
		[PRICE_AFTER] = read.texts[CHANGE_PRICE_AFTER],
		[PRICE_MORE] = read.texts[CHANGE_PRICE_MORE],
		[WHAT] = draft_text(draft, "changes.quantity", {"what", read.texts[CHANGE_WHAT]},
	                            {"where", where_of(draft, row)}),
	}};
}

/* Money has no amount. */
static struct cells money(const struct draft *draft, const struct row_change *change,
                          const char *currency)
{
	const struct count_row *row = row_change_row(change);
	struct change_cells read = change_cells_read(draft->arena, change, draft->words);
	const char *what = read.texts[CHANGE_WHAT];
	if (row->kind == COUNT_PRICE_MARKUP)
		what = draft_text(draft, "changes.quantity", {"what", what}, {"where", row->where});
	return (struct cells){{
		[UNIT] = currency,
		[PRICE_BEFORE] = read.texts[CHANGE_PRICE_BEFORE],
		[PRICE_AFTER] = read.texts[CHANGE_PRICE_AFTER],
		[PRICE_MORE] = read.texts[CHANGE_PRICE_MORE],
		[WHAT] = what,
	}};
}

static void add_sums(struct sheet *sheet, struct table *table, const struct columns *columns,
                     const struct difference *difference, unsigned kept)
{
	const struct draft *draft = sheet->draft;
	const struct row_changes *sums = &difference->money;
	for (size_t i = 0; i < sums->list.count; i++) {
		const struct row_change *change = &sums->list.items[i];
		bool is_last = i + 1 == sums->list.count;
		if (is_last || change->cents_before != change->cents_after)
			add_row(sheet, table, columns,
			        money(draft, change, difference->after->count->currency),
			        (is_last ? STRONG : PLAIN) | kept);
	}
	if (row_change_row(&difference->days) != NULL) {
		struct cells days = quantity(draft, &difference->days);
		days.texts[WHAT] = draft_word(draft, "count.what.wait-days");
		add_row(sheet, table, columns, days, STRONG | kept);
	}
}

static void add_line(struct sheet *sheet, struct table *table, const struct columns *columns,
                     const struct comparison_line *line)
{
	const struct draft *draft = sheet->draft;
	const char *mark = changes_mark(draft, line), *order = draft_word(draft, "change.order");
	for (size_t i = 0; i < line->change_count; i++)
		add_row(sheet, table, columns,
		        (struct cells){{[LINE] = i == 0 ? mark : NULL,
		                        [WHAT] = change_text_what(draft->arena, draft->words,
		                                                  line->changes[i])}},
		        STRONG | KEPT);
	if (line->change_count == 0)
		add_row(sheet, table, columns, (struct cells){{[LINE] = mark, [WHAT] = order}},
		        STRONG | KEPT);
	for (size_t i = 0; i < line->difference.rows.list.count; i++)
		add_row(sheet, table, columns,
		        quantity(draft, &line->difference.rows.list.items[i]), PLAIN);
	add_sums(sheet, table, columns, &line->difference, KEPT);
	add_row(sheet, table, columns,
	        (struct cells){{[LINE] = mark, [WHAT] = draft_word(draft, "changes.accept")}},
	        PLAIN);
}

/* Of a party that the plan does not name, its part in the work; room to sign above a line. */
static void add_signature(struct sheet *sheet, struct table *table, const struct columns *columns,
                          const char *part, const char *name, unsigned kept)
{
	const struct draft *draft = sheet->draft;
	const char *text = draft_word(draft, part);
	if (name != NULL)
		text = draft_text(draft, "changes.signed", {"name", name}, {"part", text});
	const char *lines[] = {text, NULL, draft_word(draft, "changes.sign-here")};
	size_t last = sizeof lines / sizeof *lines - 1;
	for (size_t i = 0; i <= last; i++)
		add_row(sheet, table, columns, (struct cells){{[WHAT] = lines[i]}},
		        i < last ? KEPT : kept);
}

static void add_signatures(struct sheet *sheet, struct table *table, const struct columns *columns)
{
	const struct plan_job *job = sheet->draft->site->plan->job;
	add_row(sheet, table, columns,
	        (struct cells){{[WHAT] = draft_word(sheet->draft, "heading.signatures")}},
	        STRONG | KEPT);
	add_signature(sheet, table, columns, "changes.client",
	              job != NULL ? job->prepared_for : NULL, KEPT);
	add_signature(sheet, table, columns, "changes.contractor",
	              job != NULL ? job->prepared_by : NULL, PLAIN);
}

struct table *changes_table(struct sheet *sheet)
{
	static const char *const heads[COLUMNS] = {"changes.line",
	                                           "compare.before",
	                                           "compare.after",
	                                           "compare.difference",
	                                           "count.unit",
	                                           "count.rate",
	                                           "compare.price-before",
	                                           "compare.price-after",
	                                           "compare.price-difference",
	                                           "count.what"};
	const struct draft *draft = sheet->draft;
	const struct comparison *comparison = draft->comparison;
	struct table *table = ARENA_NEW(draft->arena, struct table);
	struct columns columns = columns_of(comparison);
	table->column_count = columns.count;
	for (size_t k = 0; k < columns.count; k++) {
		int column = columns.of[k];
		table->heads[k] = draft_word(draft, heads[column]);
		if (column != LINE && column != UNIT && column != WHAT)
			table->right |= 1u << k;
	}
	for (size_t i = 0; i < comparison->line_count; i++)
		add_line(sheet, table, &columns, &comparison->lines[i]);
	add_row(sheet, table, &columns,
	        (struct cells){{[WHAT] = draft_word(draft, "compare.total")}}, STRONG | KEPT);
	add_sums(sheet, table, &columns, &comparison->total, KEPT);
	add_signatures(sheet, table, &columns);
	return table;
}

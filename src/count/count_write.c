/* count_write.c - a count as text, CSV and XML. */
#include "base/csv.h"
#include "base/text_table.h"
#include "count/count_cells.h"

/* ---- CSV, RFC 4180 ---- */

/* A number is no formula, though it may begin with a sign. */
static void add_csv_row(struct strbuf *out, const struct count_cells *cells, bool has_numbers)
{
	for (int k = 0; k < COUNT_COLUMN_COUNT; k++) {
		if (k > 0)
			strbuf_add_char(out, ',');
		if (has_numbers && count_column_is_number((enum count_column)k))
			strbuf_add(out, cells->texts[k]);
		else
			csv_add_cell(out, cells->texts[k]);
	}
	csv_end_row(out);
}

struct bytes count_csv(struct arena *arena, const struct count *count)
{
	struct strbuf out = strbuf_in(arena);
	struct count_cells cells;
	for (int k = 0; k < COUNT_COLUMN_COUNT; k++)
		cells.texts[k] = count_column_name((enum count_column)k);
	add_csv_row(&out, &cells, false);
	for (size_t i = 0; i < count->row_count; i++) {
		cells = count_cells_of(arena, &count->rows[i]);
		add_csv_row(&out, &cells, true);
	}
	return strbuf_bytes(&out);
}

/* ---- XML ---- */

static void add_attribute(struct strbuf *out, const char *name, const char *text)
{
	strbuf_printf(out, " %s=\"", name);
	strbuf_add_escaped(out, text);
	strbuf_add_char(out, '"');
}

struct bytes count_xml(struct arena *arena, const struct count *count)
{
	struct strbuf out = strbuf_in(arena);
	strbuf_add(&out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<count version=\"1\"");
	if (count->currency != NULL)
		add_attribute(&out, "currency", count->currency);
	strbuf_add(&out, ">\n");
	for (size_t i = 0; i < count->row_count; i++) {
		struct count_cells cells = count_cells_of(arena, &count->rows[i]);
		strbuf_add(&out, "  <row");
		for (int k = 0; k < COUNT_COLUMN_COUNT; k++)
			add_attribute(&out, count_column_name((enum count_column)k),
			              cells.texts[k]);
		strbuf_add(&out, "/>\n");
	}
	strbuf_add(&out, "</count>\n");
	return strbuf_bytes(&out);
}

/* ---- text ---- */

static struct text_row text_of(const struct count_cells *cells)
{
	struct text_row row = {{0}};
	for (int k = 0; k < COUNT_COLUMN_COUNT; k++)
		row.cells[k] = cells->texts[k] != NULL ? cells->texts[k] : "";
	return row;
}

struct bytes count_text(struct arena *arena, const struct count *count, const struct words *words)
{
	struct text_table table = {.column_count = COUNT_COLUMN_COUNT};
	struct strbuf out = strbuf_in(arena);
	struct count_cells heads = count_cells_heads(arena, count, words);
	for (int k = 0; k < COUNT_COLUMN_COUNT; k++)
		if (count_column_is_number((enum count_column)k))
			table.right |= 1u << k;
	*array_push(arena, &table.rows) = text_of(&heads);
	for (size_t i = 0; i < count->row_count; i++) {
		struct count_cells cells = count_cells_read(arena, &count->rows[i], words);
		*array_push(arena, &table.rows) = text_of(&cells);
	}
	text_table_write(&table, 0, &out);
	return strbuf_bytes(&out);
}

#include "base/text_table.h"

enum { GAP = 2 }; /* blanks between columns */

/* Characters, not bytes: continuation bytes of UTF-8 take no column. */
static size_t width_of(const char *text)
{
	size_t width = 0;
	for (; *text != '\0'; text++)
		width += ((unsigned char)*text & 0xC0) != 0x80;
	return width;
}

static void pad(struct strbuf *out, size_t from, size_t to)
{
	for (; from < to; from++)
		strbuf_add_char(out, ' ');
}

static size_t width_of_column(const struct text_table *table, size_t column)
{
	size_t widest = 0;
	for (size_t i = 0; i < table->rows.count; i++) {
		size_t width = width_of(table->rows.items[i].cells[column]);
		widest = width > widest ? width : widest;
	}
	return widest;
}

/* Blanks are added before the next text only, so that no line ends in one. */
static void add_row(const struct text_table *table, const struct text_row *row,
                    const size_t *widths, size_t indent, struct strbuf *out)
{
	size_t at = 0, column = indent; /* where the line ends so far, and the column starts */
	for (size_t c = 0; c < table->column_count; c++) {
		const char *text = row->cells[c];
		size_t width = width_of(text);
		if (widths[c] == 0)
			continue;
		if (width > 0) {
			size_t start = table->right & 1u << c ? column + widths[c] - width : column;
			pad(out, at, start);
			strbuf_add(out, text);
			at = start + width;
		}
		column += widths[c] + GAP;
	}
	strbuf_add_char(out, '\n');
}

void text_table_write(const struct text_table *table, size_t indent, struct strbuf *out)
{
	size_t widths[TEXT_TABLE_COLUMNS_MOST];
	for (size_t c = 0; c < table->column_count; c++)
		widths[c] = width_of_column(table, c);
	for (size_t i = 0; i < table->rows.count; i++)
		add_row(table, &table->rows.items[i], widths, indent, out);
}

/* count_write.c - a count as text, CSV and XML. */
#include <string.h>

#include "count/count.h"
#include "units/number.h"

/* ---- CSV, RFC 4180 ---- */

/* A cell that a spreadsheet would take for a formula is led by an apostrophe. */
static bool looks_like_formula(const char *text)
{
	return *text != '\0' && strchr("=+-@", *text) != NULL;
}

static void add_cell(struct strbuf *out, const char *text)
{
	bool quoted = strpbrk(text, ",\"\r\n") != NULL || looks_like_formula(text);
	if (!quoted) {
		strbuf_add(out, text);
		return;
	}
	strbuf_add_char(out, '"');
	if (looks_like_formula(text))
		strbuf_add_char(out, '\'');
	for (; *text != '\0'; text++) {
		if (*text == '"')
			strbuf_add_char(out, '"');
		strbuf_add_char(out, *text);
	}
	strbuf_add_char(out, '"');
}

struct bytes count_csv(struct arena *arena, const struct count *count)
{
	struct strbuf out = strbuf_in(arena);
	strbuf_add(&out, "what,where,amount,unit,rate,price,how\r\n");
	for (size_t i = 0; i < count->row_count; i++) {
		const struct count_row *row = &count->rows[i];
		add_cell(&out, row->what);
		strbuf_add_char(&out, ',');
		add_cell(&out, row->where);
		strbuf_add_char(&out, ',');
		number_add(&out, row->amount, row->decimals);
		strbuf_printf(&out, ",%s,%s,%s,", row->unit, row->rate,
		              count_row_price(arena, row));
		add_cell(&out, row->how);
		strbuf_add(&out, "\r\n");
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
		const struct count_row *row = &count->rows[i];
		strbuf_add(&out, "  <row");
		add_attribute(&out, "what", row->what);
		add_attribute(&out, "where", row->where);
		strbuf_add(&out, " amount=\"");
		number_add(&out, row->amount, row->decimals);
		strbuf_add_char(&out, '"');
		add_attribute(&out, "unit", row->unit);
		add_attribute(&out, "rate", row->rate);
		add_attribute(&out, "price", count_row_price(arena, row));
		add_attribute(&out, "how", row->how);
		strbuf_add(&out, "/>\n");
	}
	strbuf_add(&out, "</count>\n");
	return strbuf_bytes(&out);
}

/* ---- text ---- */

enum { WHAT, WHERE, AMOUNT, UNIT, RATE, PRICE, HOW, COLUMNS };
static const unsigned right = 1u << AMOUNT | 1u << RATE | 1u << PRICE;

struct table_line {
	const char *cells[COLUMNS];
};

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

/* A column without a width has nothing in it. */
static void add_line(struct strbuf *out, const struct table_line *line, const size_t *widths)
{
	for (size_t c = 0; c < COLUMNS; c++) {
		size_t width = width_of(line->cells[c]);
		if (widths[c] == 0)
			continue;
		if (right & 1u << c)
			pad(out, width, widths[c]);
		strbuf_add(out, line->cells[c]);
		if (c + 1 < COLUMNS) {
			if (!(right & 1u << c))
				pad(out, width, widths[c]);
			strbuf_add(out, "  ");
		}
	}
	strbuf_add_char(out, '\n');
}

static struct table_line line_of(struct arena *arena, const struct count_row *row,
                                 const struct words *words)
{
	struct strbuf amount = strbuf_in(arena);
	number_add(&amount, row->amount, row->decimals);
	const char *what = count_row_what(arena, row, words);
	const char *where = count_row_where(row, words);
	const char *unit = words_find(words, arena_printf(arena, "unit.%s", row->unit));
	return (struct table_line){
		{what, where, amount.text, unit, row->rate, count_row_price(arena, row), row->how}};
}

/* Rates and prices are headed only where there are any, in their currency. */
static struct table_line heads_of(struct arena *arena, const struct count *count,
                                  const struct words *words)
{
	static const char *const keys[COLUMNS] = {"count.what", "count.where", "count.amount",
	                                          "count.unit", "count.rate",  "count.price",
	                                          "count.how"};
	struct table_line heads;
	for (size_t c = 0; c < COLUMNS; c++)
		heads.cells[c] = words_find(words, keys[c]);
	if (count->currency == NULL)
		heads.cells[RATE] = heads.cells[PRICE] = "";
	else
		heads.cells[PRICE] =
			arena_printf(arena, "%s %s", heads.cells[PRICE], count->currency);
	return heads;
}

struct bytes count_text(struct arena *arena, const struct count *count, const struct words *words)
{
	struct table_line *lines = ARENA_ARRAY(arena, struct table_line, count->row_count + 1);
	size_t widths[COLUMNS] = {0};
	struct strbuf out = strbuf_in(arena);
	lines[0] = heads_of(arena, count, words);
	for (size_t i = 0; i < count->row_count; i++)
		lines[i + 1] = line_of(arena, &count->rows[i], words);
	for (size_t i = 0; i <= count->row_count; i++)
		for (size_t c = 0; c < COLUMNS; c++)
			if (width_of(lines[i].cells[c]) > widths[c])
				widths[c] = width_of(lines[i].cells[c]);
	for (size_t i = 0; i <= count->row_count; i++)
		add_line(&out, &lines[i], widths);
	return strbuf_bytes(&out);
}

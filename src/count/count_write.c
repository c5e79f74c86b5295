/* count_write.c - a count as text, CSV and XML. */
#include "base/csv.h"
#include "base/text_table.h"
#include "count/count.h"
#include "units/number.h"

/* ---- CSV, RFC 4180 ---- */

struct bytes count_csv(struct arena *arena, const struct count *count)
{
	struct strbuf out = strbuf_in(arena);
	strbuf_add(&out, "what,where,amount,unit,rate,price,how\r\n");
	for (size_t i = 0; i < count->row_count; i++) {
		const struct count_row *row = &count->rows[i];
		csv_add_cell(&out, row->what);
		strbuf_add_char(&out, ',');
		csv_add_cell(&out, row->where);
		strbuf_add_char(&out, ',');
		number_add(&out, row->amount, row->decimals);
		strbuf_printf(&out, ",%s,%s,%s,", row->unit, row->rate,
		              count_row_price(arena, row));
		csv_add_cell(&out, row->how);
		csv_end_row(&out);
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

static struct text_row line_of(struct arena *arena, const struct count_row *row,
                               const struct words *words)
{
	const char *what = count_row_what(arena, row, words);
	const char *where = count_row_where(row, words);
	return (struct text_row){{what, where, count_row_amount(arena, row),
	                          count_row_unit(arena, row, words), row->rate,
	                          count_row_price(arena, row), row->how}};
}

/* Rates and prices are headed only where there are any, in their currency. */
static struct text_row heads_of(struct arena *arena, const struct count *count,
                                const struct words *words)
{
	static const char *const keys[COLUMNS] = {"count.what", "count.where", "count.amount",
	                                          "count.unit", "count.rate",  "count.price",
	                                          "count.how"};
	struct text_row heads;
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
	struct text_table table = {.column_count = COLUMNS, .right = right};
	struct strbuf out = strbuf_in(arena);
	*array_push(arena, &table.rows) = heads_of(arena, count, words);
	for (size_t i = 0; i < count->row_count; i++)
		*array_push(arena, &table.rows) = line_of(arena, &count->rows[i], words);
	text_table_write(&table, 0, &out);
	return strbuf_bytes(&out);
}

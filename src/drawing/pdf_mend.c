#include "drawing/pdf_mend.h"

#include <stdlib.h>
#include <string.h>

static const char FIGURE[] = "<< /Type /StructElem\n   /S /Figure\n";
static const char TABLE[] = "\nxref\n", START[] = "startxref\n";

/* The first place of `text` from `from` on, and the last in the file; NULL: nowhere. Streams hold
 * bytes of zero, so no search for strings will do. */
static char *find_from(const struct strbuf *pdf, size_t from, const char *text)
{
	size_t length = strlen(text);
	for (size_t i = from; i + length <= pdf->length; i++) {
		char *next = memchr(pdf->text + i, *text, pdf->length - length - i + 1);
		if (!next || memcmp(next, text, length) == 0)
			return next;
		i = (size_t)(next - pdf->text);
	}
	return NULL;
}

static char *find_last(const struct strbuf *pdf, const char *text)
{
	size_t length = strlen(text);
	for (size_t i = pdf->length; i >= length; i--)
		if (memcmp(pdf->text + i - length, text, length) == 0)
			return pdf->text + i - length;
	return NULL;
}

/* Cairo writes a date it was given as (20000101000000+00'00), without the D: that the syntax
 * asks for. The same place holds (D:20000101000000Z) and blanks. */
static void mend_date(struct strbuf *pdf)
{
	static const char key[] = "/CreationDate (", zone[] = "+00'00)";
	enum { KEY = sizeof key - 1, DIGITS = 14, ZONE = sizeof zone - 1 };
	char *at = find_last(pdf, key);
	if (!at || memcmp(at + KEY + DIGITS, zone, ZONE) != 0)
		return;
	memmove(at + KEY + 2, at + KEY, DIGITS);
	memcpy(at + KEY, "D:", 2);
	memcpy(at + KEY + 2 + DIGITS, "Z)   ", ZONE - 2);
}

/* ---- text as a PDF holds it ---- */

/* The next character of UTF-8; the plan was seen to be such when it was read. */
static unsigned long next_character(const unsigned char **at)
{
	unsigned long c = *(*at)++;
	int more = c >= 0xF0 ? 3 : c >= 0xE0 ? 2 : c >= 0xC0 ? 1 : 0;
	c &= more ? 0x3Fu >> more : 0x7Fu;
	for (; more > 0 && **at; more--)
		c = c << 6 | (*(*at)++ & 0x3Fu);
	return c;
}

static void add_utf16(struct strbuf *out, const char *text)
{
	strbuf_add(out, "<FEFF");
	for (const unsigned char *at = (const void *)text; *at;) {
		unsigned long c = next_character(&at);
		if (c >= 0x10000) {
			strbuf_printf(out, "%04lX", 0xD800 + ((c - 0x10000) >> 10));
			c = 0xDC00 + ((c - 0x10000) & 0x3FF);
		}
		strbuf_printf(out, "%04lX", c);
	}
	strbuf_add_char(out, '>');
}

static void add_text(struct strbuf *out, const char *text)
{
	for (const char *at = text; *at; at++)
		if (*at < ' ' || *at > '~') {
			add_utf16(out, text);
			return;
		}
	strbuf_add_char(out, '(');
	for (; *text; text++) {
		if (strchr("()\\", *text))
			strbuf_add_char(out, '\\');
		strbuf_add_char(out, *text);
	}
	strbuf_add_char(out, ')');
}

/* ---- what is added, and the table of places after it ---- */

struct addition {
	size_t at; /* in the file as Cairo wrote it */
	const char *text;
};

struct additions {
	ARRAY_OF(struct addition) list; /* by place */
};

static void add(struct additions *a, const struct strbuf *pdf, const char *at,
                const struct strbuf *text)
{
	*array_push(pdf->arena, &a->list) = (struct addition){(size_t)(at - pdf->text), text->text};
}

/* Each figure is an element of the structure, in the order of the pages. */
static void tell_figures(struct additions *a, const struct strbuf *pdf,
                         const struct pdf_figures *figures)
{
	size_t from = 0;
	for (size_t i = 0; i < figures->told.count; i++) {
		char *figure = find_from(pdf, from, FIGURE);
		if (!figure)
			return;
		struct strbuf text = strbuf_in(pdf->arena);
		strbuf_add(&text, "   /Alt ");
		add_text(&text, figures->told.items[i]);
		strbuf_add_char(&text, '\n');
		figure += sizeof FIGURE - 1;
		add(a, pdf, figure, &text);
		from = (size_t)(figure - pdf->text);
	}
}

/* The catalogue is the last object before the table of places. */
static void tell_catalogue(struct additions *a, const struct strbuf *pdf, const char *language)
{
	char *catalogue = find_last(pdf, "/Type /Catalog");
	char *end =
		catalogue ? find_from(pdf, (size_t)(catalogue - pdf->text), ">>\nendobj") : NULL;
	if (!end)
		return;
	struct strbuf text = strbuf_in(pdf->arena);
	strbuf_printf(&text, "   /Lang (%s)\n   /ViewerPreferences << /DisplayDocTitle true >>\n",
	              language);
	add(a, pdf, end, &text);
}

/* Where what was at `place` lies now. */
static size_t moved(const struct additions *a, size_t place)
{
	size_t by = 0;
	for (size_t i = 0; i < a->list.count && a->list.items[i].at <= place; i++)
		by += strlen(a->list.items[i].text);
	return place + by;
}

/* "0 COUNT", then the entries of twenty bytes: the place in ten digits, five more, n for an
 * object in use. */
static void move_places(struct strbuf *out, const struct strbuf *pdf, char *table,
                        const struct additions *a)
{
	enum { ENTRY = 20, DIGITS = 10, IN_USE = 17 };
	char *entry = table + sizeof TABLE - 1;
	strtoul(entry, &entry, 10);
	unsigned long count = strtoul(entry, &entry, 10);
	entry++;
	strbuf_add_bytes(out, table, (size_t)(entry - table));
	for (; count > 0; count--, entry += ENTRY)
		if (entry[IN_USE] == 'n')
			strbuf_printf(out, "%010zu%.10s", moved(a, strtoul(entry, NULL, 10)),
			              entry + DIGITS);
		else
			strbuf_add_bytes(out, entry, ENTRY);
	const char *start = find_last(pdf, START);
	strbuf_add_bytes(out, entry, (size_t)(start - entry));
	strbuf_printf(out, "%s%zu\n%%%%EOF\n", START,
	              moved(a, strtoul(start + sizeof START - 1, NULL, 10)));
}

struct strbuf pdf_mended(const struct strbuf *pdf, const char *language,
                         const struct pdf_figures *figures)
{
	struct additions a = {0};
	struct strbuf from = strbuf_in(pdf->arena), out = strbuf_in(pdf->arena);
	strbuf_add_bytes(&from, pdf->text, pdf->length);
	mend_date(&from);
	char *table = find_last(&from, TABLE);
	if (!table || !find_last(&from, START))
		return from;
	tell_figures(&a, &from, figures);
	tell_catalogue(&a, &from, language);
	const char *at = from.text;
	for (size_t i = 0; i < a.list.count; i++) {
		const char *to = from.text + a.list.items[i].at;
		strbuf_add_bytes(&out, at, (size_t)(to - at));
		strbuf_add(&out, a.list.items[i].text);
		at = to;
	}
	strbuf_add_bytes(&out, at, (size_t)(table - at));
	move_places(&out, &from, table, &a);
	return out;
}

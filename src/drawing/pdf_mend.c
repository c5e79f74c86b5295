#include "drawing/pdf_mend.h"

#include <stdlib.h>
#include <string.h>

/* The last place of `text` in the file; NULL: nowhere. */
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

/* The catalogue is the last object before the table of places: what is added to it moves the
 * table alone, whose place stands at the end. */
struct strbuf pdf_mended(const struct strbuf *pdf, const char *language)
{
	static const char end[] = ">>\nendobj\nxref\n", start[] = "startxref\n";
	struct strbuf out = strbuf_in(pdf->arena);
	strbuf_add_bytes(&out, pdf->text, pdf->length);
	mend_date(&out);
	char *catalogue = find_last(&out, "/Type /Catalog"), *at = find_last(&out, end),
	     *place = find_last(&out, start);
	if (!catalogue || !at || !place || at < catalogue || strstr(catalogue, "endobj") != at + 3)
		return out;
	const char *added =
		arena_printf(pdf->arena,
	                     "   /Lang (%s)\n   /ViewerPreferences << /DisplayDocTitle true >>\n",
	                     language);
	struct strbuf longer = strbuf_in(pdf->arena);
	long table = strtol(place + sizeof start - 1, NULL, 10) + (long)strlen(added);
	strbuf_add_bytes(&longer, out.text, (size_t)(at - out.text));
	strbuf_add(&longer, added);
	strbuf_add_bytes(&longer, at, (size_t)(place - at));
	strbuf_printf(&longer, "%s%ld\n%%%%EOF\n", start, table);
	return longer;
}

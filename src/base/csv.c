#include "base/csv.h"

#include <stdbool.h>
#include <string.h>

static bool looks_like_formula(const char *text)
{
	return *text != '\0' && strchr("=+-@", *text) != NULL;
}

void csv_add_cell(struct strbuf *out, const char *text)
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

void csv_end_row(struct strbuf *out)
{
	strbuf_add(out, "\r\n");
}

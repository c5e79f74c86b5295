#include "screen/html.h"

void html_add_start(struct strbuf *out, const char *element, const struct html_attribute *list,
                    size_t count)
{
	strbuf_printf(out, "<%s", element);
	for (size_t i = 0; i < count; i++) {
		if (list[i].value == NULL)
			continue;
		strbuf_printf(out, " %s=\"", list[i].name);
		strbuf_add_escaped(out, list[i].value);
		strbuf_add_char(out, '"');
	}
	strbuf_add_char(out, '>');
}

void html_add_text(struct strbuf *out, const char *element, const char *text,
                   const struct html_attribute *list, size_t count)
{
	html_add_start(out, element, list, count);
	strbuf_add_escaped(out, text);
	html_end(out, element);
}

void html_end(struct strbuf *out, const char *element)
{
	strbuf_printf(out, "</%s>\n", element);
}

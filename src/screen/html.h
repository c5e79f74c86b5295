/* html.h - writes a page that a browser reads as HTML and any XML parser as XML: every element
 * is closed, every attribute quoted, and whatever was not written here is escaped.
 * Owns: nothing; adds to the text given. */
#ifndef SCREEN_HTML_H
#define SCREEN_HTML_H
#include "base/strbuf.h"

struct html_attribute {
	const char *name, *value; /* value NULL: the attribute is left out */
};

void html_add_start(struct strbuf *, const char *element, const struct html_attribute *,
                    size_t count);
/* An element that holds text alone, and a line end. */
void html_add_text(struct strbuf *, const char *element, const char *text,
                   const struct html_attribute *, size_t count);
void html_end(struct strbuf *, const char *element);

/* Attributes as a literal list: html_start(out, "a", {"href", "#sheet-slab"}). */
#define HTML_LIST(...)                                                 \
	(const struct html_attribute[]){__VA_ARGS__},                  \
		sizeof((const struct html_attribute[]){__VA_ARGS__}) / \
			sizeof(struct html_attribute)
#define html_start(out, element, ...) html_add_start((out), (element), HTML_LIST(__VA_ARGS__))
#define html_text(out, element, text, ...) \
	html_add_text((out), (element), (text), HTML_LIST(__VA_ARGS__))
#define HTML_NONE          \
	{                  \
		NULL, NULL \
	}

#endif

/* The only source that sees libxml2. Its options never load or expand an entity. */
#include "plan/markup.h"

#include <libxml/SAX2.h>
#include <libxml/parser.h>
#include <string.h>

#include "plan/guard.h"
#include "plan/tag_scan.h"

struct building {
	struct arena *arena;
	struct diag_list *diags;
	xmlParserCtxtPtr parser;
	struct tag_scan scan;
	struct markup *root, *open;
	int depth;
	long elements;
	bool failed;
};

static void stop(struct building *b, int line, const char *text)
{
	if (!b->failed)
		diag_error(b->diags, line, "%s", text);
	b->failed = true;
	xmlStopParser(b->parser);
}

static void link_child(struct building *b, struct markup *element)
{
	element->parent = b->open;
	if (!b->open)
		b->root = element;
	else if (b->open->last_child)
		b->open->last_child->next = element;
	else
		b->open->first_child = element;
	if (b->open)
		b->open->last_child = element;
}

static const char *name_with_prefix(struct arena *arena, const xmlChar *prefix, const xmlChar *name)
{
	if (!prefix)
		return arena_strdup(arena, (const char *)name);
	return arena_printf(arena, "%s:%s", (const char *)prefix, (const char *)name);
}

/* In a value libxml2 leaves an ampersand, however it was written, as &#38;, and nothing else so. */
static const char *plain_value(struct arena *arena, const xmlChar *from, const xmlChar *to)
{
	static const char kept[] = "&#38;";
	char *value = arena_strndup(arena, (const char *)from, (size_t)(to - from));
	char *end = value;
	for (const char *at = value; *at; end++) {
		*end = *at;
		at += strncmp(at, kept, sizeof kept - 1) == 0 ? sizeof kept - 1 : 1;
	}
	*end = '\0';
	return value;
}

/* libxml2 gives five pointers an attribute: name, prefix, namespace, value, value's end. */
static void read_attributes(struct building *b, struct markup *element, int count,
                            const xmlChar **five)
{
	element->attributes = ARENA_ARRAY(b->arena, struct markup_attribute, (size_t)count);
	element->attribute_count = (size_t)count;
	for (int i = 0; i < count; i++, five += 5)
		element->attributes[i] = (struct markup_attribute){
			.name = name_with_prefix(b->arena, five[1], five[0]),
			.value = plain_value(b->arena, five[3], five[4]),
			.line = tag_scan_attribute(&b->scan),
		};
}

static void start_element(void *context, const xmlChar *name, const xmlChar *prefix,
                          const xmlChar *uri, int namespace_count, const xmlChar **namespaces,
                          int attribute_count, int defaulted, const xmlChar **attributes)
{
	(void)uri, (void)namespaces, (void)defaulted;
	struct building *b = ((xmlParserCtxtPtr)context)->_private;
	if (b->failed || !tag_scan_next(&b->scan))
		return;
	int line = b->scan.line;
	if (++b->elements > MARKUP_MOST_ELEMENTS)
		stop(b, line, "more than 1,000,000 elements; expected at most that");
	else if (++b->depth > MARKUP_MOST_DEPTH)
		stop(b, line, "elements deeper than 16 levels; expected at most that");
	else if (namespace_count)
		stop(b, line, "a namespace; expected none in a floor description");
	if (b->failed)
		return;
	struct markup *element = ARENA_NEW(b->arena, struct markup);
	element->name = name_with_prefix(b->arena, prefix, name);
	element->line = line;
	read_attributes(b, element, attribute_count, attributes);
	while (tag_scan_attribute(&b->scan))
		;
	link_child(b, element);
	b->open = element;
}

static void end_element(void *context, const xmlChar *name, const xmlChar *prefix,
                        const xmlChar *uri)
{
	(void)name, (void)prefix, (void)uri;
	struct building *b = ((xmlParserCtxtPtr)context)->_private;
	if (b->failed)
		return;
	b->depth--;
	b->open = b->open->parent;
	tag_scan_leave(&b->scan);
}

static void characters(void *context, const xmlChar *text, int length)
{
	struct building *b = ((xmlParserCtxtPtr)context)->_private;
	if (b->failed || !b->open || b->open->text_line)
		return;
	for (int i = 0; i < length; i++)
		if (!strchr(" \t\r\n", text[i])) {
			b->open->text_line = tag_scan_text(b->scan);
			return;
		}
}

/* The guard has looked for it already; nothing of a DOCTYPE is to be read in any case. */
static void doctype(void *context, const xmlChar *name, const xmlChar *external,
                    const xmlChar *system)
{
	(void)name, (void)external, (void)system;
	stop(((xmlParserCtxtPtr)context)->_private, xmlSAX2GetLineNumber(context),
	     "a DOCTYPE; expected none in a floor description");
}

/* The parser sees a repeated attribute only at its tag's end. */
static void report(void *context, xmlErrorPtr error)
{
	struct building *b = ((xmlParserCtxtPtr)context)->_private;
	if (b->failed || error->level == XML_ERR_WARNING)
		return;
	b->failed = true;
	int repeated = error->code == XML_ERR_ATTRIBUTE_REDEFINED ? tag_scan_repeated(b->scan) : 0;
	if (repeated)
		diag_error(b->diags, repeated, "an attribute is repeated; expected it once");
	else if (!b->root &&
	         (error->code == XML_ERR_DOCUMENT_END || error->code == XML_ERR_DOCUMENT_EMPTY))
		diag_error(b->diags, 1, "no element; expected <floor>");
	else if (error->code == XML_ERR_DOCUMENT_END && b->open)
		diag_error(b->diags, error->line,
		           "the text ends within <%s> of line %d; expected </%s>", b->open->name,
		           b->open->line, b->open->name);
	else
		diag_error(b->diags, error->line > 0 ? error->line : 1,
		           "not well-formed XML: %.*s; expected well-formed XML",
		           (int)strcspn(error->message, "\n"), error->message);
}

static void parse_in_chunks(struct building *b, const char *bytes, size_t length)
{
	enum { CHUNK = 64 * 1024 };
	for (size_t done = 0; done < length && !b->failed; done += CHUNK) {
		size_t rest = length - done;
		xmlParseChunk(b->parser, bytes + done, (int)(rest < CHUNK ? rest : CHUNK), 0);
	}
	if (!b->failed)
		xmlParseChunk(b->parser, NULL, 0, 1);
}

const struct markup_attribute *markup_find(const struct markup *element, const char *name)
{
	for (size_t i = 0; i < element->attribute_count; i++)
		if (strcmp(element->attributes[i].name, name) == 0)
			return &element->attributes[i];
	return NULL;
}

enum status markup_parse(struct arena *arena, const char *bytes, size_t length,
                         struct diag_list *diags, struct markup **out_root)
{
	if (!guard_admits(bytes, length, diags))
		return STATUS_INPUT;
	xmlSAXHandler handler = {
		.initialized = XML_SAX2_MAGIC,
		.internalSubset = doctype,
		.startElementNs = start_element,
		.endElementNs = end_element,
		.characters = characters,
		.cdataBlock = characters,
		.serror = report,
	};
	struct building b = {.arena = arena, .diags = diags, .scan = tag_scan_start(bytes, length)};
	b.parser = xmlCreatePushParserCtxt(&handler, NULL, NULL, 0, NULL);
	if (!b.parser)
		return STATUS_LIBRARY;
	b.parser->_private = &b;
	xmlCtxtUseOptions(b.parser, XML_PARSE_NONET | XML_PARSE_BIG_LINES);
	parse_in_chunks(&b, bytes, length);
	xmlFreeParserCtxt(b.parser);
	*out_root = b.failed ? NULL : b.root;
	return b.failed || !b.root ? STATUS_INPUT : STATUS_OK;
}

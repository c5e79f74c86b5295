#include <string.h>

#include "plan/grammar.h"
#include "support/grammar_pages.h"

/* ---- values ---- */

/* A pattern in the schema's own form for each kind of value; NULL: any text. Simple ones:
 * validators try every way through what could be read in two. */
static const char *pattern_of(enum grammar_value value)
{
	static const char *const patterns[] = {
		[GRAMMAR_ID] = "[A-Za-z][A-Za-z0-9._\\-]*",
		[GRAMMAR_LENGTH] = "[0-9 ./\\-mcuinftl'&quot;&#8242;&#8243;]+",
		[GRAMMAR_ANGLE] = "[0-9.+\\-]+ *(deg)?",
		[GRAMMAR_TEMPERATURE] = "[0-9.+\\-]+ *[FC]",
		[GRAMMAR_STRENGTH] = "[0-9.]+ *(MPa|psi)",
		[GRAMMAR_MASS] = "[0-9.]+ *(kg|lb)",
		[GRAMMAR_VOLUME] = "[0-9.]+ *(floz|ml|gal|l|L)",
		[GRAMMAR_DENSITY] = "[0-9.]+ *(kg/L|kg/l|lb/ft3)",
		[GRAMMAR_AREA] = "[0-9.]+ *(m2|sqft|sq ft|ft2)",
		[GRAMMAR_DECIMAL] = "[0-9.+\\-]+",
		[GRAMMAR_PERCENT] = "[0-9./]+%?",
		[GRAMMAR_SHARE] = "[0-9./]+%?",
		[GRAMMAR_WHOLE] = "[\\-+]?[0-9]+(\\.0*)?",
		[GRAMMAR_MONEY] = "[0-9]+(\\.[0-9]+)?",
		[GRAMMAR_DATE] = "[0-9]{4}-[0-9]{2}-[0-9]{2}",
		[GRAMMAR_NAME] = "[A-Za-z][A-Za-z0-9._\\-]*",
		[GRAMMAR_REF] = "[A-Za-z][A-Za-z0-9._\\-]*",
		[GRAMMAR_REFS] = "[A-Za-z0-9._\\- ]+",
		[GRAMMAR_PLACES] = "[A-Za-z0-9._\\- ]+",
		[GRAMMAR_SUBJECT] = "[A-Za-z][A-Za-z0-9._\\-]*",
		[GRAMMAR_ABOUT] = "[A-Za-z][A-Za-z0-9._\\-]*",
	};
	return value < sizeof patterns / sizeof *patterns ? patterns[value] : NULL;
}

static void add_escaped(struct strbuf *out, const char *text)
{
	for (; *text; text++)
		if (*text == '<')
			strbuf_add(out, "&lt;");
		else if (*text == '&')
			strbuf_add(out, "&amp;");
		else
			strbuf_add_char(out, *text);
}

static void add_meaning(struct strbuf *out, const char *meaning, bool later)
{
	strbuf_add(out, "<xs:annotation><xs:documentation>");
	add_escaped(out, meaning);
	strbuf_printf(out, "%s</xs:documentation></xs:annotation>\n",
	              later ? " (not supported yet)" : "");
}

static void add_words(struct strbuf *out, const struct grammar_attribute *attribute)
{
	for (const char *const *word = grammar_words(attribute); *word; word++)
		if (**word)
			strbuf_printf(out, "<xs:enumeration value=\"%s\"/>", *word);
}

/* What restricts a string: words, or a pattern; nothing for text. */
static void add_restriction(struct strbuf *out, const struct grammar_attribute *attribute)
{
	const char *pattern = pattern_of(attribute->value);
	strbuf_add(out, "<xs:restriction base=\"xs:string\">");
	if (grammar_words(attribute) && attribute->value != GRAMMAR_SUBJECT)
		add_words(out, attribute);
	else if (pattern)
		strbuf_printf(out, "<xs:pattern value=\"%s\"/>", pattern);
	strbuf_add(out, "</xs:restriction>");
}

static void add_type(struct strbuf *out, const struct grammar_attribute *attribute)
{
	bool is_list = attribute->value == GRAMMAR_WORDS;
	strbuf_add(out, "<xs:simpleType>");
	strbuf_add(out, is_list ? "<xs:list><xs:simpleType>" : "");
	add_restriction(out, attribute);
	strbuf_add(out, is_list ? "</xs:simpleType></xs:list>" : "");
	strbuf_add(out, "</xs:simpleType>");
}

static void add_attribute(struct strbuf *out, const struct grammar_attribute *attribute)
{
	strbuf_printf(out, "<xs:attribute name=\"%s\"%s>", attribute->name,
	              attribute->required ? " use=\"required\"" : "");
	add_meaning(out, attribute->meaning, attribute->later);
	add_type(out, attribute);
	strbuf_add(out, "</xs:attribute>\n");
}

/* Children are a choice over and over: any order, as the format has it. */
static void add_element(struct strbuf *out, const struct grammar_element *element)
{
	strbuf_printf(out, "<xs:element name=\"%s\">", element->name);
	add_meaning(out, element->meaning, element->later);
	strbuf_add(out, "<xs:complexType>\n");
	if (element->child_count)
		strbuf_add(out, "<xs:choice minOccurs=\"0\" maxOccurs=\"unbounded\">\n");
	for (size_t i = 0; i < element->child_count; i++)
		add_element(out, element->children[i].element);
	if (element->child_count)
		strbuf_add(out, "</xs:choice>\n");
	for (size_t i = 0; i < element->attribute_count; i++)
		add_attribute(out, &element->attributes[i]);
	strbuf_add(out, "</xs:complexType></xs:element>\n");
}

void grammar_write_schema(struct strbuf *out)
{
	strbuf_add(out,
	           "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
	           "<!-- The floor description, written from the program's own table. It knows "
	           "names and forms;\n"
	           "     what one value says of another only the program checks. -->\n"
	           "<xs:schema xmlns:xs=\"http://www.w3.org/2001/XMLSchema\">\n");
	add_element(out, &grammar_floor);
	strbuf_add(out, "</xs:schema>\n");
}

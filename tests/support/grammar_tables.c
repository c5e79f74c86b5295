#include <string.h>

#include "plan/grammar.h"
#include "support/grammar_pages.h"

static void add_words(struct strbuf *out, const struct grammar_attribute *attribute)
{
	const char *between = "";
	for (const char *const *word = grammar_words(attribute); *word; word++)
		if (**word) {
			strbuf_printf(out, "%s`%s`", between, *word);
			between = " ";
		}
	if (attribute->value == GRAMMAR_SUBJECT)
		strbuf_add(out, " or an id");
}

static void add_kind(struct strbuf *out, const struct grammar_attribute *attribute)
{
	static const char *const kinds[] = {
		[GRAMMAR_TEXT] = "text",
		[GRAMMAR_ID] = "id",
		[GRAMMAR_LENGTH] = "length",
		[GRAMMAR_ANGLE] = "angle",
		[GRAMMAR_TEMPERATURE] = "temperature",
		[GRAMMAR_STRENGTH] = "strength",
		[GRAMMAR_MASS] = "mass",
		[GRAMMAR_VOLUME] = "volume",
		[GRAMMAR_DENSITY] = "density",
		[GRAMMAR_AREA] = "area",
		[GRAMMAR_DECIMAL] = "decimal",
		[GRAMMAR_PERCENT] = "share",
		[GRAMMAR_SHARE] = "share",
		[GRAMMAR_WHOLE] = "whole number",
		[GRAMMAR_MONEY] = "money",
		[GRAMMAR_DATE] = "date",
		[GRAMMAR_PLACES] = "ids of walls or doorways",
		[GRAMMAR_ABOUT] = "an id",
	};
	if (grammar_words(attribute))
		add_words(out, attribute);
	else if (attribute->value == GRAMMAR_NAME || attribute->value == GRAMMAR_REF)
		strbuf_printf(out, "id of %s", grammar_kind_name(attribute->ref_kind));
	else if (attribute->value == GRAMMAR_REFS)
		strbuf_printf(out, "ids, each of %s", grammar_kind_name(attribute->ref_kind));
	else
		strbuf_add(out, kinds[attribute->value]);
}

static const char *range_text(enum grammar_range range)
{
	static const char *const texts[] = {
		[GRAMMAR_ANY] = "",
		[GRAMMAR_NOT_NEGATIVE] = ", 0 or more",
		[GRAMMAR_POSITIVE] = ", more than 0",
		[GRAMMAR_PART] = ", more than 0 and at most 1",
		[GRAMMAR_COURSES] = ", less than 1, of a denominator of at most 1000",
		[GRAMMAR_TILE_SIDE] = ", 5 mm to 5 m",
		[GRAMMAR_TURN] = ", at most 360 either way",
		[GRAMMAR_ONE_OR_TWO] = ", 1 or 2",
	};
	return texts[range];
}

static void add_default(struct strbuf *out, const struct grammar_attribute *attribute)
{
	if (attribute->fallback)
		strbuf_printf(out, "`%s`", attribute->fallback);
	if (attribute->fallback_inch)
		strbuf_printf(out, " or `%s`", attribute->fallback_inch);
}

static void add_attribute(struct strbuf *out, const struct grammar_attribute *attribute)
{
	const char *mark = attribute->required ? "**" : "";
	strbuf_printf(out, "| %s`%s`%s | ", mark, attribute->name, mark);
	add_kind(out, attribute);
	strbuf_printf(out, "%s | ", range_text(attribute->range));
	add_default(out, attribute);
	strbuf_printf(out, " | %s", attribute->meaning);
	if (attribute->later)
		strbuf_add(out, "; not supported yet");
	if (attribute->later_words)
		strbuf_printf(out, "; not supported yet: %s", attribute->later_words);
	strbuf_add(out, " |\n");
}

static void add_holding(struct strbuf *out, const struct grammar_element *element)
{
	for (size_t i = 0; i < element->child_count; i++)
		strbuf_printf(out, "%s `<%s>`%s",
		              i ? "," : "\nHolds:", element->children[i].element->name,
		              element->children[i].holding == GRAMMAR_MANY ? "" : " (at most one)");
	if (element->child_count)
		strbuf_add(out, ".\n");
}

static void add_element(struct strbuf *out, const char *path, const struct grammar_element *element)
{
	struct strbuf here = strbuf_in(out->arena);
	strbuf_printf(&here, "%s%s", path, element->name);
	strbuf_printf(out, "\n### %s\n\n%c%s.%s\n", here.text,
	              element->meaning[0] >= 'a' ? element->meaning[0] - 32 : element->meaning[0],
	              element->meaning + 1, element->later ? " Not supported yet." : "");
	if (element->attribute_count)
		strbuf_add(out, "\n| attribute | takes | default | meaning |\n|---|---|---|---|\n");
	for (size_t i = 0; i < element->attribute_count; i++)
		add_attribute(out, &element->attributes[i]);
	add_holding(out, element);
	strbuf_add(&here, "/");
	for (size_t i = 0; i < element->child_count; i++)
		add_element(out, here.text, element->children[i].element);
}

void grammar_write_tables(struct strbuf *out)
{
	add_element(out, "", &grammar_floor);
}

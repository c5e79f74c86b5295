#include "compare/value_same.h"

#include <string.h>

#include "units/number.h"

static int order_of_whole(int64_t a, int64_t b)
{
	return a < b ? -1 : a > b;
}

static int order_of_money(struct money a, struct money b)
{
	for (; a.decimals < b.decimals; a.decimals++)
		a.units *= 10;
	for (; b.decimals < a.decimals; b.decimals++)
		b.units *= 10;
	return order_of_whole(a.units, b.units);
}

/* The values at two places of the kind. */
static int order_at(enum grammar_value kind, const void *a, const void *b)
{
	switch (kind) {
	case GRAMMAR_LENGTH:
	case GRAMMAR_WHOLE:
		return order_of_whole(*(const int64_t *)a, *(const int64_t *)b);
	case GRAMMAR_SHARE: {
		const struct share *p = a, *q = b;
		return order_of_whole(p->num * q->den, q->num * p->den);
	}
	case GRAMMAR_MONEY:
		return order_of_money(*(const struct money *)a, *(const struct money *)b);
	case GRAMMAR_DATE:
		return order_of_whole(((const struct date *)a)->day, ((const struct date *)b)->day);
	case GRAMMAR_YES_NO:
		return *(const bool *)a != *(const bool *)b;
	case GRAMMAR_WORD:
	case GRAMMAR_WORDS:
		return *(const unsigned *)a != *(const unsigned *)b;
	default:
		return number_order(*(const double *)a, *(const double *)b);
	}
}

static bool is_text(enum grammar_value kind)
{
	switch (kind) {
	case GRAMMAR_TEXT:
	case GRAMMAR_ID:
	case GRAMMAR_NAME:
	case GRAMMAR_REF:
	case GRAMMAR_REFS:
	case GRAMMAR_PLACES:
	case GRAMMAR_SUBJECT:
	case GRAMMAR_ABOUT:
		return true;
	default:
		return false;
	}
}

int value_compare(const struct grammar_element *element, const struct grammar_attribute *attribute,
                  struct value_side a, struct value_side b)
{
	if (a.text == NULL || b.text == NULL)
		return a.text != b.text;
	if (is_text(attribute->value))
		return strcmp(a.text, b.text) != 0;
	struct arena *arena = a.reader->arena;
	char *from = arena_alloc(arena, element->size), *to = arena_alloc(arena, element->size);
	const char *wrong;
	if (!value_read(a.reader, element->name, attribute, a.text, from, &wrong) ||
	    !value_read(b.reader, element->name, attribute, b.text, to, &wrong))
		return strcmp(a.text, b.text) != 0;
	return order_at(attribute->value, from + attribute->offset, to + attribute->offset);
}

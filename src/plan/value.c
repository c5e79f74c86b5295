#include "plan/value.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "units/number.h"

struct reading {
	const struct value_reader *reader;
	const char *owner;
	const struct grammar_attribute *attribute;
	const char *text;
	int line;
	void *place;
};

static bool expected(const struct reading *r, const char *what)
{
	diag_error(r->reader->diags, r->line, "<%s> %s=\"%s\"; expected %s", r->owner, r->attribute->name, r->text, what);
	return false;
}

static const char *words_of(const struct reading *r)
{
	struct strbuf list = strbuf_in(r->reader->arena);
	strbuf_add(&list, "one of:");
	for (const char *const *word = r->attribute->words; *word; word++)
		if (**word)
			strbuf_printf(&list, " %s", *word);
	return list.text;
}

/* Lengths in nm, other numbers as they are; the range speaks of both alike. */
static bool in_range(const struct reading *r, double value)
{
	const double mm = 1e6;
	switch (r->attribute->range) {
	case GRAMMAR_NOT_NEGATIVE:
		return value >= 0 || expected(r, "0 or more");
	case GRAMMAR_POSITIVE:
		return value > 0 || expected(r, "more than 0");
	case GRAMMAR_COORDINATE:
		return fabs(value) <= 2e7 * mm || expected(r, "a coordinate within 20 km of the origin");
	case GRAMMAR_TILE_SIDE:
		return (value >= 5 * mm && value <= 5000 * mm) || expected(r, "a tile side from 5 mm to 5 m");
	case GRAMMAR_ANY:
		break;
	}
	return true;
}

static bool read_text(const struct reading *r)
{
	*(const char **)r->place = r->text;
	return true;
}

static bool read_length(const struct reading *r)
{
	int64_t nm;
	const char *wrong;
	if (!length_parse(r->text, r->reader->unit, &nm, &wrong))
		return expected(r, arena_printf(r->reader->arena, "a length such as 3810mm, 12ft 6 1/2in or 1/8in; this %s", wrong));
	if (!in_range(r, (double)nm))
		return false;
	*(int64_t *)r->place = nm;
	return true;
}

typedef bool number_form(const char *text, double *out_value);

static bool read_number(const struct reading *r, number_form *form, const char *what)
{
	double value;
	if (!form(r->text, &value))
		return expected(r, what);
	if (!in_range(r, value))
		return false;
	*(double *)r->place = value;
	return true;
}

static bool percent_form(const char *text, double *out_value)
{
	struct share share;
	if (!share_parse(text, &share))
		return false;
	*out_value = share_value(share);
	return true;
}

static bool read_share(const struct reading *r)
{
	struct share share;
	if (!share_parse(r->text, &share))
		return expected(r, "a share such as 1/3, 0.33 or 25%");
	*(struct share *)r->place = share;
	return true;
}

static bool read_whole(const struct reading *r)
{
	double value;
	if (!number_parse(r->text, &value) || value != floor(value) || fabs(value) > 1e12)
		return expected(r, "a whole number");
	if (!in_range(r, value))
		return false;
	*(int64_t *)r->place = (int64_t)value;
	return true;
}

static bool read_date(const struct reading *r)
{
	return date_parse(r->text, r->place) || expected(r, "a date such as 2026-04-06");
}

/* Place of a word in the list; -1: none. A word that is empty in the list cannot be written. */
static int place_of_word(const char *const *words, const char *word, size_t length)
{
	for (int i = 0; words[i]; i++)
		if (length && strlen(words[i]) == length && memcmp(words[i], word, length) == 0)
			return i;
	return -1;
}

static bool read_word(const struct reading *r)
{
	int place = place_of_word(r->attribute->words, r->text, strlen(r->text));
	if (place < 0)
		return expected(r, words_of(r));
	if (r->attribute->value == GRAMMAR_YES_NO)
		*(bool *)r->place = place == 1;
	else
		*(unsigned *)r->place = (unsigned)place; /* enums are unsigned int here */
	return true;
}

static bool read_words(const struct reading *r)
{
	unsigned set = 0;
	for (const char *at = r->text; *at;) {
		size_t length = strcspn(at, " ");
		int place = place_of_word(r->attribute->words, at, length);
		if (length && place < 0)
			return expected(r, words_of(r));
		if (length)
			set |= 1u << place;
		at += length + (at[length] == ' ');
	}
	*(unsigned *)r->place = set;
	return true;
}

static bool read_id(const struct reading *r)
{
	const char *letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
	const char *others = "0123456789._-abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
	size_t length = strlen(r->text);
	*(const char **)r->place = r->text;
	if (length == 0 || length > 64 || !strchr(letters, r->text[0]) || strspn(r->text, others) != length)
		return expected(r, "a letter and at most 63 letters, digits, dots, hyphens or underscores");
	return true;
}

static bool read_kind(const struct reading *r)
{
	switch (r->attribute->value) {
	case GRAMMAR_ID:
		return read_id(r);
	case GRAMMAR_LENGTH:
		return read_length(r);
	case GRAMMAR_ANGLE:
		return read_number(r, angle_parse, "an angle in degrees");
	case GRAMMAR_TEMPERATURE:
		return read_number(r, temperature_parse, "a temperature such as 55F or 13C");
	case GRAMMAR_STRENGTH:
		return read_number(r, strength_parse, "a strength such as 25MPa or 4000psi");
	case GRAMMAR_MASS:
		return read_number(r, mass_parse, "a mass such as 25kg or 50lb");
	case GRAMMAR_VOLUME:
		return read_number(r, volume_parse, "a volume such as 10.1floz, 600ml or 5gal");
	case GRAMMAR_DENSITY:
		return read_number(r, density_parse, "a density such as 1.6kg/L or 98lb/ft3");
	case GRAMMAR_DECIMAL:
		return read_number(r, number_parse, "a decimal number");
	case GRAMMAR_PERCENT:
		return read_number(r, percent_form, "a share such as 60% or 0.6");
	case GRAMMAR_SHARE:
		return read_share(r);
	case GRAMMAR_WHOLE:
		return read_whole(r);
	case GRAMMAR_DATE:
		return read_date(r);
	case GRAMMAR_YES_NO:
	case GRAMMAR_WORD:
		return read_word(r);
	case GRAMMAR_WORDS:
		return read_words(r);
	case GRAMMAR_TEXT:
	case GRAMMAR_NAME:
		return read_text(r);
	case GRAMMAR_REF:
	case GRAMMAR_REFS:
	case GRAMMAR_PLACES:
	case GRAMMAR_ABOUT:
		break;
	}
	return true;
}

bool value_read(const struct value_reader *reader, const char *owner, const struct grammar_attribute *attribute,
                const char *text, int line, void *object)
{
	return read_kind(&(struct reading){reader, owner, attribute, text, line, (char *)object + attribute->offset});
}

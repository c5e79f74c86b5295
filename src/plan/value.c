#include "plan/value.h"

#include <math.h>
#include <string.h>

#include "units/number.h"

static const double MOST_LENGTH_NM = 2e7 * 1e6; /* 20 km, docs/floor-format.md#limits */

/* One value on its way; `wrong` is what is said when it does not arrive. */
struct reading {
	const struct value_reader *reader;
	const char *owner;
	const struct grammar_attribute *attribute;
	const char *text;
	void *place;
	const char *wrong;
};

static bool expected(struct reading *r, const char *what)
{
	r->wrong = arena_printf(r->reader->arena, "<%s> %s=\"%s\"; expected %s", r->owner,
	                        r->attribute->name, r->text, what);
	return false;
}

/* ---- words ---- */

/* Place of a word in a list; -1: none. An empty word of the list cannot be written. */
static int place_of_word(const char *const *words, const char *word, size_t length)
{
	for (int i = 0; words[i]; i++)
		if (length && strlen(words[i]) == length && memcmp(words[i], word, length) == 0)
			return i;
	return -1;
}

bool value_is_word(const char *const *words, const char *text)
{
	return place_of_word(words, text, strlen(text)) >= 0;
}

bool value_names_others(const struct grammar_attribute *attribute, const char *text)
{
	switch (attribute->value) {
	case GRAMMAR_NAME:
	case GRAMMAR_REF:
	case GRAMMAR_REFS:
	case GRAMMAR_PLACES:
	case GRAMMAR_ABOUT:
		return true;
	case GRAMMAR_SUBJECT:
		return !value_is_word(attribute->words, text);
	default:
		return false;
	}
}

/* Whether a list of words separated by blanks holds one. */
static bool lists_word(const char *list, const char *word)
{
	size_t length = strlen(word);
	for (const char *at = list; at && (at = strstr(at, word)) != NULL; at += length)
		if ((at == list || at[-1] == ' ') && (at[length] == ' ' || !at[length]))
			return true;
	return false;
}

static const char *words_of(struct arena *arena, const struct grammar_attribute *attribute)
{
	struct strbuf list = strbuf_in(arena);
	strbuf_add(&list, "one of:");
	for (const char *const *word = grammar_words(attribute); *word; word++)
		if (**word && !lists_word(attribute->later_words, *word))
			strbuf_printf(&list, " %s", *word);
	return list.text;
}

static bool read_word(struct reading *r)
{
	const char *const *words = grammar_words(r->attribute);
	int place = place_of_word(words, r->text, strlen(r->text));
	if (place < 0)
		return expected(r, words_of(r->reader->arena, r->attribute));
	if (lists_word(r->attribute->later_words, words[place])) {
		r->wrong = arena_printf(r->reader->arena,
		                        "<%s> %s=\"%s\" is not supported yet; expected %s",
		                        r->owner, r->attribute->name, r->text,
		                        words_of(r->reader->arena, r->attribute));
		return false;
	}
	if (r->attribute->value == GRAMMAR_YES_NO)
		*(bool *)r->place = place == 1;
	else
		*(unsigned *)r->place = (unsigned)place; /* an enum without negative values */
	return true;
}

static bool read_words(struct reading *r)
{
	unsigned set = 0;
	for (const char *at = r->text; *at;) {
		size_t length = strcspn(at, " ");
		int place = place_of_word(r->attribute->words, at, length);
		if (length && place < 0)
			return expected(r, words_of(r->reader->arena, r->attribute));
		if (length)
			set |= 1u << place;
		at += length + (at[length] == ' ');
	}
	*(unsigned *)r->place = set;
	return true;
}

/* ---- text ---- */

/* Control characters, and those that turn the direction of what follows, have no place on a
 * drawing. The text is UTF-8: U+0080..9F are C2 80..9F, U+202A..E are E2 80 AA..AE. */
static bool is_printable(const char *text)
{
	for (const unsigned char *at = (const unsigned char *)text; *at; at++)
		if (*at < 0x20 || *at == 0x7f || (at[0] == 0xc2 && at[1] >= 0x80 && at[1] < 0xa0) ||
		    (at[0] == 0xe2 && at[1] == 0x80 && at[2] >= 0xaa && at[2] <= 0xae))
			return false;
	return true;
}

static bool read_text(struct reading *r)
{
	if (r->attribute->words && !value_is_word(r->attribute->words, r->text))
		return expected(r, words_of(r->reader->arena, r->attribute));
	*(const char **)r->place = r->text;
	return true;
}

static bool read_id(struct reading *r)
{
	enum { LONGEST = 64 };
	static const char letters[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
	static const char all[] =
		"abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._-";
	size_t length = strlen(r->text);
	*(const char **)r->place = r->text;
	if (length == 0 || length > LONGEST || !strchr(letters, r->text[0]) ||
	    strspn(r->text, all) != length)
		return expected(r, value_expected(r->reader, r->attribute));
	return true;
}

/* ---- numbers ---- */

/* Lengths are in nm, other numbers as they are; 0 is the same in both. */
static bool in_range(struct reading *r, double value)
{
	const double nm_per_mm = 1e6;
	switch (r->attribute->range) {
	case GRAMMAR_NOT_NEGATIVE:
		return value >= 0 || expected(r, "0 or more");
	case GRAMMAR_POSITIVE:
		return value > 0 || expected(r, "more than 0");
	case GRAMMAR_PART:
		return (value > 0 && value <= 1) ||
		       expected(r, "more than 0 and at most 1 or 100%");
	case GRAMMAR_COURSES:
		return value < 1 || expected(r, "less than 1 or 100%");
	case GRAMMAR_TILE_SIDE:
		return (value >= 5 * nm_per_mm && value <= 5000 * nm_per_mm) ||
		       expected(r, "a tile side from 5 mm to 5 m");
	case GRAMMAR_TURN:
		return (value >= -360 && value <= 360) ||
		       expected(r, "at most 360 degrees either way");
	case GRAMMAR_ONE_OR_TWO:
		return value == 1 || value == 2 || expected(r, "1 or 2");
	case GRAMMAR_ANY:
		break;
	}
	return true;
}

/* A decimal that ends in a digit has no unit of its own. */
static bool is_bare(const char *text)
{
	size_t length = strlen(text);
	while (length && text[length - 1] == ' ')
		length--;
	return length &&
	       ((text[length - 1] >= '0' && text[length - 1] <= '9') || text[length - 1] == '.');
}

static bool read_length(struct reading *r)
{
	int64_t nm;
	const char *why;
	if (!length_parse(r->text, r->reader->unit, &nm, &why))
		return expected(r, arena_printf(r->reader->arena, "%s; this %s",
		                                value_expected(r->reader, r->attribute), why));
	if (is_bare(r->text) && !r->reader->has_unit) {
		if (r->attribute->range == GRAMMAR_POSITIVE ||
		    r->attribute->range == GRAMMAR_NOT_NEGATIVE)
			(void)in_range(r, (double)nm);
		return false;
	}
	if (fabs((double)nm) > MOST_LENGTH_NM)
		return expected(r, "at most 20 km");
	if (!in_range(r, (double)nm))
		return false;
	*(int64_t *)r->place = nm;
	return true;
}

static bool percent_parse(const char *text, double *out_value)
{
	struct share share;
	if (!share_parse(text, &share))
		return false;
	*out_value = share_value(share);
	return true;
}

static bool read_number(struct reading *r, bool parse(const char *text, double *out_value))
{
	double value;
	if (!parse(r->text, &value))
		return expected(r, value_expected(r->reader, r->attribute));
	if (!in_range(r, value))
		return false;
	*(double *)r->place = value;
	return true;
}

/* Courses of a decimal such as 0.3333 hardly ever meet again: what was meant is 1/3. */
static bool repeats(struct reading *r, struct share share)
{
	enum { MOST_COURSES = 1000 };
	if (r->attribute->range != GRAMMAR_COURSES || share.den <= MOST_COURSES)
		return true;
	struct share meant = share_simplest(share, MOST_COURSES);
	return expected(r, arena_printf(r->reader->arena,
	                                "courses that repeat after at most %d, such as %ld/%ld",
	                                MOST_COURSES, (long)meant.num, (long)meant.den));
}

static bool read_share(struct reading *r)
{
	struct share share;
	if (!share_parse(r->text, &share))
		return expected(r, value_expected(r->reader, r->attribute));
	if (!in_range(r, share_value(share)) || !repeats(r, share))
		return false;
	*(struct share *)r->place = share;
	return true;
}

static bool read_whole(struct reading *r)
{
	const double most = 1e9;
	double value;
	if (!number_parse(r->text, &value) || value != floor(value))
		return expected(r, value_expected(r->reader, r->attribute));
	if (fabs(value) > most)
		return expected(r, "at most 1,000,000,000");
	if (!in_range(r, value))
		return false;
	*(int64_t *)r->place = (int64_t)value;
	return true;
}

static bool read_money(struct reading *r)
{
	return money_parse(r->text, r->place) ||
	       expected(r, value_expected(r->reader, r->attribute));
}

static bool read_date(struct reading *r)
{
	return date_parse(r->text, r->place) ||
	       expected(r, value_expected(r->reader, r->attribute));
}

/* ---- all of them ---- */

static bool read_kind(struct reading *r)
{
	switch (r->attribute->value) {
	case GRAMMAR_ID:
		return read_id(r);
	case GRAMMAR_LENGTH:
		return read_length(r);
	case GRAMMAR_ANGLE:
		return read_number(r, angle_parse);
	case GRAMMAR_TEMPERATURE:
		return read_number(r, temperature_parse);
	case GRAMMAR_STRENGTH:
		return read_number(r, strength_parse);
	case GRAMMAR_MASS:
		return read_number(r, mass_parse);
	case GRAMMAR_VOLUME:
		return read_number(r, volume_parse);
	case GRAMMAR_DENSITY:
		return read_number(r, density_parse);
	case GRAMMAR_AREA:
		return read_number(r, area_parse);
	case GRAMMAR_DECIMAL:
		return read_number(r, number_parse);
	case GRAMMAR_PERCENT:
		return read_number(r, percent_parse);
	case GRAMMAR_SHARE:
		return read_share(r);
	case GRAMMAR_WHOLE:
		return read_whole(r);
	case GRAMMAR_MONEY:
		return read_money(r);
	case GRAMMAR_DATE:
		return read_date(r);
	case GRAMMAR_YES_NO:
	case GRAMMAR_WORD:
	case GRAMMAR_SUBJECT:
		return read_word(r);
	case GRAMMAR_WORDS:
		return read_words(r);
	case GRAMMAR_TEXT:
		return read_text(r);
	case GRAMMAR_NAME:
	case GRAMMAR_REF:
	case GRAMMAR_REFS:
	case GRAMMAR_PLACES:
	case GRAMMAR_ABOUT:
		break; /* plan_resolve */
	}
	return true;
}

const char *value_expected(const struct value_reader *reader,
                           const struct grammar_attribute *attribute)
{
	switch (attribute->value) {
	case GRAMMAR_TEXT:
		return attribute->words ? words_of(reader->arena, attribute) : attribute->meaning;
	case GRAMMAR_YES_NO:
	case GRAMMAR_WORD:
	case GRAMMAR_WORDS:
		return words_of(reader->arena, attribute);
	case GRAMMAR_NAME:
	case GRAMMAR_REF:
		return arena_printf(reader->arena, "the id of %s",
		                    grammar_kind_name(attribute->ref_kind));
	case GRAMMAR_REFS:
		return arena_printf(reader->arena, "ids, each of %s",
		                    grammar_kind_name(attribute->ref_kind));
	default:
		return grammar_value_form(attribute->value);
	}
}

bool value_read(const struct value_reader *reader, const char *owner,
                const struct grammar_attribute *attribute, const char *text, void *object,
                const char **out_wrong)
{
	struct reading r = {reader, owner, attribute, text, (char *)object + attribute->offset,
	                    NULL};
	bool is_sound = is_printable(text) ? read_kind(&r) : false;
	if (!is_sound && !is_printable(text))
		r.wrong = arena_printf(reader->arena,
		                       "<%s> %s holds a control character; expected printable text",
		                       owner, attribute->name);
	*out_wrong = r.wrong;
	return is_sound;
}

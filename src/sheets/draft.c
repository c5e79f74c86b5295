#include "sheets/draft.h"

#include <math.h>

#include "units/length.h"
#include "units/number.h"

/* Printed steps: dimensions to 1/16 in or 1 mm, widths of cracks and joints to 1/64 in or
 * a tenth of a millimetre. Source: docs/sources.md D12, common practice. */
enum { DIMENSION_FRACTION = 16, WIDTH_FRACTION = 64, WIDTH_DECIMALS = 1 };

double draft_rounded(const struct draft *draft, double mm)
{
	double step = draft->site->inches ? 25.4 / DIMENSION_FRACTION : 1;
	return round(mm / step) * step;
}

const char *draft_length(const struct draft *draft, double mm)
{
	struct strbuf text = strbuf_in(draft->arena);
	if (draft->site->inches)
		length_add_feet_inches(&text, mm, DIMENSION_FRACTION);
	else
		length_add_mm(&text, mm, 0);
	return text.text;
}

const char *draft_width(const struct draft *draft, double mm)
{
	struct strbuf text = strbuf_in(draft->arena);
	if (draft->site->inches) {
		length_add_feet_inches(&text, mm, WIDTH_FRACTION);
	} else {
		number_add_short(&text, mm, WIDTH_DECIMALS);
		strbuf_add(&text, " mm");
	}
	return text.text;
}

/* A blank inside a measure does not end a line of a paragraph. */
static const char *kept_together(struct arena *arena, const char *text)
{
	struct strbuf kept = strbuf_in(arena);
	for (; *text; text++)
		if (*text == ' ')
			strbuf_add(&kept, "\xc2\xa0");
		else
			strbuf_add_char(&kept, *text);
	return kept.text;
}

const char *draft_measure(const struct draft *draft, double mm)
{
	const char *text = draft_length(draft, mm);
	return kept_together(draft->arena, draft->site->inches
	                                           ? text
	                                           : arena_printf(draft->arena, "%s mm", text));
}

const char *draft_width_measure(const struct draft *draft, double mm)
{
	return kept_together(draft->arena, draft_width(draft, mm));
}

const char *draft_date(const struct draft *draft, struct date date)
{
	if (date.day == 0)
		return "";
	return arena_printf(draft->arena, "%04d-%02d-%02d", date.year, date.month,
	                    date.day_of_month);
}

/* ASCII alone: ids are ASCII, and no locale may reach an output. */
/* Letters of the Latin-1 block: in UTF-8 a lead byte and one of these, the capital 0x20
 * before; 0xB7 is the division sign. */
static bool is_small_after_lead(unsigned char c)
{
	return c >= 0xA0 && c <= 0xBE && c != 0xB7;
}

const char *draft_tag(const struct draft *draft, const char *id)
{
	enum { LEAD = 0xC3 };
	char *tag = arena_strdup(draft->arena, id);
	unsigned char before = 0;
	for (char *c = tag; *c; c++) {
		unsigned char byte = (unsigned char)*c;
		if (*c >= 'a' && *c <= 'z')
			*c = (char)(*c - 'a' + 'A');
		else if (before == LEAD && is_small_after_lead(byte))
			*c = (char)(byte - 0x20);
		before = byte;
	}
	return tag;
}

const char *draft_word(const struct draft *draft, const char *key)
{
	return words_find(draft->words, key);
}

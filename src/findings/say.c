#include "findings/say.h"

#include <string.h>

#include "units/length.h"
#include "units/number.h"
#include "units/quantity.h"

#define MM2_PER_SQFT (LENGTH_MM_PER_FOOT * LENGTH_MM_PER_FOOT)

enum { COARSE = 16, FINE = 64 }; /* parts of an inch */
enum { VALUE_DECIMALS = 2, DECIMALS_MOST = 6 };

/* As sheets print them: widths of cracks and joints finer than lengths. */
static int mm_decimals(double mm)
{
	static const double HAIRLINE = 1, WIDTH = LENGTH_MM_PER_INCH;
	return mm < HAIRLINE ? 2 : mm < WIDTH ? 1 : 0;
}

const char *say_number(const struct saying *saying, double value, int decimals)
{
	/* 6.35 has no exact double; the half it was meant to be is rounded up all the same. */
	const double up = 1 + 1e-12;
	struct strbuf out = strbuf_in(saying->arena);
	number_add_short(&out, value * up, decimals);
	return out.text;
}

static const char *with_unit(const struct saying *saying, const char *number, const char *unit)
{
	const char *key = arena_printf(saying->arena, "unit.%s", unit);
	return arena_printf(saying->arena, "%s %s", number, words_find(saying->words, key));
}

const char *say_length(const struct saying *saying, double mm)
{
	if (!saying->inches)
		return with_unit(saying, say_number(saying, mm, mm_decimals(mm)), "mm");
	struct strbuf out = strbuf_in(saying->arena);
	length_add_feet_inches(&out, mm, mm < LENGTH_MM_PER_INCH ? FINE : COARSE);
	return out.text;
}

const char *say_area(const struct saying *saying, double mm2)
{
	return saying->inches ? with_unit(saying, say_number(saying, mm2 / MM2_PER_SQFT, 1), "sqft")
	                      : with_unit(saying, say_number(saying, mm2 / 1e6, 2), "m2");
}

const char *say_warming(const struct saying *saying, double kelvin)
{
	const double FAHRENHEIT_PER_KELVIN = 1.8;
	return saying->inches
	               ? with_unit(saying, say_number(saying, kelvin * FAHRENHEIT_PER_KELVIN, 0),
	                           "fahrenheit")
	               : with_unit(saying, say_number(saying, kelvin, 0), "kelvin");
}

const char *say_value(const struct saying *saying, double value, const char *unit)
{
	if (strcmp(unit, "mm") == 0)
		return say_length(saying, value);
	if (strcmp(unit, "share") == 0)
		return with_unit(saying, say_number(saying, value * 100, 1), "percent");
	if (strcmp(unit, "kg") == 0)
		return with_unit(saying,
		                 say_number(saying, value / QUANTITY_KG_PER_LB, VALUE_DECIMALS),
		                 "lb");
	return say_number(saying, value, VALUE_DECIMALS);
}

/* What a value of this unit is printed in where no fraction of an inch tells it. */
static const char *say_decimal(const struct saying *saying, double value, const char *unit,
                               int decimals)
{
	if (strcmp(unit, "mm") == 0 && saying->inches)
		return with_unit(saying, say_number(saying, value / LENGTH_MM_PER_INCH, decimals),
		                 "in");
	if (strcmp(unit, "mm") == 0)
		return with_unit(saying, say_number(saying, value, decimals), "mm");
	if (strcmp(unit, "share") == 0)
		return with_unit(saying, say_number(saying, value * 100, decimals), "percent");
	if (strcmp(unit, "kg") == 0)
		return with_unit(saying, say_number(saying, value / QUANTITY_KG_PER_LB, decimals),
		                 "lb");
	return say_number(saying, value, decimals);
}

struct said_pair say_apart(const struct saying *saying, double a, double b, const char *unit)
{
	struct said_pair said = {say_value(saying, a, unit), say_value(saying, b, unit)};
	for (int n = VALUE_DECIMALS; n <= DECIMALS_MOST && strcmp(said.a, said.b) == 0; n++)
		said = (struct said_pair){say_decimal(saying, a, unit, n),
		                          say_decimal(saying, b, unit, n)};
	return said;
}

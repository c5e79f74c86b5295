#include "rules/value.h"

#include <ctype.h>
#include <string.h>

#include "units/length.h"
#include "units/quantity.h"

static const struct {
	const char *name;
	enum value_kind kind;
	double factor;
} units[] = {
	{"", VALUE_NUMBER, 1},
	{"in", VALUE_LENGTH, LENGTH_MM_PER_INCH},
	{"ft", VALUE_LENGTH, LENGTH_MM_PER_FOOT},
	{"mm", VALUE_LENGTH, 1},
	{"m", VALUE_LENGTH, 1000},
	{"days", VALUE_DAYS, 1},
	{"deg", VALUE_ANGLE, 1},
	{"%", VALUE_SHARE, 0.01},
	{"tiles", VALUE_TILES, 1},
	{"turns/ft", VALUE_TURNS, 1},
	{"sqft", VALUE_AREA, LENGTH_MM_PER_FOOT *LENGTH_MM_PER_FOOT},
	{"m2", VALUE_AREA, 1e6},
	{"lb", VALUE_MASS, QUANTITY_KG_PER_LB},
	{"kg", VALUE_MASS, 1},
};

static const struct {
	const char *word, *unit;
} kinds[] = {
	[VALUE_NUMBER] = {"a bare number", "none"},
	[VALUE_LENGTH] = {"a length", "mm"},
	[VALUE_DAYS] = {"a number of days", "days"},
	[VALUE_ANGLE] = {"an angle", "deg"},
	[VALUE_SHARE] = {"a percentage", "share"},
	[VALUE_TILES] = {"a number of tiles", "tiles"},
	[VALUE_TURNS] = {"turns by the foot", "turns/ft"},
	[VALUE_AREA] = {"an area", "mm2"},
	[VALUE_MASS] = {"a mass", "kg"},
};

/* Digits with at most one point among them; NULL: there are none. No locale, no exponent. */
static const char *parse_decimal(const char *text, double *out_number)
{
	double number = 0, scale = 1;
	bool has_point = false, has_digit = false;
	for (;; text++) {
		if (*text == '.' && !has_point) {
			has_point = true;
		} else if (isdigit((unsigned char)*text)) {
			has_digit = true;
			number = number * 10 + (*text - '0');
			scale *= has_point ? 10 : 1;
		} else {
			break;
		}
	}
	*out_number = number / scale;
	return has_digit ? text : NULL;
}

/* A value up to `end`. */
static bool parse_span(const char *text, const char *end, struct value *out_value)
{
	double number, divisor = 1;
	text = parse_decimal(text, &number);
	if (text != NULL && *text == '/')
		text = parse_decimal(text + 1, &divisor);
	if (text == NULL || divisor == 0)
		return false;
	text += strspn(text, " ");
	if (text > end)
		return false;
	size_t length = (size_t)(end - text);
	for (size_t i = 0; i < sizeof units / sizeof units[0]; i++) {
		if (strlen(units[i].name) != length || strncmp(text, units[i].name, length) != 0)
			continue;
		*out_value = (struct value){number * units[i].factor / divisor, units[i].kind};
		return true;
	}
	return false;
}

bool value_parse(const char *text, struct value *out_value)
{
	return parse_span(text, text + strlen(text), out_value);
}

bool value_parse_either(const char *text, bool inches, struct value *out_value)
{
	static const char either[] = " or ";
	const char *at = strstr(text, either);
	struct value metric;
	if (at == NULL)
		return value_parse(text, out_value);
	if (!parse_span(text, at, out_value) || !value_parse(at + strlen(either), &metric) ||
	    metric.kind != out_value->kind)
		return false;
	if (!inches)
		*out_value = metric;
	return true;
}

const char *value_kind_word(enum value_kind kind)
{
	return kinds[kind].word;
}

const char *value_unit_word(const struct value *value)
{
	return kinds[value->kind].unit;
}

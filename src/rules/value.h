/* value.h - a value of a rule table: a number, a fraction or a percentage, with its unit
 * as the trade writes it, brought to the unit the program works in.
 * Units: lengths come out in mm, areas in mm2, masses in kg, shares as fractions of 1, turns
 * by the foot. By value. */
#ifndef RULES_VALUE_H
#define RULES_VALUE_H
#include <stdbool.h>

enum value_kind {
	VALUE_NUMBER,
	VALUE_LENGTH,
	VALUE_DAYS,
	VALUE_ANGLE,
	VALUE_SHARE,
	VALUE_TILES,
	VALUE_TURNS,
	VALUE_AREA,
	VALUE_MASS,
};

struct value {
	double number;
	enum value_kind kind;
};

/* "1/8 in", "28 days", "40 %", "1/3". False: not a value. */
bool value_parse(const char *text, struct value *out_value);
/* "1/8 in or 3 mm": the first in a plan drawn in inches, the second in a metric one. A value
 * alone holds in both. False: not a value, or two of different kinds. */
bool value_parse_either(const char *text, bool inches, struct value *out_value);
/* What a value is, for messages: "a length". */
const char *value_kind_word(enum value_kind);
/* The unit it came out in, as records and findings name it: "mm". */
const char *value_unit_word(const struct value *);

#endif

/* number.h - decimal numbers in and out, whatever the locale.
 * By value; nothing is owned. */
#ifndef UNITS_NUMBER_H
#define UNITS_NUMBER_H
#include <stdbool.h>

#include "base/strbuf.h"

/* Adds `value` with exactly `decimals` places (0 to 15), its exact binary value rounded to
 * nearest; never a negative zero, never an exponent. Values are finite. */
void number_add(struct strbuf *, double value, int decimals);
/* The same, trailing zeros and a bare point left out. */
void number_add_short(struct strbuf *, double value, int decimals);
const char *number_text(struct arena *, double value, int decimals);
/* Reads an optional sign, digits and an optional fraction; nothing else. Digits past the
 * 15th significant one are dropped; false where they stand before the point. */
bool number_parse(const char *text, double *out_value);

/* Which of two computed values is greater once both are rounded to millionths, so that
 * their last bits decide nothing: -1, 0 or 1. */
int number_order(double a, double b);

#endif

/* value_same.h - whether two attributes say the same, however it is written. */
#ifndef COMPARE_VALUE_SAME_H
#define COMPARE_VALUE_SAME_H
#include "plan/grammar.h"
#include "plan/value.h"

struct value_side {
	const struct value_reader *reader;
	const char *text; /* NULL: nothing is written and nothing holds by default */
};

/* -1, 0, 1 where the values have an order (lengths, numbers, money); else 0 or 1. */
int value_compare(const struct grammar_element *, const struct grammar_attribute *,
                  struct value_side a, struct value_side b);

#endif

/* value.h - one attribute's text into its place in an element's struct.
 * Fails: says what is wrong and what was expected. Values that name other elements are left
 * for plan_resolve. */
#ifndef PLAN_VALUE_H
#define PLAN_VALUE_H
#include "base/arena.h"
#include "plan/grammar.h"
#include "units/length.h"

struct value_reader {
	struct arena *arena;
	enum length_unit unit; /* of a bare decimal */
	bool has_unit;         /* false: the root does not say, which is reported there */
};

/* `owner` names the element in messages. False: the place is left as it was; `*out_wrong`
 * says why, or stays NULL where that follows from an error reported elsewhere. */
bool value_read(const struct value_reader *, const char *owner, const struct grammar_attribute *,
                const char *text, void *object, const char **out_wrong);
/* What the attribute takes, in words: "a date such as 2026-04-06". */
const char *value_expected(const struct value_reader *, const struct grammar_attribute *);
bool value_is_word(const char *const *words, const char *text);
/* True where the value names other elements: it is resolved when all are read. */
bool value_names_others(const struct grammar_attribute *, const char *text);

#endif

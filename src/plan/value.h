/* value.h - one attribute's text into its place in an element's struct.
 * Fails: reports what is wrong and what was expected, at the attribute's line. Values that
 * name other elements are left for plan_resolve. */
#ifndef PLAN_VALUE_H
#define PLAN_VALUE_H
#include "base/diag.h"
#include "plan/grammar.h"
#include "units/length.h"

struct value_reader {
	struct arena *arena;
	struct diag_list *diags;
	enum length_unit unit; /* of a bare decimal */
};

/* `owner` names the element in messages. False: reported, the place is left as it was. */
bool value_read(const struct value_reader *, const char *owner, const struct grammar_attribute *,
                const char *text, int line, void *object);

#endif

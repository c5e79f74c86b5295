/* plan_build.h - a tree of elements into structs, by the grammar's table.
 * First step of plan_parse: values are read, defaults filled in, names of other elements
 * listed for plan_resolve. */
#ifndef PLAN_PLAN_BUILD_H
#define PLAN_PLAN_BUILD_H
#include "base/array.h"
#include "plan/markup.h"
#include "plan/value.h"

/* An element with an id, as others may name it. */
struct plan_named {
	const char *id;
	enum plan_ref_kind kind;
	const void *object;
	int line;
	bool is_sound; /* false: something about its id is already reported */
};

/* An attribute that names other elements. */
struct plan_naming {
	const struct grammar_attribute *attribute;
	const char *owner, *text;
	void *object;
	int line;
};

struct plan_build {
	struct arena *arena;
	struct diag_list *diags;
	struct value_reader reader;
	bool inches;
	struct plan *plan;
	ARRAY_OF(struct plan_named) named;
	ARRAY_OF(struct plan_naming) namings;
	ARRAY_OF(struct plan_default) defaults;
};

void plan_build_floor(struct plan_build *, const struct markup *root);
/* Resolves names to elements; reports those that name nothing, or the wrong thing. */
void plan_resolve(struct plan_build *);
/* What one attribute alone cannot show: pairs that exclude each other, outlines, limits. */
void plan_check(struct plan_build *);

#endif

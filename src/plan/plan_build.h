/* plan_build.h - a tree of elements into structs, by the grammar's table.
 * The steps of plan_parse share one struct plan_build: plan_build_floor reads values,
 * plan_names_sort and plan_resolve turn ids into elements, plan_check looks at what one value
 * alone cannot show, plan_defaults fills in what follows from other values.
 * Invariants: a step relies only on values that are sound, so that one error never causes
 * another. */
#ifndef PLAN_PLAN_BUILD_H
#define PLAN_PLAN_BUILD_H
#include "base/array.h"
#include "plan/markup.h"
#include "plan/value.h"

/* An element as it was read. They stand in the order of the text: an element's descendants
 * follow it, up to `end`. */
struct plan_built {
	const struct grammar_element *element;
	const struct markup *node;
	void *object;       /* NULL: the element has no struct of its own */
	size_t parent, end; /* places in `built`; the floor is its own parent */
	uint64_t sound;     /* bit i: the value of attribute i can be relied on */
	bool is_understood; /* every child was: a lack of children is an error of its own */
};

/* An id, and what it names. */
struct plan_named {
	const char *id;
	enum plan_ref_kind kind;
	const void *object;
	size_t built;
	int line;
	bool is_sound;    /* false: something about the id is already reported */
	bool is_repeated; /* of the first of several: another may be meant */
	bool is_derived;  /* ROOM.n */
	size_t listed;    /* by which list it was named last, to find it named twice */
	bool is_refused;  /* of an element that was reported, not read: names to it are let pass */
};

/* An attribute that names other elements. */
struct plan_naming {
	const struct grammar_attribute *attribute;
	const struct markup_attribute *written;
	size_t built;
};

enum { PLAN_MOST_FAULTS = 1000 };

struct plan_build {
	struct arena *arena;
	struct diag_list *diags;
	struct value_reader reader;
	bool inches;
	struct plan *plan;
	ARRAY_OF(struct plan_built) built;
	ARRAY_OF(struct plan_named) named;
	ARRAY_OF(struct plan_naming) namings;
	ARRAY_OF(struct plan_default) defaults;
	size_t fault_count;
	bool is_stopped; /* too many faults: the rest of the plan is not looked at */
	bool nameless[PLAN_REF_OTHER + 1]; /* an element of the kind lacks its id */
};

void plan_build_floor(struct plan_build *, const struct markup *root);
/* Resolves ids to elements; reports those that name nothing, or the wrong thing. */
void plan_resolve(struct plan_build *);
/* What one attribute alone cannot show: pairs that exclude each other, counts. */
void plan_check(struct plan_build *);
/* Defaults that follow from other elements. */
void plan_fill_dependent(struct plan_build *);

/* ---- shared by the steps ---- */

/* Reports, and marks the element (for a group: the element it belongs to) PLAN_FAULTY. */
void plan_fault(struct plan_build *, size_t built, int line, const char *text);
/* Only marks: what is wrong is reported elsewhere. */
void plan_mark_faulty(struct plan_build *, size_t built);
/* False where the value was written wrongly, or is required and missing. */
bool plan_is_sound(const struct plan_built *, const char *attribute);
bool plan_is_written(const struct plan_built *, const char *attribute);
/* Line of an attribute as written; of the element where it is not. */
int plan_line_of(const struct plan_built *, const char *attribute);
/* The first element of this id; NULL: none. */
const struct plan_named *plan_find_named(const struct plan_build *, const char *id);
/* Place in `built` of the ancestor, or the element itself, of this name. */
size_t plan_within(const struct plan_build *, size_t built, const char *element);
/* Shared by the checks of rooms and of the rest. `corners` is the element <corners>. */
void plan_check_corners(struct plan_build *, size_t corners);
void plan_check_room(struct plan_build *, size_t built);
void plan_check_obstacle(struct plan_build *, size_t built);
void plan_check_wall(struct plan_build *, size_t built);
void plan_check_doorway(struct plan_build *, size_t built);
void plan_check_diagonal(struct plan_build *, size_t built);
void plan_check_reading(struct plan_build *, size_t built);
/* That what is written of it is a place: x and y, or wall and along. */
void plan_check_place(struct plan_build *, size_t built);
void plan_check_tile(struct plan_build *, size_t built);
void plan_check_module(struct plan_build *, size_t built);
void plan_check_lay(struct plan_build *, size_t built);
/* Children of this name; of a group, those of the group. */
size_t plan_count_children(const struct plan_build *, size_t built, const char *name);
/* The child of this name; `built` itself where there is none. */
size_t plan_child(const struct plan_build *, size_t built, const char *name);
void plan_use_default(struct plan_build *, const struct plan_built *, const char *attribute,
                      const char *value);

#endif

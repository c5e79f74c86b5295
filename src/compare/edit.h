/* edit.h - what differs between the two descriptions of one element: attribute by attribute,
 * by value, so that 12in and 1ft are the same; places by where they lie.
 * Owns: arena. Reads two floors that are sound. */
#ifndef COMPARE_EDIT_H
#define COMPARE_EDIT_H
#include "compare/floor_state.h"
#include "compare/renames.h"
#include "plan/grammar.h"

/* What became of an element; one may have several. */
enum change_kind {
	CHANGE_ADDED = 1,
	CHANGE_REMOVED = 2,
	CHANGE_MOVED = 4,
	CHANGE_WIDENED = 8,
	CHANGE_NARROWED = 16,
	CHANGE_RETYPED = 32,
	CHANGE_ALTERED = 64,
};
enum { CHANGE_KINDS = 7 };

struct edit {
	const char *of;             /* element inside the one that is compared; NULL: itself */
	const char *what;           /* attribute; NULL: the whole of it came or went */
	const char *before, *after; /* as written, or the default; NULL: nothing */
	enum change_kind kind;
	bool is_work; /* false: nothing but what is printed */
};

struct edit_list {
	ARRAY_OF(struct edit) list;
};

struct edit_context {
	struct arena *arena;
	const struct floor_state *base, *revised;
	struct renames *renames;
};

/* Adds what differs between two elements of one kind. */
void edit_find(const struct edit_context *, const struct grammar_element *,
               const struct markup *base, const struct markup *revised, struct edit_list *);
/* The id of an element; NULL: it has none. */
const char *edit_id(const struct markup *);

#endif

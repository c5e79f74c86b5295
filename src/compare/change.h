/* change.h - what was done to the description of a floor, element by element, and why.
 * Owns: arena. Texts of the plan are as they were written. */
#ifndef COMPARE_CHANGE_H
#define COMPARE_CHANGE_H
#include "compare/pairing.h"

struct change {
	size_t pair;
	const struct grammar_element *element;
	const char *id;     /* as it is called now; of one that is gone, as it was; "": none */
	const char *id_was; /* where it is called otherwise now; else NULL */
	unsigned kinds;     /* set of change_kind */
	struct edit *edits;
	size_t edit_count;
	bool is_work;       /* false: nothing but ids and what is printed */
	const char *where;  /* rooms by blanks; "": the whole floor */
	const char *reason; /* NULL: none is stated */
	struct date found;  /* day 0: none is stated */
	int line;           /* of the floor that has it */
};

struct change_list {
	ARRAY_OF(struct change) list;
};

/* In the order in which they can be made one after the other: what is named before what names
 * it, and what goes last of all, the other way round. */
struct change_list change_find(struct arena *, const struct pairing *,
                               const struct floor_state *base, const struct floor_state *revised);
/* The last revision of the revised floor; NULL: none, or the base has it too. */
const struct plan_revision *change_new_revision(const struct plan *base,
                                                const struct plan *revised);

#endif

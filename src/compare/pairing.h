/* pairing.h - which elements of two floors are the same one: those that lie where it lay,
 * whatever they are called, then those that are called the same.
 * Owns: arena; nodes are borrowed. */
#ifndef COMPARE_PAIRING_H
#define COMPARE_PAIRING_H
#include "compare/edit.h"

struct pair {
	const struct grammar_element *element;
	const struct markup *base, *revised; /* NULL: not there */
	bool is_reversed; /* a line in the same place, written from its other end */
};

/* In the order of the revised floor; what is gone stands after what it followed in the base.
 * The first is the two floors themselves. */
struct pairing {
	struct pair *pairs;
	size_t count;
	bool is_any_reversed;
	struct renames renames; /* with elements inside: walls, obstacles, doorways */
};

const struct pairing *pairing_of(struct arena *, const struct floor_state *base,
                                 const struct floor_state *revised);

#endif

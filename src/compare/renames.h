/* renames.h - which id of the revised floor stands for which of the base.
 * Ids are derived from others (K1.strip, ROOM.3): what goes before the point decides.
 * Owns: arena. */
#ifndef COMPARE_RENAMES_H
#define COMPARE_RENAMES_H
#include <stdbool.h>

#include "base/array.h"

struct rename {
	const char *base, *revised;
};

struct renames {
	ARRAY_OF(struct rename) list;
};

void renames_add(struct arena *, struct renames *, const char *base, const char *revised);
/* True where any element has another id now. */
bool renames_any(const struct renames *);
/* The id, derived id or list of ids as the revised floor would have it; what is not of the
 * list comes out as it is. */
const char *renames_revised(struct arena *, const struct renames *, const char *base);

#endif

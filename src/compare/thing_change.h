/* thing_change.h - what is to be seen of a change on a drawing: things that came, and things
 * that went, with the ground that a cloud has to enclose.
 * Units: mm in plan axes. Owns: arena. */
#ifndef COMPARE_THING_CHANGE_H
#define COMPARE_THING_CHANGE_H
#include "compare/thing.h"

struct thing_change {
	struct thing thing;
	bool is_gone;
};

struct thing_changes {
	ARRAY_OF(struct thing_change) list;
};

struct thing_changes thing_changes_find(struct arena *, const struct floor_state *before,
                                        const struct floor_state *after);
/* Of the first list what is in the second too, or overlaps what is. */
struct thing_changes thing_changes_kept(struct arena *, const struct thing_changes *,
                                        const struct thing_changes *);
/* Union of their grounds, of the kinds in the set of THING_BITs: lines as bands of `half_width`
 * to each side. */
struct region thing_changes_ground(struct arena *, const struct thing_changes *, unsigned kinds,
                                   double half_width);

#endif

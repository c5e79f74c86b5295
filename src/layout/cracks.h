/* cracks.h - what becomes of each crack: state, crossed tile, groups, holds.
 * Units: mm in the lay's own axes. Owns: arena.
 * Source: crack table, docs/sources.md#cracks; contract E-C1..E-C4. */
#ifndef LAYOUT_CRACKS_H
#define LAYOUT_CRACKS_H
#include "layout/crossed.h"
#include "layout/hold.h"
#include "rules/crack_rule.h"

/* One crack as it lies in this lay. */
struct placed_crack {
	const struct site_crack *crack;
	const char *id;     /* the plan's */
	const char *origin; /* origin.h */
	struct line *runs;  /* the parts of its line on the lay's ground */
	size_t run_count;
	struct crack_verdict verdict; /* of this crack alone */
	enum crack_state state;       /* its group's worst */
	bool pending;                 /* of the group: drawn, but not to be built yet */
	size_t group;
	double reach; /* width / 2 + wander */
	struct tile_ref *crossed;
	size_t crossed_count;
};

/* Cracks that meet, or whose crossed cells touch. */
struct crack_group {
	const char *id, *origin; /* of its first crack */
	const char *lot;         /* id of the first crack of it over all lays */
	size_t *cracks;          /* indices, in document order */
	size_t crack_count;
	enum crack_state state;
	bool pending;
	struct region crossed; /* union of the crossed cells, holes filled: B */
};

struct cracks {
	struct placed_crack *cracks; /* those that lie on the lay's ground, in document order; then
	                              * slab joints that are relocated */
	size_t crack_count;
	struct crack_group *groups;
	size_t group_count;
	struct hold *holds;
	size_t hold_count;
};

/* What a crack is because of cracks that it goes on to in other lays. */
struct crack_lot {
	size_t first; /* of these, index of the site's crack */
	enum crack_state state;
	bool pending;
};

/* `lots`: by index of the site's cracks; NULL: those of this lay by themselves. */
const struct cracks *cracks_place(struct arena *, const struct tiling *, const struct rules *,
                                  const struct crack_lot *lots);
/* It is to be filled flush before it is bridged: as wide as the rule says, and isolated. */
bool placed_crack_is_filled(const struct placed_crack *, const struct rules *);
/* All ground that is held. */
struct region cracks_held_ground(struct arena *, const struct cracks *);

#endif

/* element.h - everything of a floor that has an id: what the plan names, and what the layout
 * derived from it, each once, with the sheets that it is drawn on.
 * Owns: the draft's arena. Reads the plan as written, the site and the placed floor. */
#ifndef SCREEN_ELEMENT_H
#define SCREEN_ELEMENT_H
#include "base/array.h"
#include "plan/markup.h"
#include "sheets/sheet_set.h"

/* In the order in which they are listed: what work waits for comes first. */
enum element_kind {
	ELEMENT_CRACK,
	ELEMENT_SLAB_JOINT,
	ELEMENT_HOLD,
	ELEMENT_STRIP,
	ELEMENT_JOINT,
	ELEMENT_CONTROL,
	ELEMENT_PANEL,
	ELEMENT_ROOM,
	ELEMENT_WALL,
	ELEMENT_DOORWAY,
	ELEMENT_OBSTACLE,
	ELEMENT_SLAB,
	ELEMENT_READING,
	ELEMENT_LAY,
	ELEMENT_TILE,
	ELEMENT_MEMBRANE,
	ELEMENT_OTHER,
	ELEMENT_KINDS
};

struct element {
	enum element_kind kind;
	const char *id;
	const struct markup *written; /* of the plan; NULL: not written */
	const struct placed_lay *lay; /* of what is placed; NULL: nothing is */
	/* By kind: struct joint, strip, hold, control, panel, site_crack, site_room; NULL: of
	 * others nothing is known beyond the plan's text. */
	const void *thing;
	ARRAY_OF(size_t) pages; /* of the set, where it is drawn; in order */
};

struct elements {
	struct element *items; /* by kind, within it as the plan and the layout have them */
	size_t count;
	const struct element **by_id;
};

/* `plan`: the root of the plan's text. */
struct elements elements_of(const struct draft *, const struct sheet_set *,
                            const struct markup *plan);
const struct element *element_find(const struct elements *, const char *id); /* NULL: none */
bool element_is_on(const struct element *, size_t page);
/* Key of the heading that its kind stands under. */
const char *element_kind_key(enum element_kind);
/* An area, which others lie on: a line near by is meant rather than it. */
bool element_is_ground(const struct element *);

#endif

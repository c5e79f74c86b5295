/* place.h - where on the sheets each finding lies, so that a reader can be led there.
 * Units: paper mm. Owns: the draft's arena. */
#ifndef SCREEN_PLACE_H
#define SCREEN_PLACE_H
#include "screen/element.h"

struct place {
	size_t finding, page;
	struct paper_point at;
};

/* By finding, and of one finding first the sheet that shows best what it is about. A finding
 * whose place no sheet of the set shows has none. */
struct places {
	ARRAY_OF(struct place) list;
};

struct places places_of(const struct draft *, const struct sheet_set *, const struct elements *);
/* The first place of a finding; NULL: it has none. */
const struct place *place_find(const struct places *, size_t finding);

#endif

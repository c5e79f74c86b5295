/* judged.h - what the rules say of a floor written as text: one room of 4 by 3 m on one slab,
 * 200 mm tile, a sheet membrane over cracks. Nothing is asked about it as it is.
 * Owns: the arena given. A text with an error fails the test. */
#ifndef SUPPORT_JUDGED_H
#define SUPPORT_JUDGED_H
#include "findings/finding.h"

/* What to write in place of the attributes that stand there; NULL: as it is. */
struct judged_plan {
	const char *rules;    /* us */
	const char *slab;     /* all but its id */
	const char *room;     /* of the room, more than its id and slab */
	const char *in_room;  /* elements of the room */
	const char *more;     /* elements of the floor */
	const char *tile;     /* all but its id */
	const char *lay;      /* joint, pattern and what follows */
	const char *membrane; /* all but its id and rooms; "": none */
};

const struct findings *judged_plan(struct arena *, const struct judged_plan *);
/* The first finding of a rule; NULL: none. */
const struct finding *judged_find(const struct findings *, const char *rule);

#endif

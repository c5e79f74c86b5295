/* fact.h - what is known of one element, in short rows: as placed, as written, as assumed.
 * Units: lengths as the sheets print them. Owns: the draft's arena. */
#ifndef SCREEN_FACT_H
#define SCREEN_FACT_H
#include "screen/element.h"

struct fact {
	const char *name, *value;
	const char *about; /* the id that the value is, to be led to; NULL: it is none */
};

struct facts {
	ARRAY_OF(struct fact) list;
};

/* What the layout made of it. */
struct facts facts_placed(const struct draft *, const struct element *);
/* Its attributes, as the plan writes them. */
struct facts facts_written(const struct draft *, const struct element *);
/* What the plan left unsaid, and was taken for it. */
struct facts facts_assumed(const struct draft *, const struct element *);

#endif

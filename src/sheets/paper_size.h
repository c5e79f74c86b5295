/* paper_size.h - the sizes of paper a sheet can be drawn on, all lying (landscape).
 * Units: mm of paper. Source: docs/sources.md S01, S03, S14, S16, S17. */
#ifndef SHEETS_PAPER_SIZE_H
#define SHEETS_PAPER_SIZE_H
#include <stddef.h>

#include "base/arena.h"

struct paper_size {
	const char *name;
	double width, height; /* trimmed */
	double column;        /* width of the text column at the right */
	double narrow;        /* the same where the drawing gains a scale by it */
	double band;          /* height of the band under the drawing */
	const char *label;    /* as printed: original sheet size */
};

const struct paper_size *paper_size_find(const char *name); /* NULL: no such paper */
/* All names, for messages. */
const char *paper_size_names(struct arena *);

#endif

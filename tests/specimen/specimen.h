/* specimen.h - one sheet with every line, area, mark, tag, dimension and height of lettering
 * of the drawing language, drawn by the code that draws them on the sheets of a floor.
 * Units: paper mm. Owns: the arena given. `make demo` writes it in every style; the tests
 * measure it. */
#ifndef SPECIMEN_SPECIMEN_H
#define SPECIMEN_SPECIMEN_H
#include "drawing/list.h"

struct specimen {
	const struct list *list;
	struct paper_box areas[AREA_COUNT]; /* where each area is drawn, its outline outside */
	struct paper_box pens[PEN_COUNT];   /* where each line is drawn, along the middle */
};

/* In a style; its labels have found their places. */
struct specimen specimen_draw(struct arena *, const struct style *, struct text_engine *);

#endif

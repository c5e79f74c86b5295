/* hold.h - ground where no work goes on until someone with authority answers.
 * Units: mm, mm2 in the lay's own axes. Owns: arena. Source: contract, "Cracks". */
#ifndef LAYOUT_HOLD_H
#define LAYOUT_HOLD_H
#include "layout/crossed.h"

struct hold {
	const char *id; /* CRACK.hold */
	size_t group;
	struct region region;        /* on tile joints or the field's edge */
	double area_mm2;             /* of region */
	long whole_count, cut_count; /* tile inside, counted apart */
	double tile_mm2;
};

/* A line whose surroundings are held, and how near tile may come to it. */
struct hold_line {
	struct line line;
	double distance;
};

/* Union of the cells of all tile within reach of the lines, in the panels the lines touch. */
struct hold hold_round_lines(struct arena *, const struct tiling *, const struct hold_line *,
                             size_t count);

#endif

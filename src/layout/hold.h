/* hold.h - ground where no work goes on until someone with authority answers.
 * Units: mm, mm2 in the lay's own axes. Owns: arena. Source: contract, "Cracks". */
#ifndef LAYOUT_HOLD_H
#define LAYOUT_HOLD_H
#include "layout/crossed.h"

struct hold {
	const char *id; /* CRACK.hold */
	size_t group;
	struct region region;   /* on tile joints or the field's edge */
	double area_mm2;        /* of region */
	struct tile_ref *tiles; /* inside, each once, ordered */
	size_t tile_count;
	long whole_count, cut_count; /* of those that no hold before it has, counted apart */
	double tile_mm2;             /* of these */
};

/* A line whose surroundings are held, and how near tile may come to it. */
struct hold_line {
	struct line line;
	double distance;
};

/* Union of the cells of all tile within reach of the lines, in the panels the lines touch; what
 * the holds before it count it does not count again. */
struct hold hold_round_lines(struct arena *, const struct tiling *, const struct hold_line *,
                             size_t count, const struct hold *before, size_t before_count);

#endif

/* crew_marks.h - what a crew measures from the control lines: strip corners, joint ends.
 * Units: floor mm in plan axes. Owns: arena.
 * Places along x stand under the room, places along y at its left; a place that several
 * corners share is given once. */
#ifndef SHEETS_CREW_MARKS_H
#define SHEETS_CREW_MARKS_H
#include "sheets/lay_view.h"
#include "sheets/margin.h"

struct crew_marks {
	double origin[2]; /* x and y of the control lines */
	bool has_origin[2];
	struct places sides[SIDE_COUNT]; /* sorted */
	/* Of control lines with no wall beside them: where they meet the walls along a side of the
	 * window, between the corners of the room; and the ends at other walls. */
	struct places ends[SIDE_COUNT];
	ARRAY_OF(struct point) inside;
};

/* A turned lay has no sides. */
struct crew_marks crew_marks_find(struct arena *, const struct lay_view *);
/* The corners of the room along a side: its chain, first to last. */
struct places room_corners(struct arena *, const struct site_room *, enum side);

#endif

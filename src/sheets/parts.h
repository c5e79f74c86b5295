/* parts.h - a large floor on several sheets: cells of a grid that overlap, each at a scale
 * that can be read.
 * Units: floor mm in plan axes, needs and drawing in paper mm. Owns: the arena given.
 * Invariants: the cores cover the whole without overlap; what lies in a core lies in the
 * window of the same part; the same floor and paper give the same parts. */
#ifndef SHEETS_PARTS_H
#define SHEETS_PARTS_H
#include "sheets/margin.h"

struct part {
	struct box core;   /* up to its match lines */
	struct box window; /* what it shows: the core and some of its neighbours */
	int column, row;   /* from the left, from the top */
	const char *name;  /* of its sheet */
};

struct parts {
	double scale;
	struct margin whole;      /* the window of all parts, and the paper round each */
	struct paper_box drawing; /* on each sheet, for window and margins */
	int columns, rows;
	struct part *list; /* row by row from the top left, without those that show no ground */
	size_t count;
};

/* The fewest parts that show the margin's window at the scale; count 0: more than `most`.
 * `name`: of the first sheet; the others are NAME-2 and so on. */
struct parts parts_divide(const struct draft *, const struct margin *, struct paper_box drawing,
                          double scale, const char *name, size_t most);
/* The view of a part on its sheet. */
struct view parts_view(const struct parts *, size_t part);
/* The part that goes on at a side; NULL: none. */
const struct part *parts_next_to(const struct parts *, const struct part *, enum side);
/* What the sheet shows of the floor and names there, as a view at 1:1 that is nowhere. */
struct view parts_extent(const struct sheet *);
/* True where the side of the sheet's view is an end of the whole floor. */
bool parts_is_outer(const struct sheet *, enum side);

#endif

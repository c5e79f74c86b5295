/* margin.h - what stands round a room on its sheet: the view fitted into the drawing, and
 * dimension lines in lanes outside each side of its window.
 * Units: floor mm in plan axes; offsets in paper mm. Plan north is up.
 * Invariant: the members of a chain add up to its overall, to the printed unit: positions
 * are rounded, not members. */
#ifndef SHEETS_MARGIN_H
#define SHEETS_MARGIN_H
#include "drawing/view.h"
#include "sheets/sheet.h"

enum side { SIDE_BOTTOM, SIDE_RIGHT, SIDE_TOP, SIDE_LEFT, SIDE_COUNT };

static inline bool side_is_level(enum side side)
{
	return side == SIDE_BOTTOM || side == SIDE_TOP;
}

/* Positions along a side, floor mm in plan axes: x under and over, y at the sides. */
struct places {
	ARRAY_OF(double) at;
};

/* Sorts, and drops what is nearer than `least` to the one before; both ends stay what they are,
 * so that chains between the same ends add up to the same. */
void places_sort(struct places *, double least);

/* A window of the floor with the paper it needs on each side. */
struct margin {
	struct box window;
	struct box walls; /* without the recesses of doorways: what the whole is told to measure */
	double need[SIDE_COUNT];
};

/* The scale of the view with this margin, beside the narrow column of text; 0: it does not fit. */
double margin_scale(const struct sheet *, const struct margin *);
/* The view at the scale asked for, or the largest standard one that fits the sheet; of a
 * sheet that shows a part that part, whose window becomes the margin's. False: it does not
 * fit (at any). Sets sheet->scale; what is drawn then is cut to the part until
 * part_marks_draw. */
bool margin_fit(struct sheet *, struct margin *, struct view *out_view);

/* A chain through the places, `offset` outside the window. Of a floor in parts the members of
 * which the view shows something: one that goes on on another part says its whole length on
 * both. */
void margin_chain(struct sheet *, const struct view *, struct box window, enum side, double offset,
                  const struct places *, const char *element);
/* Distances from `origin` to each place on both its sides. */
void margin_running(struct sheet *, const struct view *, struct box window, enum side,
                    double offset, double origin, const struct places *, const char *element);

#endif

/* dimension.h - dimension chains: measured on the floor, lined up on the paper.
 * Units: floor points through a view; offsets in paper mm. Built of ordinary ops of the
 * list and label requests with fixed places: thin unbroken line, oblique ticks, extension
 * lines with a gap at the object and an overshoot, value above the line; a member too
 * short for its value has it outside or on a second level with a short leader.
 * Source: docs/sources.md R-D03, R-D05 to R-D09 (the figures stand in dimension.c). */
#ifndef DRAWING_DIMENSION_H
#define DRAWING_DIMENSION_H
#include "drawing/list.h"
#include "drawing/view.h"

/* Distances for placing chains in lanes. */
struct dimension_lanes {
	double first; /* outline to the first dimension line */
	double step;  /* from one dimension line to the next */
};
struct dimension_lanes dimension_lanes(const struct list *);

/* Through `points[0..count-1]`, measured along `direction` (floor vector); the dimension
 * line runs along it, through the paper point `through`. values[i] stands between points
 * i and i+1 (NULL: tick only). Points are taken in the order given. */
struct dimension_chain {
	const struct point *points;
	size_t count;
	const char *const *values;
	struct point direction;
	struct paper_point through;
	const char *element;
	bool has_extensions; /* lines from the points to the dimension line */
	bool goes_on[2];     /* the line goes on past its first, its last point: no mark there */
};
void dimension_chain(struct list *, const struct view *, const struct dimension_chain *);

/* Running dimensions from `points[0]`: an origin circle there, values[i] at each further
 * point, square to the line. */
void dimension_running(struct list *, const struct view *, const struct dimension_chain *);
/* The circle from which running dimensions count. */
void dimension_origin(struct list *, struct paper_point at, const char *element);

/* A single dimension a-b with its line offset by `offset` paper mm to the left of a->b as
 * seen on the paper (negative: right). */
void dimension_pair(struct list *, const struct view *, struct point a, struct point b,
                    double offset, const char *value, const char *element);

#endif

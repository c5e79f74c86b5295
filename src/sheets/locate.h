/* locate.h - dimensions that say where a point of the slab is: two distances from walls.
 * Points at a wall come as places along that side of the room; others as two dimensions
 * from the nearest walls. Units: floor mm in plan axes. */
#ifndef SHEETS_LOCATE_H
#define SHEETS_LOCATE_H
#include "sheets/margin.h"

struct located {
	struct places sides[SIDE_COUNT]; /* at the walls, for chains; room corners included */
	ARRAY_OF(struct point) inside;   /* to be located by two dimensions each */
};

/* Sorts the ends of a line into places at walls and points inside. */
void locate_line(struct arena *, struct located *, struct box window, struct line line);
/* Two dimensions from the nearest sides of the room to an inside point. */
/* How far a point is from the walls that it is measured from. */
double locate_reach(const struct site_room *, struct point);
void locate_draw_inside(struct sheet *, const struct view *, const struct site_room *, struct point,
                        const char *element);

#endif

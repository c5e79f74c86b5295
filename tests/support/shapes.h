/* shapes.h - points of a test written where they are used.
 * Units: mm. Rings and lines borrow the literal they are made of; regions are the arena's. */
#ifndef SUPPORT_SHAPES_H
#define SUPPORT_SHAPES_H
#include "geometry/region.h"

#define RING(...)                                     \
	((struct ring){(struct point[]){__VA_ARGS__}, \
	               sizeof((struct point[]){__VA_ARGS__}) / sizeof(struct point)})
#define LINE(...)                                     \
	((struct line){(struct point[]){__VA_ARGS__}, \
	               sizeof((struct point[]){__VA_ARGS__}) / sizeof(struct point)})

static inline struct region shape_rectangle(struct arena *arena, double x0, double y0, double x1,
                                            double y1)
{
	return region_from_ring(arena, RING({x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}));
}

#endif

/* point.h - points and vectors of the floor.
 * Units: mm. By value; nothing is owned and nothing fails. */
#ifndef GEOMETRY_POINT_H
#define GEOMETRY_POINT_H
#include <math.h>
#include <stddef.h>

struct point {
	double x, y;
};

static inline struct point point_add(struct point a, struct point b)
{
	return (struct point){a.x + b.x, a.y + b.y};
}
static inline struct point point_sub(struct point a, struct point b)
{
	return (struct point){a.x - b.x, a.y - b.y};
}
static inline struct point point_scale(struct point a, double factor)
{
	return (struct point){a.x * factor, a.y * factor};
}
/* a + t (b - a) */
static inline struct point point_between(struct point a, struct point b, double t)
{
	return (struct point){a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)};
}
static inline double point_dot(struct point a, struct point b)
{
	return a.x * b.x + a.y * b.y;
}
/* Positive where b lies to the left of a. */
static inline double point_cross(struct point a, struct point b)
{
	return a.x * b.y - a.y * b.x;
}
/* sqrt is exact to the last bit everywhere; hypot is not. */
static inline double point_length(struct point a)
{
	return sqrt(a.x * a.x + a.y * a.y);
}
static inline double point_distance(struct point a, struct point b)
{
	return point_length(point_sub(a, b));
}
/* A quarter turn to the left, exact. */
static inline struct point point_left(struct point a)
{
	return (struct point){-a.y, a.x};
}
/* Length 1; (1,0) for the zero vector. */
static inline struct point point_unit(struct point a)
{
	double length = point_length(a);
	return length > 0 ? (struct point){a.x / length, a.y / length} : (struct point){1, 0};
}

/* An open line through `count` >= 1 points. */
struct line {
	struct point *points;
	size_t count;
};

#endif

#include "findings/beside.h"

#include <stdbool.h>

/* A point by its place along the straight and its distance from it, left positive. */
struct placed_point {
	double along, off;
};

/* The stretch that is being followed: least and greatest place along the straight. */
struct stretch {
	double low, high, longest;
	bool is_open;
};

static void stretch_close(struct stretch *stretch)
{
	stretch->is_open = false;
}

static void stretch_add(struct stretch *stretch, double along)
{
	stretch->low = stretch->is_open ? fmin(stretch->low, along) : along;
	stretch->high = stretch->is_open ? fmax(stretch->high, along) : along;
	stretch->is_open = true;
	stretch->longest = fmax(stretch->longest, stretch->high - stretch->low);
}

/* Narrows t0..t1 to where value(t) = from + t * (to - from) lies between low and high. */
static bool narrow(double from, double to, double low, double high, double *t0, double *t1)
{
	double change = to - from;
	if (change == 0)
		return from >= low && from <= high;
	double at_low = (low - from) / change, at_high = (high - from) / change;
	*t0 = fmax(*t0, fmin(at_low, at_high));
	*t1 = fmin(*t1, fmax(at_low, at_high));
	return *t0 <= *t1;
}

static void follow(struct stretch *stretch, struct placed_point p, struct placed_point q,
                   double length, double distance)
{
	double t0 = 0, t1 = 1;
	bool is_near = narrow(p.off, q.off, 0, distance, &t0, &t1) &&
	               narrow(p.along, q.along, 0, length, &t0, &t1);
	if (!is_near || t0 > 0)
		stretch_close(stretch);
	if (!is_near)
		return;
	stretch_add(stretch, p.along + t0 * (q.along - p.along));
	stretch_add(stretch, p.along + t1 * (q.along - p.along));
}

static double beside_on(struct line line, struct point a, struct point b, double distance,
                        double side)
{
	struct point along = point_unit(point_sub(b, a));
	struct stretch stretch = {0};
	struct placed_point before = {0};
	for (size_t i = 0; i < line.count; i++) {
		struct point p = point_sub(line.points[i], a);
		struct placed_point at = {point_dot(along, p), side * point_cross(along, p)};
		if (i > 0)
			follow(&stretch, before, at, point_distance(a, b), distance);
		before = at;
	}
	return stretch.longest;
}

double beside_length(struct line line, struct point a, struct point b, double distance)
{
	return fmax(beside_on(line, a, b, distance, 1), beside_on(line, a, b, distance, -1));
}

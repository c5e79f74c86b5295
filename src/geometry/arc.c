#include "geometry/arc.h"

#include "geometry/tolerance.h"

/* Halves it takes until the sagitta of each side is small enough. The half of an arc with
 * half chord `a` and rise `h` has the half chord sqrt(a a + h h) / 2; its rise follows from
 * the radius, written so that nothing cancels in flat arcs. */
static size_t halvings_of(double half_chord, double rise)
{
	double radius = (half_chord * half_chord + rise * rise) / (2 * rise);
	size_t halvings = 0;
	while (rise > TOLERANCE_SAGITTA) {
		double half = sqrt(half_chord * half_chord + rise * rise) / 2;
		double apothem = sqrt(fmax(radius * radius - half * half, 0));
		rise = half * half / (radius + apothem);
		half_chord = half;
		halvings++;
	}
	return halvings;
}

/* The point of the arc half way from `a` to `b`, which lie on the circle. */
static struct point middle_of(struct point a, struct point b, double radius, double side)
{
	struct point middle = point_between(a, b, 0.5), along = point_sub(b, a);
	double half = point_length(along) / 2;
	double apothem = sqrt(fmax(radius * radius - half * half, 0));
	double rise = half * half / (radius + apothem);
	return point_add(middle, point_scale(point_left(point_unit(along)), side * rise));
}

struct line arc_line(struct arena *arena, struct point from, struct point to, double rise)
{
	double half_chord = point_distance(from, to) / 2, high = fabs(rise);
	size_t halvings = high > TOLERANCE_SAGITTA ? halvings_of(half_chord, high) : 0;
	size_t sides = (size_t)1 << halvings;
	struct line line = {ARENA_ARRAY(arena, struct point, sides + 1), sides + 1};
	line.points[0] = from;
	line.points[sides] = to;
	if (sides == 1)
		return line;
	struct point left = point_left(point_unit(point_sub(to, from)));
	line.points[sides / 2] = point_add(point_between(from, to, 0.5), point_scale(left, rise));
	double radius = (half_chord * half_chord + high * high) / (2 * high);
	for (size_t step = sides / 2; step > 1; step /= 2)
		for (size_t i = 0; i < sides; i += step)
			line.points[i + step / 2] = middle_of(line.points[i], line.points[i + step],
			                                      radius, rise > 0 ? 1 : -1);
	return line;
}

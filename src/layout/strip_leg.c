#include "layout/strip_leg.h"

#include "geometry/segment.h"
#include "geometry/tolerance.h"

struct leg_list {
	ARRAY_OF(struct strip_leg) legs;
};

struct point strip_leg_own(const struct strip_leg *leg, struct point p)
{
	struct point way = point_sub(p, leg->from);
	return (struct point){point_dot(leg->along, way), point_cross(leg->along, way)};
}

void strip_leg_hold(struct strip_leg *leg, const struct point *points, size_t count, double margin)
{
	for (size_t k = 0; k < count; k++) {
		struct point own = strip_leg_own(leg, points[k]);
		leg->left = fmax(leg->left, own.y + margin);
		leg->right = fmax(leg->right, margin - own.y);
		leg->before = fmax(leg->before, margin - own.x);
		leg->after = fmax(leg->after, own.x - leg->length + margin);
	}
}

/* The leg along `line` from point `first` to point `last`. */
static struct strip_leg make_leg(struct line line, size_t first, size_t last, double half_width)
{
	struct strip_leg leg = {.from = line.points[first], .to = line.points[last]};
	leg.crack = (struct line){line.points + first, last - first + 1};
	leg.along = point_unit(point_sub(leg.to, leg.from));
	leg.length = point_distance(leg.from, leg.to);
	for (size_t k = first; k <= last; k++) {
		struct point own = strip_leg_own(&leg, line.points[k]);
		leg.crack_left = fmax(leg.crack_left, own.y);
		leg.crack_right = fmax(leg.crack_right, -own.y);
		/* Lengthwise only where the crack itself runs back past an end. */
		if (own.x < -TOLERANCE_SAME)
			leg.before = fmax(leg.before, half_width - own.x);
		if (own.x > leg.length + TOLERANCE_SAME)
			leg.after = fmax(leg.after, own.x - leg.length + half_width);
	}
	leg.left = leg.crack_left + half_width;
	leg.right = leg.crack_right + half_width;
	return leg;
}

/* The point between `first` and `last` farthest from the straight line between them, and how
 * wide a band along it holds them all. */
static size_t farthest(struct line line, size_t first, size_t last, double *out_band)
{
	const struct strip_leg leg = make_leg(line, first, last, 0);
	size_t far = first;
	double most = TOLERANCE_SAME;
	for (size_t k = first + 1; k < last; k++) {
		double distance =
			segment_distance((struct segment){leg.from, leg.to}, line.points[k]);
		if (distance <= most + TOLERANCE_SAME)
			continue;
		most = distance;
		far = k;
	}
	*out_band = leg.crack_left + leg.crack_right;
	/* What runs back past an end is not straight, however narrow. */
	if (far != first && (leg.before > 0 || leg.after > 0))
		*out_band = INFINITY;
	return far;
}

/* Splits at the farthest point until all is straight enough (Douglas and Peucker 1973). */
static void add_legs(struct arena *arena, struct leg_list *list, struct line line, size_t first,
                     size_t last, double straight, double half_width)
{
	double band;
	size_t far = farthest(line, first, last, &band);
	if (far != first && band > 2 * straight + TOLERANCE_SAME) {
		add_legs(arena, list, line, first, far, straight, half_width);
		add_legs(arena, list, line, far, last, straight, half_width);
		return;
	}
	*array_push(arena, &list->legs) = make_leg(line, first, last, half_width);
}

/* Past a bend, half the width times the tangent of half the turn closes the outer corner; at
 * a sharper turn than square the two ends, each half a width long, close it between them. */
static void meet_at_bend(struct strip_leg *one, struct strip_leg *next, double half_width)
{
	double turn = fabs(point_cross(one->along, next->along));
	double share = fmin(turn / fmax(1 + point_dot(one->along, next->along), TOLERANCE_SAME), 1);
	one->after = fmax(one->after, half_width * share);
	next->before = fmax(next->before, half_width * share);
}

struct strip_leg *strip_legs(struct arena *arena, struct line line, double straight,
                             double half_width, size_t *out_count)
{
	struct leg_list list = {0};
	if (line.count > 1)
		add_legs(arena, &list, line, 0, line.count - 1, straight, half_width);
	for (size_t k = 0; k + 1 < list.legs.count; k++)
		meet_at_bend(&list.legs.items[k], &list.legs.items[k + 1], half_width);
	*out_count = list.legs.count;
	return list.legs.items;
}

double strip_leg_distance(const struct strip_leg *leg, struct point p)
{
	return segment_distance((struct segment){leg->from, leg->to}, p);
}

static double lacking(double length, double step)
{
	double whole = ceil((length - TOLERANCE_SAME) / step) * step;
	return fmax(whole - length, 0);
}

void strip_leg_round(struct strip_leg *leg, double step, bool grows_before)
{
	double wide = lacking(leg->left + leg->right, step);
	leg->left += wide / 2;
	leg->right += wide / 2;
	double more = lacking(leg->before + leg->length + leg->after, step);
	*(grows_before ? &leg->before : &leg->after) += more;
}

struct ring strip_leg_ring(struct arena *arena, const struct strip_leg *leg, double low,
                           double high, double start, double end)
{
	const struct point own[] = {{start, low}, {end, low}, {end, high}, {start, high}};
	struct point left = point_left(leg->along), corners[4];
	for (size_t k = 0; k < 4; k++)
		corners[k] = point_add(leg->from, point_add(point_scale(leg->along, own[k].x),
		                                            point_scale(left, own[k].y)));
	return ring_copy(arena, corners, 4);
}

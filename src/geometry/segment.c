#include "geometry/segment.h"

#include "geometry/tolerance.h"

double segment_length(struct segment s)
{
	return point_distance(s.from, s.to);
}

struct point segment_nearest(struct segment s, struct point p)
{
	struct point along = point_sub(s.to, s.from);
	double square = point_dot(along, along);
	if (square == 0)
		return s.from;
	double share = point_dot(point_sub(p, s.from), along) / square;
	if (share <= 0)
		return s.from;
	if (share >= 1)
		return s.to;
	return point_between(s.from, s.to, share);
}

double segment_distance(struct segment s, struct point p)
{
	return point_distance(segment_nearest(s, p), p);
}

struct segment segment_of_ring(struct ring ring, size_t i)
{
	size_t next = i + 1 < ring.count ? i + 1 : 0;
	return (struct segment){ring.points[i], ring.points[next]};
}

/* Which side of the line of `s` the point lies on: 1 left, -1 right, 0 on it. */
static int side_of(struct segment s, struct point p)
{
	double length = segment_length(s);
	double off = point_cross(point_sub(s.to, s.from), point_sub(p, s.from));
	if (off > TOLERANCE_SAME * length)
		return 1;
	return off < -TOLERANCE_SAME * length ? -1 : 0;
}

static bool ends_near(struct segment a, struct segment b)
{
	return segment_distance(a, b.from) < TOLERANCE_SAME ||
	       segment_distance(a, b.to) < TOLERANCE_SAME ||
	       segment_distance(b, a.from) < TOLERANCE_SAME ||
	       segment_distance(b, a.to) < TOLERANCE_SAME;
}

bool segment_meets(struct segment a, struct segment b)
{
	if (side_of(a, b.from) * side_of(a, b.to) < 0 && side_of(b, a.from) * side_of(b, a.to) < 0)
		return true;
	return ends_near(a, b);
}

bool segment_crossing(struct segment a, struct segment b, double *out_share)
{
	struct point along = point_sub(a.to, a.from), other = point_sub(b.to, b.from);
	double slope = point_cross(along, other);
	double length = point_length(along);
	if (fabs(slope) <= TOLERANCE_SAME * length || !segment_meets(a, b))
		return false;
	double share = point_cross(point_sub(b.from, a.from), other) / slope;
	*out_share = fmin(fmax(share, 0), 1);
	return true;
}

double segment_gap(struct segment a, struct segment b)
{
	if (segment_meets(a, b))
		return 0;
	double from = fmin(segment_distance(a, b.from), segment_distance(a, b.to));
	double to = fmin(segment_distance(b, a.from), segment_distance(b, a.to));
	return fmin(from, to);
}

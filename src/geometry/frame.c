#include "geometry/frame.h"

static const double DEG = 3.14159265358979323846 / 180;

/* Sums x - x^3/3! + … (or 1 - x^2/2! + …) for x up to an eighth turn, to the last bit or
 * two. The library's sine takes another path on other processors, and one bit there would
 * reach every coordinate of a turned floor. */
static double series(double first, double square, int factor)
{
	double term = first, sum = first;
	for (int n = factor; n < 24; n += 2) {
		term *= -square / (n * (n + 1));
		sum += term;
	}
	return sum;
}

static struct frame frame_of_eighth(double angle_deg)
{
	double x = angle_deg * DEG;
	return (struct frame){series(1, x * x, 1), series(x, x * x, 2)};
}

static struct frame quarter_turned(struct frame frame)
{
	return (struct frame){-frame.sin, frame.cos};
}

struct frame frame_from_deg(double angle_deg)
{
	double turn = fmod(angle_deg, 360);
	if (turn < 0)
		turn += 360;
	double quarters = nearbyint(turn / 90);
	struct frame frame = frame_of_eighth(turn - 90 * quarters);
	for (int i = 0; i < (int)quarters % 4; i++)
		frame = quarter_turned(frame);
	return frame;
}

/* Turned into the eighth about the first axis, then closed in on: the sine of what is missing is
 * nearly what is missing. */
double frame_deg_off_axis(struct point along)
{
	enum { ROUNDS = 6 };
	while (along.x < fabs(along.y))
		along = (struct point){along.y, -along.x};
	struct point unit = point_unit(along);
	double deg = 0;
	for (int i = 0; i < ROUNDS; i++)
		deg += frame_in(frame_from_deg(deg), unit).y / DEG;
	return deg;
}

static struct point *turn_points(struct arena *arena, struct frame frame,
                                 const struct point *points, size_t count)
{
	struct point *turned = ARENA_ARRAY(arena, struct point, count);
	for (size_t i = 0; i < count; i++)
		turned[i] = frame_in(frame, points[i]);
	return turned;
}

struct line frame_line_in(struct arena *arena, struct frame frame, struct line line)
{
	return (struct line){turn_points(arena, frame, line.points, line.count), line.count};
}

struct line frame_line_out(struct arena *arena, struct frame frame, struct line line)
{
	return frame_line_in(arena, frame_inverse(frame), line);
}

struct ring frame_ring_in(struct arena *arena, struct frame frame, struct ring ring)
{
	return (struct ring){turn_points(arena, frame, ring.points, ring.count), ring.count};
}

struct ring frame_ring_out(struct arena *arena, struct frame frame, struct ring ring)
{
	return frame_ring_in(arena, frame_inverse(frame), ring);
}

struct region frame_region_in(struct arena *arena, struct frame frame, const struct region *region)
{
	struct region turned = {ARENA_ARRAY(arena, struct polygon, region->count), region->count};
	for (size_t i = 0; i < region->count; i++) {
		const struct polygon *from = &region->polygons[i];
		struct polygon *to = &turned.polygons[i];
		to->outline = frame_ring_in(arena, frame, from->outline);
		to->holes = ARENA_ARRAY(arena, struct ring, from->hole_count);
		to->hole_count = from->hole_count;
		for (size_t h = 0; h < from->hole_count; h++)
			to->holes[h] = frame_ring_in(arena, frame, from->holes[h]);
	}
	return turned;
}

struct region frame_region_out(struct arena *arena, struct frame frame, const struct region *region)
{
	return frame_region_in(arena, frame_inverse(frame), region);
}

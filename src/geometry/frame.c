#include "geometry/frame.h"

static const double DEG = 3.14159265358979323846 / 180;

/* The last bits of sin and cos depend on the processor's libm path; this grid is
 * coarse enough to hide them and fine enough for 20 km (2e-5 mm of turn). */
static double settle(double x)
{
	const double grid = 1e15;
	return nearbyint(x * grid) / grid;
}

struct frame frame_from_deg(double angle_deg)
{
	double turn = fmod(angle_deg, 360);
	if (turn < 0)
		turn += 360;
	if (turn == 0)
		return (struct frame){1, 0};
	if (turn == 90)
		return (struct frame){0, 1};
	if (turn == 180)
		return (struct frame){-1, 0};
	if (turn == 270)
		return (struct frame){0, -1};
	return (struct frame){settle(cos(turn * DEG)), settle(sin(turn * DEG))};
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

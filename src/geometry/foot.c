#include "geometry/foot.h"

#include "geometry/segment.h"
#include "geometry/tolerance.h"

static struct foot no_foot(struct point p)
{
	return (struct foot){p, INFINITY};
}

static struct foot nearer(struct foot first, struct foot second)
{
	return second.distance < first.distance - TOLERANCE_SAME ? second : first;
}

static struct foot foot_on_segment(struct segment s, struct point p)
{
	struct point at = segment_nearest(s, p);
	return (struct foot){at, point_distance(at, p)};
}

struct foot foot_on_line(struct line line, struct point p)
{
	struct foot foot = no_foot(p);
	for (size_t i = 0; i + 1 < line.count; i++) {
		struct segment s = {line.points[i], line.points[i + 1]};
		foot = nearer(foot, foot_on_segment(s, p));
	}
	return foot;
}

static struct foot foot_on_ring(struct ring ring, struct point p)
{
	struct foot foot = no_foot(p);
	for (size_t i = 0; i < ring.count; i++)
		foot = nearer(foot, foot_on_segment(segment_of_ring(ring, i), p));
	return foot;
}

struct foot foot_on_region(const struct region *region, struct point p)
{
	struct foot foot = no_foot(p);
	for (size_t i = 0; i < region->count; i++) {
		const struct polygon *polygon = &region->polygons[i];
		foot = nearer(foot, foot_on_ring(polygon->outline, p));
		for (size_t h = 0; h < polygon->hole_count; h++)
			foot = nearer(foot, foot_on_ring(polygon->holes[h], p));
	}
	return foot;
}

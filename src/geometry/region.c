#include "geometry/region.h"

#include <string.h>

#include "geometry/segment.h"

static struct point ring_next(struct ring ring, size_t i)
{
	return ring.points[i + 1 < ring.count ? i + 1 : 0];
}

double ring_area(struct ring ring)
{
	/* Taken about the first corner: far from the origin the products would eat the area. */
	double twice = 0;
	for (size_t i = 1; i + 1 < ring.count; i++)
		twice += point_cross(point_sub(ring.points[i], ring.points[0]),
		                     point_sub(ring.points[i + 1], ring.points[0]));
	return twice / 2;
}

double ring_length(struct ring ring)
{
	double length = 0;
	for (size_t i = 0; i < ring.count; i++)
		length += point_distance(ring.points[i], ring_next(ring, i));
	return length;
}

struct box ring_box(struct ring ring)
{
	struct box box = box_empty();
	for (size_t i = 0; i < ring.count; i++)
		box = box_with(box, ring.points[i]);
	return box;
}

struct ring ring_copy(struct arena *arena, const struct point *points, size_t count)
{
	struct ring copy = {ARENA_ARRAY(arena, struct point, count), count};
	if (count > 0)
		memcpy(copy.points, points, count * sizeof *points);
	return copy;
}

struct ring ring_turned(struct arena *arena, struct ring ring, bool anticlockwise)
{
	struct ring turned = ring_copy(arena, ring.points, ring.count);
	if ((ring_area(ring) > 0) == anticlockwise)
		return turned;
	for (size_t i = 1; i < ring.count; i++)
		turned.points[i] = ring.points[ring.count - i];
	return turned;
}

struct point ring_middle(struct ring ring)
{
	struct point sum = {0, 0};
	for (size_t i = 0; i < ring.count; i++)
		sum = point_add(sum, ring.points[i]);
	return point_scale(sum, 1 / (double)ring.count);
}

double ring_distance(struct ring ring, struct point p)
{
	double nearest = INFINITY;
	for (size_t i = 0; i < ring.count; i++)
		nearest = fmin(nearest, segment_distance(segment_of_ring(ring, i), p));
	return nearest;
}

bool ring_holds(struct ring ring, struct point p)
{
	bool inside = false;
	for (size_t i = 0; i < ring.count; i++) {
		struct point a = ring.points[i], b = ring_next(ring, i);
		if ((a.y > p.y) == (b.y > p.y))
			continue;
		double side = point_cross(point_sub(b, a), point_sub(p, a));
		if ((side > 0) == (b.y > a.y))
			inside = !inside;
	}
	return inside;
}

struct point ring_widest(struct ring ring)
{
	enum { GRID = 24 };
	static const double CLEARLY = 1.1; /* a little more room is not worth leaving the middle */
	struct box box = ring_box(ring);
	struct point best = {(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2};
	double clear = ring_holds(ring, best) ? ring_distance(ring, best) : 0;
	for (int i = 1; i < GRID; i++)
		for (int k = 1; k < GRID; k++) {
			struct point at = {box.x0 + (box.x1 - box.x0) * i / GRID,
			                   box.y0 + (box.y1 - box.y0) * k / GRID};
			double distance = ring_holds(ring, at) ? ring_distance(ring, at) : 0;
			if (distance > CLEARLY * clear) {
				best = at;
				clear = distance;
			}
		}
	return best;
}

struct polygon polygon_copy(struct arena *arena, const struct polygon *polygon)
{
	struct polygon copy = {ring_copy(arena, polygon->outline.points, polygon->outline.count),
	                       ARENA_ARRAY(arena, struct ring, polygon->hole_count),
	                       polygon->hole_count};
	for (size_t h = 0; h < copy.hole_count; h++)
		copy.holes[h] = ring_copy(arena, polygon->holes[h].points, polygon->holes[h].count);
	return copy;
}

double polygon_area(const struct polygon *polygon)
{
	double area = fabs(ring_area(polygon->outline));
	for (size_t i = 0; i < polygon->hole_count; i++)
		area -= fabs(ring_area(polygon->holes[i]));
	return area;
}

double polygon_distance(const struct polygon *polygon, struct point p)
{
	double nearest = ring_distance(polygon->outline, p);
	for (size_t h = 0; h < polygon->hole_count; h++)
		nearest = fmin(nearest, ring_distance(polygon->holes[h], p));
	return nearest;
}

bool polygon_holds(const struct polygon *polygon, struct point p)
{
	if (!ring_holds(polygon->outline, p))
		return false;
	for (size_t i = 0; i < polygon->hole_count; i++)
		if (ring_holds(polygon->holes[i], p))
			return false;
	return true;
}

double region_area(const struct region *region)
{
	double area = 0;
	for (size_t i = 0; i < region->count; i++)
		area += polygon_area(&region->polygons[i]);
	return area;
}

double region_length(const struct region *region)
{
	double length = 0;
	for (size_t i = 0; i < region->count; i++) {
		const struct polygon *polygon = &region->polygons[i];
		length += ring_length(polygon->outline);
		for (size_t h = 0; h < polygon->hole_count; h++)
			length += ring_length(polygon->holes[h]);
	}
	return length;
}

bool region_holds(const struct region *region, struct point p)
{
	for (size_t i = 0; i < region->count; i++)
		if (polygon_holds(&region->polygons[i], p))
			return true;
	return false;
}

struct box region_box(const struct region *region)
{
	struct box box = box_empty();
	for (size_t i = 0; i < region->count; i++) {
		struct ring outline = region->polygons[i].outline;
		for (size_t k = 0; k < outline.count; k++)
			box = box_with(box, outline.points[k]);
	}
	return box;
}

double region_distance(const struct region *region, struct point p)
{
	double nearest = INFINITY;
	for (size_t i = 0; i < region->count; i++)
		nearest = fmin(nearest, polygon_distance(&region->polygons[i], p));
	return nearest;
}

size_t region_ring_count(const struct region *region)
{
	size_t count = 0;
	for (size_t i = 0; i < region->count; i++)
		count += 1 + region->polygons[i].hole_count;
	return count;
}

struct ring region_ring(const struct region *region, size_t index)
{
	const struct polygon *polygon = region->polygons;
	while (index > polygon->hole_count)
		index -= 1 + polygon++->hole_count;
	return index == 0 ? polygon->outline : polygon->holes[index - 1];
}

struct region region_from_ring(struct arena *arena, struct ring ring)
{
	struct polygon *polygon = ARENA_NEW(arena, struct polygon);
	polygon->outline = ring_turned(arena, ring, true);
	return (struct region){polygon, 1};
}

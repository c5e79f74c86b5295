#include "geometry/normal.h"

#include <stdlib.h>

#include "geometry/tolerance.h"

/* Squares of lengths throughout: roots would cost more than all the rest. */
static bool is_needless(struct point before, struct point p, struct point after, double tolerance)
{
	struct point chord = point_sub(after, before), way = point_sub(p, before);
	double length = point_dot(chord, chord), least = tolerance * tolerance;
	double aside = point_cross(chord, way);
	return point_dot(way, way) <= least || length <= least || aside * aside <= least * length;
}

size_t normal_corners(struct point *points, size_t count, double tolerance)
{
	bool changed = true;
	while (changed && count >= 3) {
		changed = false;
		size_t kept = 0;
		for (size_t i = 0; i < count; i++) {
			struct point before = kept > 0 ? points[kept - 1] : points[count - 1];
			struct point after = i + 1 < count ? points[i + 1] : points[0];
			if (is_needless(before, points[i], after, tolerance))
				changed = true;
			else
				points[kept++] = points[i];
		}
		count = kept;
	}
	return count < 3 ? 0 : count;
}

/* The start does not hang on the last bits of x: among the leftmost the lowest. */
static size_t least_point(const struct point *points, size_t count)
{
	double x0 = INFINITY;
	size_t least = count;
	for (size_t i = 0; i < count; i++)
		x0 = fmin(x0, points[i].x);
	for (size_t i = 0; i < count; i++)
		if (points[i].x <= x0 + TOLERANCE_LEVEL &&
		    (least == count || points[i].y < points[least].y))
			least = i;
	return least;
}

/* Count 0: no ground. */
static struct ring normal_ring(struct arena *arena, struct ring raw, bool anticlockwise)
{
	struct ring ring = ring_turned(arena, raw, anticlockwise);
	ring.count = normal_corners(ring.points, ring.count, TOLERANCE_SAME);
	if (ring.count == 0 || fabs(ring_area(ring)) < TOLERANCE_AREA_MM2)
		return (struct ring){NULL, 0};
	struct ring normal = {ARENA_ARRAY(arena, struct point, ring.count), ring.count};
	size_t first = least_point(ring.points, ring.count);
	for (size_t i = 0; i < ring.count; i++)
		normal.points[i] = ring.points[(first + i) % ring.count];
	return normal;
}

/* Largest first, by areas and places rounded to their tolerance. */
static int compare_rings(struct ring a, struct ring b, double area_a, double area_b)
{
	struct box box_a = ring_box(a), box_b = ring_box(b);
	const double keys[][2] = {
		{nearbyint(area_b / TOLERANCE_AREA_MM2), nearbyint(area_a / TOLERANCE_AREA_MM2)},
		{nearbyint(box_a.x0 / TOLERANCE_SAME), nearbyint(box_b.x0 / TOLERANCE_SAME)},
		{nearbyint(box_a.y0 / TOLERANCE_SAME), nearbyint(box_b.y0 / TOLERANCE_SAME)},
		{nearbyint(box_a.x1 / TOLERANCE_SAME), nearbyint(box_b.x1 / TOLERANCE_SAME)},
		{nearbyint(box_a.y1 / TOLERANCE_SAME), nearbyint(box_b.y1 / TOLERANCE_SAME)},
	};
	for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++)
		if (keys[i][0] != keys[i][1])
			return keys[i][0] < keys[i][1] ? -1 : 1;
	return 0;
}

static int compare_polygons(const void *a, const void *b)
{
	const struct polygon *p = a, *q = b;
	return compare_rings(p->outline, q->outline, polygon_area(p), polygon_area(q));
}

static int compare_holes(const void *a, const void *b)
{
	const struct ring *p = a, *q = b;
	return compare_rings(*p, *q, -ring_area(*p), -ring_area(*q));
}

static struct polygon normal_polygon(struct arena *arena, const struct polygon *raw)
{
	struct polygon polygon = {normal_ring(arena, raw->outline, true), raw->holes, 0};
	for (size_t h = 0; h < raw->hole_count; h++) {
		struct ring hole = normal_ring(arena, raw->holes[h], false);
		if (hole.count > 0)
			polygon.holes[polygon.hole_count++] = hole;
	}
	if (polygon.hole_count > 1)
		qsort(polygon.holes, polygon.hole_count, sizeof *polygon.holes, compare_holes);
	return polygon;
}

struct region normal_region(struct arena *arena, struct region raw)
{
	struct region region = {raw.polygons, 0};
	for (size_t i = 0; i < raw.count; i++) {
		struct polygon polygon = normal_polygon(arena, &raw.polygons[i]);
		if (polygon.outline.count > 0 && polygon_area(&polygon) >= TOLERANCE_AREA_MM2)
			region.polygons[region.count++] = polygon;
	}
	if (region.count > 1)
		qsort(region.polygons, region.count, sizeof *region.polygons, compare_polygons);
	return region;
}

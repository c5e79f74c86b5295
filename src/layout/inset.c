#include "layout/inset.h"

#include "base/array.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"

struct inset {
	struct arena *arena;
	inset_distance *distance;
	const void *context;
	ARRAY_OF(struct region) taken; /* ground between the outline and its inset */
};

static struct point corner(struct ring ring, size_t i)
{
	return ring.points[i % ring.count];
}

static struct point inward(struct ring ring, size_t i, double distance)
{
	struct point along = point_unit(point_sub(corner(ring, i + 1), corner(ring, i)));
	return point_scale(point_left(along), distance);
}

static void take(struct inset *inset, const struct point *points, size_t count)
{
	struct ring ring = {(struct point *)points, count};
	if (ring_area(ring) != 0)
		*array_push(inset->arena, &inset->taken) = region_from_ring(inset->arena, ring);
}

static void take_along_edge(struct inset *inset, struct ring ring, size_t i, double distance)
{
	struct point from = corner(ring, i), to = corner(ring, i + 1);
	struct point in = inward(ring, i, distance);
	take(inset, (struct point[]){from, to, point_add(to, in), point_add(from, in)}, 4);
}

/* At a corner that points into the area the two bands leave a notch; the kite up to the
 * crossing of the moved edges fills it. */
static void take_at_corner(struct inset *inset, struct ring ring, size_t i, double before,
                           double after)
{
	size_t previous = i + ring.count - 1;
	struct point d0 = point_unit(point_sub(corner(ring, i), corner(ring, previous)));
	struct point d1 = point_unit(point_sub(corner(ring, i + 1), corner(ring, i)));
	double turn = point_cross(d0, d1);
	if (turn > -TOLERANCE_STRAIGHT)
		return;
	struct point p0 = point_add(corner(ring, i), inward(ring, previous, before));
	struct point p1 = point_add(corner(ring, i), inward(ring, i, after));
	double ahead = point_cross(point_sub(p1, p0), d1) / turn;
	struct point mitre = point_add(p0, point_scale(d0, ahead));
	take(inset, (struct point[]){corner(ring, i), p0, mitre, p1}, 4);
}

static void take_along_ring(struct inset *inset, struct ring ring)
{
	for (size_t i = 0; i < ring.count; i++) {
		double before =
			inset->distance(inset->context, ring, (i + ring.count - 1) % ring.count);
		double after = inset->distance(inset->context, ring, i);
		if (after > 0)
			take_along_edge(inset, ring, i, after);
		if (before > 0 || after > 0)
			take_at_corner(inset, ring, i, before, after);
	}
}

struct region inset_region(struct arena *arena, const struct region *region,
                           inset_distance *distance, const void *context)
{
	struct inset inset = {.arena = arena, .distance = distance, .context = context};
	for (size_t i = 0; i < region->count; i++) {
		take_along_ring(&inset, region->polygons[i].outline);
		for (size_t h = 0; h < region->polygons[i].hole_count; h++)
			take_along_ring(&inset, region->polygons[i].holes[h]);
	}
	struct region taken = overlay_union_all(arena, inset.taken.items, inset.taken.count);
	return overlay_difference(arena, region, &taken);
}

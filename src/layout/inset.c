#include "layout/inset.h"

#include "base/array.h"
#include "geometry/crossing.h"
#include "geometry/normal.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"

/* A border of the area: its points, and how far the edge from each moves. */
struct border {
	struct ring ring;
	double *distances;
};

static struct point corner(const struct border *border, size_t i)
{
	return border->ring.points[i % border->ring.count];
}

static struct point direction(const struct border *border, size_t i)
{
	return point_unit(point_sub(corner(border, i + 1), corner(border, i)));
}

/* What two moved edges make of the corner between them. */
struct bend {
	struct point along, onward;     /* directions of the edges before and after */
	struct point at, before, after; /* the corner; moved with the edge before, and after */
	double turn;                    /* sine; positive to the left */
	double gap_before, gap_after;
};

static struct bend bend_at(const struct border *border, size_t i)
{
	size_t previous = (i + border->ring.count - 1) % border->ring.count;
	struct bend b = {.along = direction(border, previous), .onward = direction(border, i)};
	b.gap_before = border->distances[previous];
	b.gap_after = border->distances[i];
	b.at = corner(border, i);
	b.before = point_add(b.at, point_scale(point_left(b.along), b.gap_before));
	b.after = point_add(b.at, point_scale(point_left(b.onward), b.gap_after));
	b.turn = point_cross(b.along, b.onward);
	return b;
}

/* The moved edges run to their crossing. Otherwise they go straight on, or one keeps its place
 * and the gap of the other ends square. */
static bool is_mitred(const struct bend *b)
{
	return fabs(b->turn) > TOLERANCE_STRAIGHT &&
	       (b->gap_before == b->gap_after || point_dot(b->along, b->onward) <= 0);
}

static struct point mitre_of(const struct bend *b)
{
	double ahead = point_cross(point_sub(b->after, b->before), b->onward) / b->turn;
	return point_add(b->before, point_scale(b->along, ahead));
}

/* ---- edge by edge, where no edge gets in another's way ---- */

/* Where the edge before ends, and the one after starts. False: more corners would be needed. */
static bool move_corner(const struct bend *b, struct point *out_end, struct point *out_start)
{
	bool mitred = is_mitred(b);
	*out_end = mitred ? mitre_of(b) : b->before;
	*out_start = mitred ? *out_end : b->after;
	return (mitred || point_dot(b->along, b->onward) > 0) &&
	       (b->gap_before == b->gap_after || b->gap_before == 0 || b->gap_after == 0);
}

/* False: an edge has nothing left of it, and its neighbours meet. */
static bool move_ring(struct arena *arena, const struct border *border, struct ring *out_moved)
{
	size_t count = border->ring.count;
	struct point *points = ARENA_ARRAY(arena, struct point, 2 * count);
	for (size_t i = 0; i < count; i++) {
		struct bend bend = bend_at(border, i);
		if (!move_corner(&bend, &points[2 * i], &points[2 * i + 1]))
			return false;
	}
	for (size_t i = 0; i < count; i++) {
		struct point from = points[2 * i + 1], to = points[(2 * i + 2) % (2 * count)];
		if (point_dot(point_sub(to, from), direction(border, i)) <= TOLERANCE_SAME)
			return false;
	}
	*out_moved = (struct ring){points, 2 * count};
	return true;
}

/* Borders that keep all their edges and meet nowhere enclose what is left of the area. Where a
 * walk round a column closes on all sides at once its polygon has less than no ground, and is
 * dropped. */
static bool move_all(struct arena *arena, const struct region *region, const struct border *borders,
                     struct region *out_moved)
{
	struct region moved = {ARENA_ARRAY(arena, struct polygon, region->count), 0};
	for (size_t i = 0; i < region->count; i++) {
		size_t holes = region->polygons[i].hole_count;
		struct polygon *polygon = &moved.polygons[moved.count++];
		*polygon = (struct polygon){.holes = ARENA_ARRAY(arena, struct ring, holes),
		                            .hole_count = holes};
		for (size_t r = 0; r <= holes; r++)
			if (!move_ring(arena, borders++,
			               r ? &polygon->holes[r - 1] : &polygon->outline))
				return false;
	}
	*out_moved = normal_region(arena, moved);
	return !crossing_in_region(arena, out_moved);
}

/* ---- by the ground that is taken, where edges run into each other ---- */

struct taking {
	struct arena *arena;
	ARRAY_OF(struct region) taken; /* ground between the outline and its inset */
};

static void take(struct taking *taking, const struct point *points, size_t count)
{
	struct ring ring = {(struct point *)points, count};
	if (ring_area(ring) != 0)
		*array_push(taking->arena, &taking->taken) = region_from_ring(taking->arena, ring);
}

static void take_along_edge(struct taking *taking, const struct border *border, size_t i)
{
	struct point from = corner(border, i), to = corner(border, i + 1);
	struct point in = point_scale(point_left(direction(border, i)), border->distances[i]);
	if (border->distances[i] > 0)
		take(taking, (struct point[]){from, to, point_add(to, in), point_add(from, in)}, 4);
}

/* At a corner that points into the area the two bands leave a notch; the kite up to the
 * crossing of the moved edges fills it. */
static void take_at_corner(struct taking *taking, const struct border *border, size_t i)
{
	struct bend b = bend_at(border, i);
	if (b.turn < 0 && is_mitred(&b) && (b.gap_before > 0 || b.gap_after > 0))
		take(taking, (struct point[]){b.at, b.before, mitre_of(&b), b.after}, 4);
}

static struct region take_all(struct arena *arena, const struct region *region,
                              const struct border *borders)
{
	struct taking taking = {.arena = arena};
	for (size_t r = 0; r < region_ring_count(region); r++)
		for (size_t i = 0; i < borders[r].ring.count; i++) {
			take_along_edge(&taking, &borders[r], i);
			take_at_corner(&taking, &borders[r], i);
		}
	struct region taken = overlay_union_all(arena, taking.taken.items, taking.taken.count);
	return overlay_difference(arena, region, &taken);
}

struct region inset_region(struct arena *arena, const struct region *region,
                           inset_distance *distance, const void *context)
{
	size_t count = region_ring_count(region);
	struct border *borders = ARENA_ARRAY(arena, struct border, count);
	for (size_t r = 0; r < count; r++) {
		struct ring ring = region_ring(region, r);
		borders[r] = (struct border){ring, ARENA_ARRAY(arena, double, ring.count)};
		for (size_t i = 0; i < ring.count; i++)
			borders[r].distances[i] = distance(context, ring, i);
	}
	struct region moved;
	return move_all(arena, region, borders, &moved) ? moved : take_all(arena, region, borders);
}

#include "geometry/window.h"

#include <stdint.h>

#include "geometry/tolerance.h"

struct border_edges border_edges_from_polygon(struct arena *arena, const struct polygon *polygon)
{
	size_t count = polygon->outline.count;
	for (size_t h = 0; h < polygon->hole_count; h++)
		count += polygon->holes[h].count;
	struct border_edges all = {ARENA_ARRAY(arena, struct border_edge, count), 0};
	for (size_t r = 0; r <= polygon->hole_count; r++) {
		struct ring ring = r ? polygon->holes[r - 1] : polygon->outline;
		size_t first = all.count;
		for (size_t i = 0; i < ring.count; i++) {
			size_t next = i + 1 == ring.count ? 0 : i + 1;
			all.edges[all.count++] =
				(struct border_edge){ring.points[i], ring.points[next],
			                             first + next};
		}
	}
	return all;
}

/* The stretch of an edge strictly inside the window: where it enters and leaves, as points
 * and as places on the window's border (side + share of the side). */
struct stretch {
	size_t edge;
	struct point from, to;
	bool enters, leaves; /* crosses the window's border there; else starts or ends inside */
	double enters_at, leaves_at;
	struct stretch *followed_by; /* round the window's border */
	bool is_follower, used;
};

struct crossing {
	double share; /* of the edge */
	size_t side;
};

static double border_place(struct ring window, size_t side, struct point p)
{
	struct point a = window.points[side];
	struct point along = point_sub(window.points[(side + 1) % window.count], a);
	double share = point_dot(point_sub(p, a), along) / point_dot(along, along);
	if (share < TOLERANCE_SHARE)
		share = 0;
	if (share > 1 - TOLERANCE_SHARE)
		return (double)((side + 1) % window.count);
	return (double)side + share;
}

/* Cyrus and Beck's clipping (1978) of one edge against the open window. */
static bool stretch_of_edge(struct ring window, struct border_edge edge, struct stretch *out)
{
	struct crossing enter = {0, 0}, leave = {1, 0};
	bool enters = false, leaves = false;
	for (size_t side = 0; side < window.count; side++) {
		struct point a = window.points[side];
		struct point along = point_sub(window.points[(side + 1) % window.count], a);
		double from = point_cross(along, point_sub(edge.from, a));
		double to = point_cross(along, point_sub(edge.to, a));
		if (from <= 0 && to <= 0)
			return false;
		if (from > 0 && to > 0)
			continue;
		double share = from / (from - to);
		if (from <= 0 && (share > enter.share || !enters)) {
			enter = (struct crossing){share, side};
			enters = true;
		} else if (to <= 0 && (share < leave.share || !leaves)) {
			leave = (struct crossing){share, side};
			leaves = true;
		}
	}
	if (enter.share >= leave.share)
		return false;
	out->enters = enters;
	out->leaves = leaves;
	out->from = enters ? point_between(edge.from, edge.to, enter.share) : edge.from;
	out->to = leaves ? point_between(edge.from, edge.to, leave.share) : edge.to;
	out->enters_at = enters ? border_place(window, enter.side, out->from) : 0;
	out->leaves_at = leaves ? border_place(window, leave.side, out->to) : 0;
	return true;
}

static struct stretch *find_by_edge(struct stretch *stretches, size_t count, size_t edge)
{
	for (size_t i = 0; i < count; i++)
		if (stretches[i].edge == edge)
			return &stretches[i];
	return NULL;
}

/* How far ahead `to` lies of `from`, going round anticlockwise; a place that rounding put
 * just behind is at the same place. */
static double place_ahead(size_t sides, double from, double to)
{
	double ahead = to - from;
	if (ahead < -TOLERANCE_BEHIND)
		ahead += (double)sides;
	if (ahead > (double)sides - TOLERANCE_BEHIND)
		ahead -= (double)sides;
	return ahead;
}

/* The nearest pair of a way out and a way in, ahead of it, not yet joined. */
static bool nearest_pair(const struct stretch *stretches, size_t count, size_t sides,
                         size_t *out_leaving, size_t *out_entering)
{
	double best = (double)INFINITY;
	for (size_t i = 0; i < count; i++) {
		if (!stretches[i].leaves || stretches[i].followed_by)
			continue;
		for (size_t k = 0; k < count; k++) {
			if (!stretches[k].enters || stretches[k].is_follower)
				continue;
			double ahead =
				place_ahead(sides, stretches[i].leaves_at, stretches[k].enters_at);
			if (ahead < best) {
				best = ahead;
				*out_leaving = i;
				*out_entering = k;
			}
		}
	}
	return best < (double)INFINITY;
}

/* Along the window's border the area lies between a way out and the next way in. Where
 * several meet in one point, any pairing encloses the same ground; nearest first leaves
 * nobody without a partner. */
static bool join_ends(struct stretch *stretches, size_t count, size_t sides)
{
	size_t leaving, entering;
	while (nearest_pair(stretches, count, sides, &leaving, &entering)) {
		stretches[leaving].followed_by = &stretches[entering];
		stretches[entering].is_follower = true;
	}
	for (size_t i = 0; i < count; i++)
		if ((stretches[i].leaves && !stretches[i].followed_by) ||
		    (stretches[i].enters && !stretches[i].is_follower))
			return false;
	return true;
}

struct path {
	struct arena *arena;
	ARRAY_OF(struct point) points;
};

static void path_add(struct path *path, struct point p)
{
	size_t count = path->points.count;
	if (count) {
		struct point last = path->points.items[count - 1];
		if (last.x == p.x && last.y == p.y)
			return;
	}
	*array_push(path->arena, &path->points) = p;
}

/* Window corners passed on the way from one place on the border to another. */
static void path_round_corners(struct path *path, struct ring window, double from, double to)
{
	double ahead = place_ahead(window.count, from, to);
	for (size_t corner = (size_t)from + 1; (double)corner < from + ahead - TOLERANCE_SHARE;
	     corner++)
		path_add(path, window.points[corner % window.count]);
}

/* Follows the border from an unused stretch until it closes. */
static bool walk(struct path *path, struct ring window, const struct border_edges *all,
                 struct stretch *stretches, size_t count, struct stretch *first)
{
	struct stretch *at = first;
	for (size_t steps = 0; steps <= count; steps++) {
		if (at->used)
			return at == first;
		at->used = true;
		path_add(path, at->from);
		path_add(path, at->to);
		struct stretch *next;
		if (at->leaves) {
			next = at->followed_by;
			path_round_corners(path, window, at->leaves_at, next->enters_at);
		} else {
			next = find_by_edge(stretches, count, all->edges[at->edge].next);
			if (!next || next->enters)
				return false;
		}
		at = next;
	}
	return false;
}

/* Nothing crosses the window's border and the outermost ring inside is a hole: the border
 * itself is the outline. */
static bool is_hole_in_window(const struct stretch *stretches, size_t count,
                              const struct window_parts *parts)
{
	for (size_t i = 0; i < count; i++)
		if (stretches[i].enters)
			return false;
	double area = 0;
	for (size_t i = 0; i < parts->count; i++)
		area += ring_area(parts->rings[i]);
	return area < 0;
}

bool window_clip(struct arena *arena, struct ring window, const struct border_edges *all,
                 const size_t *near, size_t near_count, struct window_parts *out_parts)
{
	struct stretch *stretches = ARENA_ARRAY(arena, struct stretch, near_count);
	size_t count = 0;
	for (size_t i = 0; i < near_count; i++) {
		struct stretch stretch = {.edge = near[i]};
		if (stretch_of_edge(window, all->edges[near[i]], &stretch))
			stretches[count++] = stretch;
	}
	if (!join_ends(stretches, count, window.count))
		return false;
	*out_parts = (struct window_parts){ARENA_ARRAY(arena, struct ring, count + 1), 0};
	for (size_t i = 0; i < count; i++) {
		if (stretches[i].used)
			continue;
		struct path path = {.arena = arena};
		if (!walk(&path, window, all, stretches, count, &stretches[i]))
			return false;
		size_t points = path.points.count;
		struct point *p = path.points.items;
		while (points > 1 && p[points - 1].x == p[0].x && p[points - 1].y == p[0].y)
			points--;
		if (points >= 3)
			out_parts->rings[out_parts->count++] = (struct ring){p, points};
	}
	if (is_hole_in_window(stretches, count, out_parts))
		out_parts->rings[out_parts->count++] = window;
	return true;
}

static size_t outline_around(const struct region *region, struct point p)
{
	for (size_t i = 0; i < region->count; i++)
		if (ring_holds(region->polygons[i].outline, p))
			return i;
	return region->count ? 0 : SIZE_MAX;
}

struct region window_region(struct arena *arena, const struct window_parts *parts)
{
	struct region region = {ARENA_ARRAY(arena, struct polygon, parts->count), 0};
	for (size_t i = 0; i < parts->count; i++)
		if (ring_area(parts->rings[i]) > 0)
			region.polygons[region.count++] =
				(struct polygon){.outline = parts->rings[i]};
	for (size_t i = 0; i < parts->count; i++) {
		struct ring hole = parts->rings[i];
		if (ring_area(hole) > 0)
			continue;
		size_t home = outline_around(&region, hole.points[0]);
		if (home == SIZE_MAX)
			continue;
		struct polygon *polygon = &region.polygons[home];
		struct ring *holes = ARENA_ARRAY(arena, struct ring, polygon->hole_count + 1);
		for (size_t h = 0; h < polygon->hole_count; h++)
			holes[h] = polygon->holes[h];
		holes[polygon->hole_count++] = hole;
		polygon->holes = holes;
	}
	return region;
}

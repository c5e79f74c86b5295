#include "geometry/window.h"

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

/* Where an edge crosses the window's border. */
struct crossing {
	double share; /* of the edge */
	size_t side;
};

static struct point side_vector(struct ring window, size_t side)
{
	size_t next = side + 1 < window.count ? side + 1 : 0;
	return point_sub(window.points[next], window.points[side]);
}

static double border_place(struct ring window, size_t side, struct point p)
{
	struct point along = side_vector(window, side);
	double share =
		point_dot(point_sub(p, window.points[side]), along) / point_dot(along, along);
	if (share < TOLERANCE_SHARE)
		share = 0;
	if (share > 1 - TOLERANCE_SHARE)
		return (double)(side + 1 < window.count ? side + 1 : 0);
	return (double)side + share;
}

/* How far inside of a side a point lies, times the side's length; 0 on the border: where a
 * corner of the area touches it, rounding leaves no neck. */
static double depth_at(struct point a, struct point along, struct point p)
{
	double depth = point_cross(along, point_sub(p, a));
	bool is_on = depth * depth <= TOLERANCE_SAME * TOLERANCE_SAME * point_dot(along, along);
	return is_on ? 0 : depth;
}

/* Cyrus and Beck's clipping (1978) of one edge against the open window. */
static bool stretch_of_edge(struct ring window, const struct border_edge *edge,
                            struct window_stretch *out)
{
	struct crossing enter = {0, 0}, leave = {1, 0};
	bool enters = false, leaves = false;
	for (size_t side = 0; side < window.count; side++) {
		struct point a = window.points[side], along = side_vector(window, side);
		double from = depth_at(a, along, edge->from), to = depth_at(a, along, edge->to);
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
	out->from = enters ? point_between(edge->from, edge->to, enter.share) : edge->from;
	out->to = leaves ? point_between(edge->from, edge->to, leave.share) : edge->to;
	out->enters_at = enters ? border_place(window, enter.side, out->from) : 0;
	out->leaves_at = leaves ? border_place(window, leave.side, out->to) : 0;
	return true;
}

static struct window_stretch *find_by_edge(struct window_stretch *stretches, size_t count,
                                           size_t edge)
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

/* From a way out on to a way in. Where the area's border only touches the window's, with the area
 * on both sides of the touch, the area goes on along the window's border: it is parted there. */
static double way_ahead(size_t sides, const struct window_stretch *leaving,
                        const struct window_stretch *entering)
{
	double ahead = place_ahead(sides, leaving->leaves_at, entering->enters_at);
	struct point out = point_sub(leaving->to, leaving->from);
	struct point in = point_sub(entering->to, entering->from);
	bool is_parted = ahead < TOLERANCE_BEHIND && point_cross(out, in) < 0;
	return is_parted ? ahead + (double)sides : ahead;
}

/* The nearest pair of a way out and a way in, ahead of it, not yet joined. */
static bool nearest_pair(const struct window_stretch *stretches, size_t count, size_t sides,
                         size_t *out_leaving, size_t *out_entering)
{
	double best = (double)INFINITY;
	for (size_t i = 0; i < count; i++) {
		if (!stretches[i].leaves || stretches[i].followed_by)
			continue;
		for (size_t k = 0; k < count; k++) {
			if (!stretches[k].enters || stretches[k].is_follower)
				continue;
			double ahead = way_ahead(sides, &stretches[i], &stretches[k]);
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
 * several meet in one point, any pairing encloses the same ground, in more or fewer parts; nearest
 * first leaves nobody without a partner. */
static bool join_ends(struct window_stretch *stretches, size_t count, size_t sides)
{
	size_t leaving, entering;
	if (count == 1 && stretches->enters && stretches->leaves) { /* mostly */
		stretches->followed_by = stretches;
		return true;
	}
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

static void add_point(struct window_work *work, size_t first, struct point p)
{
	size_t count = work->points.count;
	if (count > first) {
		struct point last = work->points.items[count - 1];
		if (last.x == p.x && last.y == p.y)
			return;
	}
	*array_push(work->arena, &work->points) = p;
}

/* Window corners passed on the way from one place on the border to another. */
static void add_corners(struct window_work *work, size_t first, struct ring window, double from,
                        double to)
{
	double ahead = place_ahead(window.count, from, to);
	for (size_t corner = (size_t)from + 1; (double)corner < from + ahead - TOLERANCE_SHARE;
	     corner++)
		add_point(work, first, window.points[corner % window.count]);
}

/* Follows the border from an unused stretch until it closes. */
static bool walk(struct window_work *work, struct ring window, const struct border_edges *all,
                 struct window_stretch *start)
{
	struct window_stretch *at = start;
	size_t count = work->stretches.count, first = work->points.count;
	for (size_t steps = 0; steps <= count; steps++) {
		if (at->used)
			return at == start;
		at->used = true;
		add_point(work, first, at->from);
		add_point(work, first, at->to);
		struct window_stretch *next;
		if (at->leaves) {
			next = at->followed_by;
			add_corners(work, first, window, at->leaves_at, next->enters_at);
		} else {
			next = find_by_edge(work->stretches.items, count,
			                    all->edges[at->edge].next);
			if (!next || next->enters)
				return false;
		}
		at = next;
	}
	return false;
}

/* What was walked since point `first` is a loop, where it has any ground. */
static void close_loop(struct window_work *work, size_t first)
{
	const struct point *p = work->points.items;
	size_t end = work->points.count;
	while (end > first + 1 && p[end - 1].x == p[first].x && p[end - 1].y == p[first].y)
		end--;
	bool has_ground = end >= first + 3;
	work->points.count = has_ground ? end : first;
	if (has_ground)
		*array_push(work->arena, &work->loops) =
			(struct window_loop){{NULL, end - first}, 0};
}

static bool walk_all(struct window_work *work, struct ring window, const struct border_edges *all)
{
	for (size_t i = 0; i < work->stretches.count; i++) {
		size_t first = work->points.count;
		if (work->stretches.items[i].used)
			continue;
		if (!walk(work, window, all, &work->stretches.items[i]))
			return false;
		close_loop(work, first);
	}
	return true;
}

/* The points of all loops lie one behind the other, and stay where they are from now on. */
static void settle_loops(struct window_work *work)
{
	struct point *p = work->points.items;
	for (size_t i = 0; i < work->loops.count; i++) {
		struct window_loop *loop = &work->loops.items[i];
		loop->ring.points = p;
		loop->area_mm2 = ring_area(loop->ring);
		p += loop->ring.count;
	}
}

/* Nothing crosses the window's border and the outermost ring inside is a hole: the border
 * itself is the outline. */
static bool is_hole_in_window(const struct window_work *work)
{
	double area = 0;
	for (size_t i = 0; i < work->stretches.count; i++)
		if (work->stretches.items[i].enters)
			return false;
	for (size_t i = 0; i < work->loops.count; i++)
		area += work->loops.items[i].area_mm2;
	return area < 0;
}

/* Every hole lies in one outline; in the first, where rounding says in none. */
static struct window_part *part_around(struct window_work *work, struct point p)
{
	for (size_t i = 0; i < work->parts.count; i++)
		if (ring_holds(work->parts.items[i].shape.outline, p))
			return &work->parts.items[i];
	return work->parts.items;
}

static void add_hole(struct window_work *work, const struct window_loop *hole)
{
	struct window_part *part = part_around(work, hole->ring.points[0]);
	if (part->shape.hole_count == 0)
		part->shape.holes = ARENA_ARRAY(work->arena, struct ring, work->loops.count);
	part->shape.holes[part->shape.hole_count++] = hole->ring;
	part->area_mm2 += hole->area_mm2;
}

static void sort_loops(struct window_work *work)
{
	for (size_t i = 0; i < work->loops.count; i++) {
		const struct window_loop *loop = &work->loops.items[i];
		if (loop->area_mm2 > 0)
			*array_push(work->arena, &work->parts) =
				(struct window_part){{loop->ring, NULL, 0}, loop->area_mm2};
	}
	for (size_t i = 0; work->parts.count > 0 && i < work->loops.count; i++)
		if (work->loops.items[i].area_mm2 <= 0)
			add_hole(work, &work->loops.items[i]);
}

bool window_clip(struct window_work *work, struct ring window, const struct border_edges *all,
                 const size_t *near, size_t near_count)
{
	work->stretches.count = work->points.count = work->loops.count = work->parts.count = 0;
	for (size_t i = 0; i < near_count; i++) {
		struct window_stretch *stretch = array_push(work->arena, &work->stretches);
		*stretch = (struct window_stretch){.edge = near[i]};
		if (!stretch_of_edge(window, &all->edges[near[i]], stretch))
			work->stretches.count--;
	}
	if (!join_ends(work->stretches.items, work->stretches.count, window.count) ||
	    !walk_all(work, window, all))
		return false;
	settle_loops(work);
	if (is_hole_in_window(work))
		*array_push(work->arena, &work->loops) =
			(struct window_loop){window, ring_area(window)};
	sort_loops(work);
	return true;
}

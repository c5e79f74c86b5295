#include "layout/soft_outline.h"

#include <stdlib.h>

#include "geometry/clip.h"
#include "geometry/tolerance.h"
#include "layout/crossed.h"

/* How far the outline lies from the joints it runs along, a mitre included. */
static const double BESIDE = 2 * TOLERANCE_WHOLE;

struct stretch_list {
	ARRAY_OF(struct outline_stretch) stretches;
};

struct ring soft_outline_ring(struct arena *arena, const struct corridor *corridor,
                              const struct tile_ref *tiles, size_t count)
{
	const struct tiling *tiling = corridor->tiling;
	struct region on = crossed_on(arena, tiling, tiles, count, &corridor->domain);
	const struct polygon *home = crossed_home(arena, tiling, &on, tiles, count);
	return home ? home->outline : (struct ring){NULL, 0};
}

bool soft_outline_is_at(struct ring ring, struct point p)
{
	for (size_t i = 0; i < ring.count; i++)
		if (segment_distance(segment_of_ring(ring, i), p) <= BESIDE)
			return true;
	return false;
}

static double place_on_side(struct ring ring, size_t side, struct point p)
{
	struct segment own = segment_of_ring(ring, side);
	double length = fmax(segment_length(own), TOLERANCE_SAME);
	return (double)side + point_distance(own.from, segment_nearest(own, p)) / length;
}

static double nearest_place(struct ring ring, struct point p)
{
	double least = INFINITY, place = 0;
	for (size_t i = 0; i < ring.count; i++) {
		double distance = segment_distance(segment_of_ring(ring, i), p);
		if (distance >= least - TOLERANCE_SAME)
			continue;
		least = distance;
		place = place_on_side(ring, i, p);
	}
	return place;
}

double soft_outline_place(struct ring ring, struct segment ray)
{
	double last = -1, place = nearest_place(ring, ray.from);
	for (size_t i = 0; i < ring.count; i++) {
		double share;
		if (!segment_crossing(ray, segment_of_ring(ring, i), &share) || share <= last)
			continue;
		last = share;
		place = place_on_side(ring, i, point_between(ray.from, ray.to, share));
	}
	return place;
}

/* The point of an edge beside a point of the outline; at a corner the outline is a hair off. */
static struct point beside(struct segment edge, struct point p)
{
	struct point at = segment_nearest(edge, p);
	if (point_distance(at, edge.from) <= BESIDE)
		return edge.from;
	return point_distance(at, edge.to) <= BESIDE ? edge.to : at;
}

/* What of an edge lies along a side of the outline, walked as the outline is; no length: nothing
 * does. */
static struct segment along_side(struct segment edge, struct segment side)
{
	struct segment part = {beside(edge, side.from), beside(edge, side.to)};
	if (segment_distance(side, part.from) > BESIDE || segment_distance(side, part.to) > BESIDE)
		part.to = part.from;
	return part;
}

static struct outline_stretch stretch_of(struct ring ring, size_t side, struct segment line)
{
	return (struct outline_stretch){
		.line = line,
		.round = place_on_side(ring, side, point_between(line.from, line.to, 0.5))};
}

/* An edge that the outline runs along. */
struct outline_edge {
	struct arena *arena;
	const struct corridor *corridor;
	struct ring ring;
	size_t side;
	struct soft_step step;
	struct segment part; /* of it along the side, walked as the outline is */
	struct stretch_list *list;
};

static void add_stretch(const struct outline_edge *edge, struct segment line, bool is_joint,
                        bool is_against)
{
	struct outline_stretch stretch = stretch_of(edge->ring, edge->side, line);
	stretch.has_step = true;
	stretch.step = edge->step;
	stretch.is_joint = is_joint;
	stretch.is_against = is_against;
	*array_push(edge->arena, &edge->list->stretches) = stretch;
}

static bool add_joint(const struct outline_edge *edge, struct segment line)
{
	if (segment_length(line) <= TOLERANCE_WHOLE ||
	    !corridor_is_free(edge->corridor, edge->step.at, line))
		return false;
	add_stretch(edge, line, true, false);
	return true;
}

/* What of a line along the edge lies between two tiles, walked as the line is. */
static struct segment between_tiles(const struct outline_edge *edge, struct segment line,
                                    const struct tile_joint *joint)
{
	struct segment whole = corridor_segment(edge->corridor, edge->step.at);
	struct segment on = {point_between(whole.from, whole.to, joint->on.from),
	                     point_between(whole.from, whole.to, joint->on.to)};
	if (edge->step.reversed)
		on = (struct segment){on.to, on.from};
	return (struct segment){segment_nearest(on, line.from), segment_nearest(on, line.to)};
}

/* What can be walked of the edge; if nothing can, the edge as a gap. */
static void add_edge(const struct outline_edge *edge)
{
	struct segment part = edge->part;
	size_t count, joint_count, before = edge->list->stretches.count;
	const struct stretch *on = clip_segment(edge->arena, part, &edge->corridor->ground, &count);
	const struct tile_joint *joints =
		tile_joints_at(edge->arena, edge->corridor->tiling, edge->corridor->panel,
	                       edge->step.at, &joint_count);
	bool has_tile = false;
	for (size_t k = 0; k < count; k++) {
		struct segment line = {point_between(part.from, part.to, on[k].from),
		                       point_between(part.from, part.to, on[k].to)};
		bool is_added = add_joint(edge, line);
		for (size_t t = 0; t < joint_count; t++) {
			struct segment between = between_tiles(edge, line, &joints[t]);
			has_tile |= segment_length(between) > TOLERANCE_WHOLE;
			if (!is_added)
				add_joint(edge, between);
		}
	}
	if (edge->list->stretches.count == before)
		add_stretch(edge, part, false, !has_tile);
}

/* A side of the outline: the joints it runs along, or else a border. */
static void add_side(struct arena *arena, const struct corridor *corridor, struct ring ring,
                     size_t side, struct stretch_list *list)
{
	const struct tiling *tiling = corridor->tiling;
	struct segment own = segment_of_ring(ring, side);
	size_t count, before = list->stretches.count;
	const struct network_place *places =
		network_near(arena, tiling->network, tiling->module,
	                     tiling->panels[corridor->panel].position, own, BESIDE, &count);
	for (size_t k = 0; k < count; k++) {
		struct segment edge = corridor_segment(corridor, places[k]);
		struct segment part = along_side(edge, own);
		bool reversed =
			point_dot(point_sub(part.to, part.from), point_sub(edge.to, edge.from)) < 0;
		if (segment_length(part) > 2 * BESIDE)
			add_edge(&(struct outline_edge){
				arena, corridor, ring, side, {places[k], reversed}, part, list});
	}
	if (list->stretches.count > before || segment_length(own) < 2 * BESIDE)
		return;
	struct outline_stretch border = stretch_of(ring, side, own);
	border.is_against = true;
	*array_push(arena, &list->stretches) = border;
}

static int by_round(const void *a, const void *b)
{
	const struct outline_stretch *x = a, *y = b;
	if (fabs(x->round - y->round) > TOLERANCE_SAME)
		return x->round < y->round ? -1 : 1;
	return soft_step_compare(x->step, y->step);
}

struct soft_outline soft_outline_in(struct arena *arena, const struct corridor *corridor,
                                    struct ring ring)
{
	struct stretch_list list = {0};
	for (size_t side = 0; side < ring.count; side++)
		add_side(arena, corridor, ring, side, &list);
	if (list.stretches.count > 0)
		qsort(list.stretches.items, list.stretches.count, sizeof *list.stretches.items,
		      by_round);
	return (struct soft_outline){ring, list.stretches.items, list.stretches.count};
}

struct soft_outline soft_outline_between(struct arena *arena, const struct soft_outline *outline,
                                         double from, double to)
{
	struct soft_outline side = {outline->ring, NULL, 0};
	double all = (double)outline->ring.count;
	double far = to > from ? to : to + all;
	side.stretches = ARENA_ARRAY(arena, struct outline_stretch, outline->count);
	for (int turn = 0; turn < 2; turn++)
		for (size_t k = 0; k < outline->count; k++) {
			double round = outline->stretches[k].round + turn * all;
			if (round >= from && round < far)
				side.stretches[side.count++] = outline->stretches[k];
		}
	return side;
}

struct outline_run *soft_outline_runs(struct arena *arena, const struct soft_outline *side,
                                      size_t *out_count)
{
	ARRAY_OF(struct outline_run) runs = {0};
	bool goes_on = false;
	for (size_t k = 0; k < side->count; k++) {
		struct outline_stretch here = side->stretches[k];
		goes_on = goes_on && here.is_joint &&
		          point_distance(runs.items[runs.count - 1].last.line.to, here.line.from) <
		                  TOLERANCE_WHOLE;
		if (goes_on)
			runs.items[runs.count - 1].last = here;
		else if (here.is_joint)
			*array_push(arena, &runs) = (struct outline_run){here, here};
		goes_on = here.is_joint;
	}
	*out_count = runs.count;
	return runs.items;
}

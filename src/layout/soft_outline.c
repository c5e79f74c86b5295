#include "layout/soft_outline.h"

#include <stdlib.h>

#include "geometry/clip.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"

/* How far the outline lies from the joints it runs along, a mitre included. */
static const double BESIDE = 2 * TOLERANCE_WHOLE;

struct stretch_list {
	ARRAY_OF(struct outline_stretch) stretches;
};

struct ring soft_outline_ring(struct arena *arena, const struct region *crossed)
{
	struct region grown = overlay_offset(arena, crossed, TOLERANCE_WHOLE, OVERLAY_MITRE);
	return grown.count > 0 ? grown.polygons[0].outline : (struct ring){NULL, 0};
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

static bool has_tile_beside(const struct corridor *corridor, struct network_place place)
{
	const struct network *network = corridor->tiling->network;
	const struct panel *panel = &corridor->tiling->panels[corridor->panel];
	return panel_has_tile(panel, network_beside(network, place, true)) &&
	       panel_has_tile(panel, network_beside(network, place, false));
}

/* What can be walked of an edge along the outline; if nothing can, the edge as a gap. */
static void add_edge(struct arena *arena, const struct corridor *corridor, struct ring ring,
                     size_t side, struct network_place place, struct stretch_list *list)
{
	struct segment along = segment_of_ring(ring, side);
	struct segment edge = corridor_segment(corridor, place);
	bool reversed =
		point_dot(point_sub(along.to, along.from), point_sub(edge.to, edge.from)) < 0;
	struct segment walked = reversed ? (struct segment){edge.to, edge.from} : edge;
	struct outline_stretch all = {.step = {place, reversed}, .line = walked};
	all.round = place_on_side(ring, side, point_between(edge.from, edge.to, 0.5));
	size_t count, before = list->stretches.count;
	const struct stretch *on = clip_segment(arena, walked, &corridor->ground, &count);
	for (size_t k = 0; k < count; k++) {
		struct outline_stretch part = all;
		part.line = (struct segment){point_between(walked.from, walked.to, on[k].from),
		                             point_between(walked.from, walked.to, on[k].to)};
		part.round =
			place_on_side(ring, side, point_between(part.line.from, part.line.to, 0.5));
		part.is_joint = segment_length(part.line) > TOLERANCE_WHOLE &&
		                corridor_is_free(corridor, place, part.line);
		if (part.is_joint)
			*array_push(arena, &list->stretches) = part;
	}
	if (list->stretches.count > before)
		return;
	all.is_against = count == 0 || !has_tile_beside(corridor, place);
	*array_push(arena, &list->stretches) = all;
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
	const struct tiling *tiling = corridor->tiling;
	struct stretch_list list = {0};
	for (size_t side = 0; side < ring.count; side++) {
		struct segment own = segment_of_ring(ring, side);
		size_t count;
		const struct network_place *places =
			network_near(arena, tiling->network, tiling->module,
		                     tiling->panels[corridor->panel].position, own, BESIDE, &count);
		for (size_t k = 0; k < count; k++) {
			struct segment edge = corridor_segment(corridor, places[k]);
			if (segment_distance(own, edge.from) <= BESIDE &&
			    segment_distance(own, edge.to) <= BESIDE)
				add_edge(arena, corridor, ring, side, places[k], &list);
		}
	}
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

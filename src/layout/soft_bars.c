#include "layout/soft_bars.h"

#include "geometry/tolerance.h"

/* Of the joints along a side, the one in the middle. */
static const struct outline_stretch *middle_joint(const struct soft_outline *side)
{
	size_t joints = 0, seen = 0;
	for (size_t k = 0; k < side->count; k++)
		joints += side->stretches[k].is_joint;
	for (size_t k = 0; k < side->count; k++)
		if (side->stretches[k].is_joint && seen++ == joints / 2)
			return &side->stretches[k];
	return NULL;
}

struct segment soft_spoke(const struct soft_setting *setting, struct ring ring,
                          struct segment joint)
{
	struct point along = point_unit(point_sub(joint.to, joint.from));
	struct point out = point_scale(point_left(along), -1);
	struct point foot = point_between(joint.from, joint.to, 0.5);
	double far = 2 * (setting->reach.half_width + setting->reach.one_tile);
	/* The outline lies a hair beside the joint. */
	struct segment ray = {point_add(foot, point_scale(out, 2 * TOLERANCE_WHOLE)),
	                      point_add(foot, point_scale(out, far))};
	double least = 1;
	for (size_t i = 0; i < ring.count; i++) {
		double share;
		if (segment_crossing(ray, segment_of_ring(ring, i), &share))
			least = fmin(least, share);
	}
	return (struct segment){foot, point_between(ray.from, ray.to, least)};
}

struct corridor_bars soft_bars(struct arena *arena, const struct soft_setting *setting,
                               const struct soft_unit *unit, const struct soft_end *from,
                               const struct soft_end *to)
{
	struct corridor_bars bars = {0};
	for (size_t k = 0; k < unit->end_count; k++) {
		const struct soft_end *end = &unit->ends[k];
		if (end->is_split || (end != from && end != to))
			corridor_bars_add(arena, &bars, soft_end_ahead(arena, end));
	}
	if (unit->end_count != 2)
		return bars;
	struct soft_outline other =
		soft_outline_between(arena, &unit->outline, to->round, from->round);
	const struct outline_stretch *middle = middle_joint(&other);
	if (middle)
		*array_push(arena, &bars.segments) =
			soft_spoke(setting, unit->outline.ring, middle->line);
	return bars;
}

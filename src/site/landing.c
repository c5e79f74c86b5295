#include "site/landing.h"

#include "geometry/foot.h"
#include "geometry/tolerance.h"

struct landing landing_from_line(struct line line)
{
	struct point first = line.points[0], last = line.points[line.count - 1];
	bool closed = line.count > 2 && point_distance(first, last) < TOLERANCE_SAME;
	return (struct landing){line, closed, closed};
}

static bool keeps_length(struct line line, const struct point *moving, struct point to)
{
	for (size_t i = 0; i < line.count; i++)
		if (&line.points[i] != moving &&
		    point_distance(line.points[i], to) > TOLERANCE_SAME)
			return true;
	return false;
}

/* Moves an end to its foot; true where it then lies there. */
static bool land(struct line line, struct point *end, struct foot foot, double reach)
{
	if (foot.distance > reach + TOLERANCE_SAME || !keeps_length(line, end, foot.at))
		return false;
	*end = foot.at;
	return true;
}

void landing_on_region(struct landing *landing, const struct region *region, double reach)
{
	struct line line = landing->line;
	struct point *start = &line.points[0], *end = &line.points[line.count - 1];
	if (!landing->start_fixed)
		landing->start_fixed = land(line, start, foot_on_region(region, *start), reach);
	if (!landing->end_fixed)
		landing->end_fixed = land(line, end, foot_on_region(region, *end), reach);
}

/* ---- on each other ---- */

struct targets {
	const struct landing *lines;
	struct box *boxes; /* grown by the reach */
	size_t count;
};

static struct box box_of(struct line line, double reach)
{
	struct box box = box_empty();
	for (size_t i = 0; i < line.count; i++)
		box = box_with(box, line.points[i]);
	return box_grown(box, reach + TOLERANCE_SAME);
}

static struct foot foot_on_targets(const struct targets *targets, const struct landing *self,
                                   struct point p)
{
	struct foot nearest = {p, INFINITY};
	for (size_t i = 0; i < targets->count; i++) {
		struct box box = targets->boxes[i];
		if (&targets->lines[i] == self || p.x < box.x0 || p.x > box.x1 || p.y < box.y0 ||
		    p.y > box.y1)
			continue;
		struct foot foot = foot_on_line(targets->lines[i].line, p);
		if (foot.distance < nearest.distance - TOLERANCE_SAME)
			nearest = foot;
	}
	return nearest;
}

void landing_on_others(struct arena *arena, struct landing *lines, size_t count,
                       const struct landing *targets, size_t target_count, double reach)
{
	/* An end moves by no more than the reach, so boxes grown by two stay valid. */
	struct targets all = {targets, ARENA_ARRAY(arena, struct box, target_count), target_count};
	for (size_t i = 0; i < target_count; i++)
		all.boxes[i] = box_of(targets[i].line, 2 * reach);
	for (size_t i = 0; i < count; i++) {
		struct landing *self = &lines[i];
		struct line line = self->line;
		struct point *start = &line.points[0], *end = &line.points[line.count - 1];
		if (!self->start_fixed)
			self->start_fixed =
				land(line, start, foot_on_targets(&all, self, *start), reach);
		if (!self->end_fixed)
			self->end_fixed = land(line, end, foot_on_targets(&all, self, *end), reach);
	}
}

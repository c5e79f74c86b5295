#include "layout/carried.h"

#include "base/array.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"
#include "layout/field_limits.h"
#include "layout/origin.h"

struct carrying {
	struct arena *arena;
	const struct field *field; /* as far as its ground */
	double least_width;
	ARRAY_OF(struct field_carried) carried;
};

struct fit {
	struct point through, along; /* unit */
	double deviation;            /* greatest, square to the line */
};

/* Best straight line through points: least squares square to the line. Two points are
 * their own line, without rounding. */
static struct fit fit_line(const struct point *points, size_t count)
{
	struct fit fit = {points[0], point_unit(point_sub(points[count - 1], points[0])), 0};
	if (count == 2)
		return fit;
	struct point sum = {0, 0};
	for (size_t i = 0; i < count; i++)
		sum = point_add(sum, point_sub(points[i], points[0]));
	fit.through = point_add(points[0], point_scale(sum, 1 / (double)count));
	double along = 0, across = 0, mixed = 0;
	for (size_t i = 0; i < count; i++) {
		struct point d = point_sub(points[i], fit.through);
		double s = point_dot(d, fit.along), t = point_cross(fit.along, d);
		along += s * s;
		across += t * t;
		mixed += s * t;
	}
	/* Turned from the chord by half the angle of (along - across, 2 mixed). */
	double difference = along - across;
	double length = sqrt(difference * difference + 4 * mixed * mixed);
	double cos_twice = length > 0 ? difference / length : 1;
	double cos_turn = sqrt((1 + cos_twice) / 2);
	double sin_turn = sqrt((1 - cos_twice) / 2) * (mixed < 0 ? -1 : 1);
	fit.along = point_unit(point_add(point_scale(fit.along, cos_turn),
	                                 point_scale(point_left(fit.along), sin_turn)));
	for (size_t i = 0; i < count; i++)
		fit.deviation =
			fmax(fit.deviation,
		             fabs(point_cross(fit.along, point_sub(points[i], fit.through))));
	return fit;
}

static enum field_axis axis_of(struct point along)
{
	if (fabs(along.y) <= TOLERANCE_PARALLEL * fabs(along.x))
		return FIELD_AXIS_U;
	if (fabs(along.x) <= TOLERANCE_PARALLEL * fabs(along.y))
		return FIELD_AXIS_V;
	return FIELD_AXIS_NONE;
}

/* An end on the ground's border goes on past it by the joint's width, so that a joint that
 * meets a wall at a slant is open through to the wall. */
static double past_end(const struct region *ground, struct point end,
                       const struct field_carried *carried)
{
	double reach = carried->deviation + TOLERANCE_WHOLE;
	return region_distance(ground, end) <= reach ? carried->width : 0;
}

static struct region band_of(struct arena *arena, const struct region *ground,
                             const struct field_carried *carried)
{
	struct point along = point_unit(point_sub(carried->to, carried->from));
	struct point side = point_scale(point_left(along), carried->width / 2);
	struct point from = point_sub(carried->from,
	                              point_scale(along, past_end(ground, carried->from, carried)));
	struct point to =
		point_add(carried->to, point_scale(along, past_end(ground, carried->to, carried)));
	struct point corners[] = {point_sub(from, side), point_sub(to, side), point_add(to, side),
	                          point_add(from, side)};
	return region_from_ring(arena, (struct ring){corners, 4});
}

static void add_band(struct carrying *c, struct field_carried carried)
{
	carried.band = band_of(c->arena, &c->field->ground, &carried);
	struct region met = overlay_intersection(c->arena, &carried.band, &c->field->ground);
	if (met.count)
		*array_push(c->arena, &c->carried) = carried;
}

static void carry_run(struct carrying *c, const struct site_slab_joint *joint,
                      const struct point *points, size_t count, size_t number)
{
	struct fit fit = fit_line(points, count);
	const char *origin = origin_of_slab_joint(c->arena, c->field, joint);
	double first = point_dot(point_sub(points[0], fit.through), fit.along);
	double last = point_dot(point_sub(points[count - 1], fit.through), fit.along);
	struct field_carried carried = {
		.joint = joint,
		.of = joint->id,
		.id = number ? arena_printf(c->arena, "%s.carried.%zu", origin, number + 1)
	                     : arena_printf(c->arena, "%s.carried", origin),
		.from = point_add(fit.through, point_scale(fit.along, first)),
		.to = point_add(fit.through, point_scale(fit.along, last)),
		.deviation = fit.deviation,
		.width = fmax(joint->width + 2 * fit.deviation, c->least_width),
		.axis = axis_of(fit.along),
	};
	add_band(c, carried);
}

/* Last point of the longest run from `first` that one straight line can carry: a bend in
 * the slab joint beyond its own width is a corner, not a wobble. */
static size_t end_of_run(const struct point *points, size_t first, size_t count, double wobble)
{
	size_t end = first + 1;
	while (end + 1 < count && fit_line(points + first, end + 2 - first).deviation <= wobble)
		end++;
	return end;
}

static bool is_relocated(const struct field *field, const struct site_slab_joint *joint)
{
	for (size_t i = 0; i < field->relocated_count; i++)
		if (field->relocated[i].joint == joint)
			return true;
	return false;
}

static void carry_joint(struct carrying *c, const struct site_slab_joint *joint, struct line line)
{
	double wobble = fmax(joint->width, c->least_width);
	size_t number = 0;
	for (size_t first = 0; first + 1 < line.count;) {
		size_t end = end_of_run(line.points, first, line.count, wobble);
		carry_run(c, joint, line.points + first, end + 1 - first, number++);
		first = end;
	}
}

/* ---- doorways ---- */

/* On the jamb line, so that the joint lies within the wall's depth where there is room for it. */
static struct point on_jamb(struct point near, struct point far, double share, double width)
{
	double depth = point_distance(near, far);
	if (depth <= width)
		return point_between(near, far, 0.5);
	double at = fmin(fmax(share * depth, width / 2), depth - width / 2);
	return point_between(near, far, at / depth);
}

static void part_doorway(struct carrying *c, const struct site_doorway *doorway, double width)
{
	struct point from = on_jamb(doorway->from, doorway->stop_from, doorway->stop_share, width);
	struct point to = on_jamb(doorway->to, doorway->stop_to, doorway->stop_share, width);
	struct field_carried carried = {
		.of = doorway->id,
		.id = arena_printf(c->arena, "%s.joint", doorway->id),
		.from = frame_in(c->field->frame, from),
		.to = frame_in(c->field->frame, to),
		.width = width,
	};
	carried.axis = axis_of(point_sub(carried.to, carried.from));
	add_band(c, carried);
}

/* Of doorways between rooms of the lay, each once. */
static void part_doorways(struct carrying *c, const struct rules *rules)
{
	for (size_t r = 0; r < c->field->room_count; r++)
		for (size_t d = 0; d < c->field->rooms[r]->doorway_count; d++) {
			const struct site_doorway *doorway = &c->field->rooms[r]->doorways[d];
			if (doorway->end == SITE_EDGE_OPEN && doorway->plan->joint &&
			    !doorway->is_back)
				part_doorway(c, doorway, field_joint_width(c->field, rules));
		}
}

struct field_carried *carried_place(struct arena *arena, const struct field *field,
                                    const struct rules *rules, bool outdoor, size_t *out_count)
{
	struct carrying c = {
		.arena = arena,
		.field = field,
		.least_width = rules_figure(rules, outdoor ? FIGURE_CARRIED_WIDTH_OUTDOOR
	                                                   : FIGURE_CARRIED_WIDTH_INDOOR),
	};
	for (size_t i = 0; i < field->site->slab_joint_count; i++) {
		const struct site_slab_joint *joint = &field->site->slab_joints[i];
		if (is_relocated(field, joint))
			continue;
		carry_joint(&c, joint, frame_line_in(arena, field->frame, joint->line));
	}
	part_doorways(&c, rules);
	*out_count = c.carried.count;
	return c.carried.items;
}

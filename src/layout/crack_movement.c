#include "layout/crack_movement.h"

#include "geometry/segment.h"
#include "layout/warming.h"
#include "units/length.h"
#include "units/number.h"

/* ---- the way to what stops the movement ---- */

static double nearest_on_line(struct segment ray, struct line line, double nearest)
{
	for (size_t i = 1; i < line.count; i++) {
		double share;
		if (segment_crossing(ray, (struct segment){line.points[i - 1], line.points[i]},
		                     &share))
			nearest = fmin(nearest, share);
	}
	return nearest;
}

static double nearest_on_border(struct segment ray, const struct region *ground)
{
	double nearest = 1;
	for (size_t i = 0; i < region_ring_count(ground); i++) {
		struct ring ring = region_ring(ground, i);
		for (size_t k = 0; k < ring.count; k++) {
			double share;
			if (segment_crossing(ray, segment_of_ring(ring, k), &share))
				nearest = fmin(nearest, share);
		}
	}
	return nearest;
}

/* From a point of the crack, in a direction, to the next crack, slab joint or edge. */
static double way(const struct site *site, const struct site_crack *crack,
                  const struct region *ground, struct point from, struct point direction)
{
	struct box box = region_box(ground);
	double far = (box.x1 - box.x0) + (box.y1 - box.y0);
	struct segment ray = {from, point_add(from, point_scale(direction, far))};
	double nearest = nearest_on_border(ray, ground);
	for (size_t i = 0; i < site->crack_count; i++)
		if (&site->cracks[i] != crack)
			nearest = nearest_on_line(ray, site->cracks[i].line, nearest);
	for (size_t i = 0; i < site->slab_joint_count; i++)
		if (&site->slab_joints[i] != crack->joint)
			nearest = nearest_on_line(ray, site->slab_joints[i].line, nearest);
	return nearest * far;
}

/* ---- the concrete ---- */

/* Ground keeps the lower face from drying. Source: EN 1992-1-1 3.1.4(6): twice the section by
 * the border that dries. */
static struct concrete concrete_of(const struct plan *plan, const struct plan_slab *slab)
{
	double thickness = length_mm(slab->thickness_nm);
	bool dries_below = slab->support == PLAN_SUPPORT_SUSPENDED;
	bool is_known = slab->placed.day != 0 && plan->job != NULL && plan->job->starts.day != 0;
	return (struct concrete){
		.strength_mpa = slab->strength_mpa,
		.cement = slab->cement[0],
		.humidity_share = slab->ambient_share,
		.size_mm = dries_below ? thickness : 2 * thickness,
		.age_days =
			is_known ? (double)date_days_between(slab->placed, plan->job->starts) : -1,
	};
}

static struct crack_movement movement_over(const struct plan *plan, const struct rules *rules,
                                           const struct site_slab_part *part, double length)
{
	struct crack_movement movement = {.slab = part->slab, .length = length};
	movement.concrete = concrete_of(plan, part->slab);
	movement.shrinkage = shrinkage_to_come(&movement.concrete) * length;
	movement.warming = warming_of(rules, part);
	movement.thermal =
		rules_figure(rules, FIGURE_CONCRETE_EXPANSION) * 1e-6 * movement.warming * length;
	movement.total = movement.shrinkage + movement.thermal;
	return movement;
}

/* ---- along the crack ---- */

struct trace {
	const struct site *site;
	const struct rules *rules;
	const struct site_crack *crack;
};

/* Where the straight piece of crack in a room moves most: looked at in its middle. */
static struct crack_movement movement_at(const struct trace *trace, const struct site_room *room,
                                         const struct region *ground, struct segment piece)
{
	const struct site *site = trace->site;
	struct point middle = point_between(piece.from, piece.to, 0.5);
	struct point side = point_left(point_unit(point_sub(piece.to, piece.from)));
	const struct site_slab_part *part = site_slab_part_at(site, room, middle);
	double left = way(site, trace->crack, ground, middle, side);
	double right = way(site, trace->crack, ground, middle, point_scale(side, -1));
	if (part->slab->joints_nm > 0) {
		left = fmin(left, length_mm(part->slab->joints_nm));
		right = fmin(right, length_mm(part->slab->joints_nm));
	}
	return movement_over(site->plan, trace->rules, part, (left + right) / 2);
}

struct crack_movement crack_movement_of(struct arena *arena, const struct site *site,
                                        const struct rules *rules, const struct site_crack *crack)
{
	const struct trace trace = {site, rules, crack};
	struct crack_movement most = {0};
	for (size_t r = 0; r < site->room_count; r++) {
		const struct site_room *room = &site->rooms[r];
		struct region ground = site_room_ground(arena, room);
		if (crack->room != NULL && crack->room != room)
			continue;
		for (size_t i = 1; i < crack->line.count; i++) {
			struct segment piece = {crack->line.points[i - 1], crack->line.points[i]};
			struct point middle = point_between(piece.from, piece.to, 0.5);
			if (!region_holds(&ground, middle))
				continue;
			struct crack_movement here = movement_at(&trace, room, &ground, piece);
			if (most.slab == NULL || number_order(here.total, most.total) > 0)
				most = here;
		}
	}
	return most;
}

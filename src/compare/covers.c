#include "compare/covers.h"

#include <math.h>
#include <string.h>

#include "base/array.h"
#include "geometry/overlay.h"
#include "geometry/tolerance.h"

struct regions {
	ARRAY_OF(struct region) list;
};

static struct region joined(struct arena *arena, const struct regions *regions)
{
	return regions->list.count > 0
	               ? overlay_union_all(arena, regions->list.items, regions->list.count)
	               : (struct region){0};
}

/* What lies in one of the two alone, and is wider than rounding. */
static struct region less(struct arena *arena, const struct region *all, const struct region *same)
{
	struct region left = overlay_difference(arena, all, same);
	struct region core = overlay_offset(arena, &left, -TOLERANCE_WHOLE, OVERLAY_MITRE);
	return core.count > 0 ? overlay_offset(arena, &core, TOLERANCE_WHOLE, OVERLAY_MITRE) : core;
}

/* ---- tile ---- */

/* Outlines of the panels, on the plan. */
static struct region panel_ground(struct arena *arena, const struct placed_lay *lay, size_t index)
{
	struct region ground = {&lay->tiling->panels[index].ground, 1};
	return frame_region_out(arena, lay->field->frame, &ground);
}

static bool is_near(struct point a, struct point b)
{
	return point_distance(a, b) <= TOLERANCE_WHOLE;
}

static bool is_same_face(const struct face *a, const struct face *b)
{
	if (a->tile != b->tile || a->ring.count != b->ring.count)
		return false;
	for (size_t i = 0; i < a->ring.count; i++)
		if (!is_near(a->ring.points[i], b->ring.points[i]))
			return false;
	return true;
}

static bool is_same_pattern(const struct placed_lay *a, const struct placed_lay *b)
{
	const struct module *m = a->module, *n = b->module;
	struct point turn_a = {a->field->frame.cos, a->field->frame.sin},
		     turn_b = {b->field->frame.cos, b->field->frame.sin};
	if (point_distance(turn_a, turn_b) > TOLERANCE_SAME || m->face_count != n->face_count ||
	    !is_near(m->a, n->a) || !is_near(m->b, n->b))
		return false;
	for (size_t i = 0; i < m->face_count; i++)
		if (!is_same_face(&m->faces[i], &n->faces[i]) ||
		    strcmp(a->field->lay->tiles[m->faces[i].tile]->id,
		           b->field->lay->tiles[n->faces[i].tile]->id) != 0)
			return false;
	return true;
}

/* Whole steps of the pattern lead from one position to the other. */
static bool is_same_position(const struct module *m, struct point a, struct point b)
{
	struct point d = point_sub(b, a);
	double area = point_cross(m->a, m->b);
	double i = round(point_cross(d, m->b) / area), j = round(point_cross(m->a, d) / area);
	struct point step = point_add(point_scale(m->a, i), point_scale(m->b, j));
	return is_near(d, step);
}

static void add_same(struct arena *arena, const struct placed_lay *a, const struct placed_lay *b,
                     struct regions *same)
{
	if (!is_same_pattern(a, b))
		return;
	for (size_t i = 0; i < a->tiling->panel_count; i++)
		for (size_t k = 0; k < b->tiling->panel_count; k++) {
			if (!is_same_position(a->module, a->tiling->panels[i].position,
			                      b->tiling->panels[k].position))
				continue;
			struct region p = panel_ground(arena, a, i), q = panel_ground(arena, b, k);
			*array_push(arena, &same->list) = overlay_intersection(arena, &p, &q);
		}
}

static void add_panels(struct arena *arena, const struct placed *placed, struct regions *all)
{
	for (size_t i = 0; i < placed->lay_count; i++)
		for (size_t k = 0; k < placed->lays[i].tiling->panel_count; k++)
			*array_push(arena, &all->list) = panel_ground(arena, &placed->lays[i], k);
}

struct region covers_tile_changed(struct arena *arena, const struct floor_state *before,
                                  const struct floor_state *after)
{
	struct regions all = {0}, same = {0};
	add_panels(arena, before->placed, &all);
	add_panels(arena, after->placed, &all);
	for (size_t i = 0; i < before->placed->lay_count; i++)
		for (size_t k = 0; k < after->placed->lay_count; k++)
			add_same(arena, &before->placed->lays[i], &after->placed->lays[k], &same);
	struct region ground = joined(arena, &all), kept = joined(arena, &same);
	return less(arena, &ground, &kept);
}

/* ---- full coverage ---- */

static struct region full_ground(struct arena *arena, const struct floor_state *state,
                                 const char *membrane)
{
	struct regions grounds = {0};
	for (size_t i = 0; i < state->placed->lay_count; i++) {
		const struct placed_lay *lay = &state->placed->lays[i];
		const struct cover *cover = &lay->strips->cover;
		if (cover->is_full && cover->membrane != NULL &&
		    strcmp(cover->membrane->id, membrane) == 0)
			*array_push(arena, &grounds.list) =
				frame_region_out(arena, lay->field->frame, &cover->region);
	}
	return joined(arena, &grounds);
}

static void add_changed(struct arena *arena, const struct floor_state *before,
                        const struct floor_state *after, const char *membrane,
                        struct regions *changed)
{
	struct region from = full_ground(arena, before, membrane),
		      to = full_ground(arena, after, membrane);
	*array_push(arena, &changed->list) = less(arena, &from, &to);
	*array_push(arena, &changed->list) = less(arena, &to, &from);
}

struct region covers_membrane_changed(struct arena *arena, const struct floor_state *before,
                                      const struct floor_state *after)
{
	struct regions changed = {0};
	for (size_t i = 0; i < before->plan->membrane_count; i++)
		add_changed(arena, before, after, before->plan->membranes[i].id, &changed);
	for (size_t i = 0; i < after->plan->membrane_count; i++)
		add_changed(arena, before, after, after->plan->membranes[i].id, &changed);
	return joined(arena, &changed);
}

#include "compare/thing_change.h"

#include <string.h>

#include "compare/covers.h"
#include "geometry/overlay.h"

/* ---- whether two things are one ---- */

static bool is_alike(const struct thing *a, const struct thing *b)
{
	return a->kind == b->kind && strcmp(a->looks, b->looks) == 0 &&
	       shape_is_same(a->shape, b->shape);
}

static bool has_alike(const struct thing_list *things, const struct thing *thing)
{
	for (size_t i = 0; i < things->list.count; i++)
		if (is_alike(&things->list.items[i], thing))
			return true;
	return false;
}

static void add_missing(struct arena *arena, const struct thing_list *from,
                        const struct thing_list *in, bool is_gone, struct thing_changes *changes)
{
	for (size_t i = 0; i < from->list.count; i++)
		if (!has_alike(in, &from->list.items[i]))
			*array_push(arena, &changes->list) =
				(struct thing_change){from->list.items[i], is_gone};
}

static void add_ground(struct arena *arena, enum thing_kind kind, struct region ground,
                       struct thing_changes *changes)
{
	if (ground.count > 0)
		*array_push(arena, &changes->list) = (struct thing_change){
			{.kind = kind, .id = "", .looks = "", .ground = ground}, false};
}

struct thing_changes thing_changes_find(struct arena *arena, const struct floor_state *before,
                                        const struct floor_state *after)
{
	struct thing_changes changes = {0};
	struct thing_list from = things_of(arena, before), to = things_of(arena, after);
	add_missing(arena, &to, &from, false, &changes);
	add_missing(arena, &from, &to, true, &changes);
	add_ground(arena, THING_TILE, covers_tile_changed(arena, before, after), &changes);
	add_ground(arena, THING_COVER, covers_membrane_changed(arena, before, after), &changes);
	return changes;
}

/* ---- what is left at the end ---- */

/* Tile and full coverage are one thing each, wherever they changed. */
static bool is_ground_alone(const struct thing *thing)
{
	return thing->kind == THING_TILE || thing->kind == THING_COVER;
}

static void keep(struct arena *arena, const struct thing_change *change,
                 const struct thing_changes *last, struct thing_changes *kept)
{
	for (size_t i = 0; i < last->list.count; i++) {
		const struct thing_change *other = &last->list.items[i];
		if (change->is_gone != other->is_gone || !is_alike(&change->thing, &other->thing))
			continue;
		struct thing_change one = *change;
		if (is_ground_alone(&one.thing))
			one.thing.ground = overlay_intersection(arena, &one.thing.ground,
			                                        &other->thing.ground);
		if (!is_ground_alone(&one.thing) || one.thing.ground.count > 0)
			*array_push(arena, &kept->list) = one;
		return;
	}
}

struct thing_changes thing_changes_kept(struct arena *arena, const struct thing_changes *changes,
                                        const struct thing_changes *last)
{
	struct thing_changes kept = {0};
	for (size_t i = 0; i < changes->list.count; i++)
		keep(arena, &changes->list.items[i], last, &kept);
	return kept;
}

/* ---- ground ---- */

static struct region ground_of(struct arena *arena, const struct thing *thing, double half_width)
{
	if (thing->ground.count > 0)
		return thing->ground;
	struct line line = thing->shape.line;
	if (!thing->shape.is_ring)
		return overlay_band(arena, line, half_width);
	struct point *closed = ARENA_ARRAY(arena, struct point, line.count + 1);
	memcpy(closed, line.points, line.count * sizeof *closed);
	closed[line.count] = closed[0];
	return overlay_band(arena, (struct line){closed, line.count + 1}, half_width);
}

struct region thing_changes_ground(struct arena *arena, const struct thing_changes *changes,
                                   unsigned kinds, double half_width)
{
	ARRAY_OF(struct region) grounds = {0};
	for (size_t i = 0; i < changes->list.count; i++) {
		const struct thing *thing = &changes->list.items[i].thing;
		if (kinds & THING_BIT(thing->kind))
			*array_push(arena, &grounds) = ground_of(arena, thing, half_width);
	}
	return grounds.count > 0 ? overlay_union_all(arena, grounds.items, grounds.count)
	                         : (struct region){0};
}

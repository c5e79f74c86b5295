#include "compare/shape.h"

#include <string.h>

#include "geometry/tolerance.h"

/* ---- finding ---- */

static struct shape ring_shape(struct ring ring)
{
	return (struct shape){{ring.points, ring.count}, true};
}

static bool is_named(const char *id, const char *wanted)
{
	return strcmp(id, wanted) == 0;
}

static struct shape room_shape(struct arena *arena, const struct site *site, const char *id)
{
	(void)arena;
	const struct site_room *room = site_room_find(site, id);
	return room != NULL ? ring_shape(room->outline) : (struct shape){0};
}

static struct shape crack_shape(struct arena *arena, const struct site *site, const char *id)
{
	(void)arena;
	for (size_t i = 0; i < site->crack_count; i++)
		if (is_named(site->cracks[i].id, id))
			return (struct shape){site->cracks[i].line, false};
	return (struct shape){0};
}

static struct shape slab_joint_shape(struct arena *arena, const struct site *site, const char *id)
{
	(void)arena;
	for (size_t i = 0; i < site->slab_joint_count; i++)
		if (is_named(site->slab_joints[i].id, id))
			return (struct shape){site->slab_joints[i].line, false};
	return (struct shape){0};
}

static struct shape reading_shape(struct arena *arena, const struct site *site, const char *id)
{
	for (size_t i = 0; i < site->reading_count; i++) {
		const struct site_reading *reading = &site->readings[i];
		if (!is_named(reading->id, id) || !reading->has_at)
			continue;
		struct point *at = ARENA_NEW(arena, struct point);
		*at = reading->at;
		return (struct shape){{at, 1}, false};
	}
	return (struct shape){0};
}

static struct shape obstacle_shape(struct arena *arena, const struct site *site, const char *id)
{
	(void)arena;
	for (size_t r = 0; r < site->room_count; r++)
		for (size_t i = 0; i < site->rooms[r].obstacle_count; i++)
			if (is_named(site->rooms[r].obstacles[i].id, id))
				return ring_shape(site->rooms[r].obstacles[i].ring);
	return (struct shape){0};
}

static struct shape slab_shape(struct arena *arena, const struct site *site, const char *id)
{
	(void)arena;
	for (size_t i = 0; i < site->slab_count; i++)
		if (is_named(site->slabs[i].plan->id, id) && site->slabs[i].region.count > 0)
			return ring_shape(site->slabs[i].region.polygons[0].outline);
	return (struct shape){0};
}

/* The opening; its recess where there is one. */
static struct shape doorway_shape(struct arena *arena, const struct site *site, const char *id)
{
	for (size_t r = 0; r < site->room_count; r++)
		for (size_t i = 0; i < site->rooms[r].doorway_count; i++) {
			const struct site_doorway *doorway = &site->rooms[r].doorways[i];
			if (!is_named(doorway->id, id))
				continue;
			struct point corners[] = {doorway->from, doorway->to, doorway->stop_to,
			                          doorway->stop_from};
			return ring_shape(ring_copy(arena, corners, 4));
		}
	return (struct shape){0};
}

struct shape shape_find(struct arena *arena, const struct site *site, const char *kind,
                        const char *id)
{
	static const struct {
		const char *kind;
		struct shape (*find)(struct arena *, const struct site *, const char *);
	} finders[] = {{"room", room_shape},
	               {"crack", crack_shape},
	               {"slab-joint", slab_joint_shape},
	               {"reading", reading_shape},
	               {"obstacle", obstacle_shape},
	               {"doorway", doorway_shape},
	               {"slab", slab_shape}};
	for (size_t i = 0; i < sizeof finders / sizeof *finders; i++)
		if (strcmp(finders[i].kind, kind) == 0)
			return finders[i].find(arena, site, id);
	return (struct shape){0};
}

/* ---- comparing ---- */

/* Point by point: from `start` of `b` on, forwards or backwards. */
static bool runs_along(struct line a, struct line b, size_t start, bool is_reversed)
{
	for (size_t i = 0; i < a.count; i++) {
		size_t k = is_reversed ? start + a.count - i : start + i;
		if (point_distance(a.points[i], b.points[k % a.count]) > TOLERANCE_WHOLE)
			return false;
	}
	return true;
}

bool shape_is_same(struct shape a, struct shape b)
{
	if (a.line.count != b.line.count || a.is_ring != b.is_ring)
		return false;
	if (a.line.count == 0)
		return true;
	if (!a.is_ring)
		return runs_along(a.line, b.line, 0, false) ||
		       runs_along(a.line, b.line, b.line.count - 1, true);
	for (size_t start = 0; start < b.line.count; start++)
		if (runs_along(a.line, b.line, start, false))
			return true;
	return false;
}

bool shape_is_reversed(struct shape a, struct shape b)
{
	return !a.is_ring && a.line.count > 1 && shape_is_same(a, b) &&
	       !runs_along(a.line, b.line, 0, false);
}

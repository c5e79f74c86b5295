#include "geometry/crossing.h"
#include "geometry/overlay.h"
#include "site/site.h"

/* The walls with the recesses let in, corner by corner: exactly the points of the borders. */
static struct ring walls_and_recesses(struct arena *arena, const struct site_room *room)
{
	size_t border_count;
	const struct site_edge *borders = site_room_borders(arena, room, &border_count);
	struct ring ring = {ARENA_ARRAY(arena, struct point, border_count), 0};
	for (size_t i = 0; i < border_count; i++) {
		bool stands_in_the_room =
			borders[i].kind == SITE_EDGE_OBSTACLE || borders[i].kind == SITE_EDGE_DRAIN;
		if (!stands_in_the_room)
			ring.points[ring.count++] = borders[i].from;
	}
	return ring;
}

static struct region joined(struct arena *arena, const struct site_room *room)
{
	size_t count = 0;
	struct region *parts = ARENA_ARRAY(arena, struct region, room->doorway_count + 1);
	parts[count++] = region_from_ring(arena, room->outline);
	for (size_t i = 0; i < room->doorway_count; i++)
		if (room->doorways[i].recess.count)
			parts[count++] = region_from_ring(arena, room->doorways[i].recess);
	return overlay_union_all(arena, parts, count);
}

struct region site_room_ground(struct arena *arena, const struct site_room *room)
{
	struct ring ring = walls_and_recesses(arena, room);
	struct crossing unused;
	if (!crossing_find(arena, ring, &unused))
		return region_from_ring(arena, ring);
	/* Recesses that share a jamb, or meet behind an inner corner, are one. */
	return joined(arena, room);
}

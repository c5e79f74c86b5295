#include "layout/place_map.h"

#include <stdint.h>

enum { FIRST_ROOM = 64 };

struct place_map place_map_in(struct arena *arena)
{
	return (struct place_map){arena, ARENA_ARRAY(arena, struct place_slot, FIRST_ROOM),
	                          FIRST_ROOM, 0};
}

static bool is_same(struct place_key a, struct place_key b)
{
	return a.what == b.what && a.panel == b.panel && a.i == b.i && a.j == b.j;
}

/* Spreads neighbouring places: multiply, then fold the high bits down. */
static size_t hash(struct place_key key)
{
	const uint64_t odd = 0x9E3779B97F4A7C15u; /* 2^64 over the golden ratio */
	uint64_t h = (uint32_t)key.what;
	h = h * odd + (uint32_t)key.panel;
	h = h * odd + (uint32_t)key.i;
	h = h * odd + (uint32_t)key.j;
	h *= odd;
	return (size_t)(h ^ (h >> 32));
}

/* The slot of `key`, or the free one where it belongs. */
static struct place_slot *find_slot(const struct place_map *map, struct place_key key)
{
	size_t at = hash(key) & (map->room - 1);
	while (map->slots[at].is_taken && !is_same(map->slots[at].key, key))
		at = (at + 1) & (map->room - 1);
	return &map->slots[at];
}

static void grow(struct place_map *map)
{
	struct place_map larger = {map->arena,
	                           ARENA_ARRAY(map->arena, struct place_slot, 2 * map->room),
	                           2 * map->room, map->count};
	for (size_t i = 0; i < map->room; i++)
		if (map->slots[i].is_taken)
			*find_slot(&larger, map->slots[i].key) = map->slots[i];
	*map = larger;
}

size_t *place_map_add(struct place_map *map, struct place_key key, size_t fresh)
{
	struct place_slot *slot = find_slot(map, key);
	if (slot->is_taken)
		return &slot->value;
	if (2 * map->count >= map->room) {
		grow(map);
		slot = find_slot(map, key);
	}
	map->count++;
	*slot = (struct place_slot){key, fresh, true};
	return &slot->value;
}

const size_t *place_map_find(const struct place_map *map, struct place_key key)
{
	const struct place_slot *slot = find_slot(map, key);
	return slot->is_taken ? &slot->value : NULL;
}

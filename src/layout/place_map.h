/* place_map.h - a set of places of the lattice, each with a number.
 * Owns: arena; a pointer it hands out lives until the next addition.
 * The order of places is never asked for, so it cannot reach an output. */
#ifndef LAYOUT_PLACE_MAP_H
#define LAYOUT_PLACE_MAP_H
#include <stdbool.h>
#include <stddef.h>

#include "base/arena.h"

/* A face or edge of the pattern, the panel where that matters, and lattice steps. */
struct place_key {
	int what, panel, i, j;
};

struct place_slot {
	struct place_key key;
	size_t value;
	bool is_taken;
};

struct place_map {
	struct arena *arena;
	struct place_slot *slots;
	size_t room, count; /* room is a power of two */
};

struct place_map place_map_in(struct arena *);
/* The number at `key`; a key not met before gets `fresh`. */
size_t *place_map_add(struct place_map *, struct place_key, size_t fresh);
const size_t *place_map_find(const struct place_map *, struct place_key); /* NULL: not there */

#endif

#include "base/array.h"

#include <string.h>

enum { FIRST_ROOM = 8 };

void *array_grow(struct arena *arena, const void *items, size_t count, size_t *room, size_t size)
{
	size_t larger = *room ? *room * 2 : FIRST_ROOM;
	void *block = arena_alloc_array(arena, larger, size);
	if (count)
		memcpy(block, items, count * size);
	*room = larger;
	return block;
}

/* array.h - typed arrays that grow on an arena.
 * Declare `ARRAY_OF(struct point) points = {0};`, push with
 * `*array_push(arena, &points) = p;`, read `points.items[i]`, `points.count`.
 * A pointer into `items` lives until the next push. */
#ifndef BASE_ARRAY_H
#define BASE_ARRAY_H
#include <stddef.h>

#include "base/arena.h"

#define ARRAY_OF(type)              \
	struct {                    \
		type *items;        \
		size_t count, room; \
	}

/* Copies `count` elements of `size` bytes into a block of twice the room. */
void *array_grow(struct arena *, const void *items, size_t count, size_t *room, size_t size);

/* Address of a new, zero-filled element at the end. */
#define array_push(arena, array)                                                                \
	(((array)->count == (array)->room                                                       \
	          ? (void)((array)->items = array_grow((arena), (array)->items, (array)->count, \
	                                               &(array)->room, sizeof *(array)->items)) \
	          : (void)0),                                                                   \
	 &(array)->items[(array)->count++])

#endif

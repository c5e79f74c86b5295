/* arena.h - memory that is released all at once.
 * Owns: every block it hands out, until arena_free. Blocks are zero-filled and
 * aligned for any type. Allocation never returns NULL: when memory is gone the
 * process says so and ends (nothing was written yet; outputs appear whole or not
 * at all), so no caller has a branch for it. */
#ifndef BASE_ARENA_H
#define BASE_ARENA_H
#include <stdarg.h>
#include <stddef.h>

#include "base/check.h"

struct arena;

struct arena *arena_new(void);
void arena_free(struct arena *); /* NULL is fine */
/* Takes back every block at once and keeps one chunk for what comes next: for scratch
 * memory of a loop. Registered handles are released. */
void arena_clear(struct arena *);

/* What an allocation does that cannot be met; for those that foreign libraries make. */
CHECK_NO_RETURN void arena_out_of_memory(void);

void *arena_alloc(struct arena *, size_t size);
/* `count` * `size` checked for overflow. */
void *arena_alloc_array(struct arena *, size_t count, size_t size);
char *arena_strdup(struct arena *, const char *text);
char *arena_strndup(struct arena *, const char *text, size_t length);
char *arena_printf(struct arena *, const char *format, ...) CHECK_PRINTF(2, 3);
char *arena_vprintf(struct arena *, const char *format, va_list) CHECK_PRINTF(2, 0);

/* Calls `release(handle)` when the arena is freed; last registered, first called.
 * For handles of foreign libraries. */
void arena_defer(struct arena *, void (*release)(void *), void *handle);

#define ARENA_NEW(arena, type) ((type *)arena_alloc((arena), sizeof(type)))
#define ARENA_ARRAY(arena, type, count) ((type *)arena_alloc_array((arena), (count), sizeof(type)))

#endif

#include "base/arena.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { CHUNK_BYTES = 64 * 1024 };

struct chunk {
	struct chunk *next;
	size_t used, size;
	max_align_t bytes[];
};

struct deferred {
	struct deferred *next;
	void (*release)(void *);
	void *handle;
};

struct arena {
	struct chunk *chunks;
	struct deferred *deferred;
};

void arena_out_of_memory(void)
{
	fputs("jurystick: error: out of memory\n", stderr);
	exit(3);
}

static void *allocate_or_exit(size_t size)
{
	void *block = calloc(1, size);
	if (!block)
		arena_out_of_memory();
	return block;
}

struct arena *arena_new(void)
{
	return allocate_or_exit(sizeof(struct arena));
}

static void release_deferred(struct arena *arena)
{
	for (struct deferred *d = arena->deferred; d; d = d->next)
		d->release(d->handle);
	arena->deferred = NULL;
}

static void free_chunks(struct chunk *chunks)
{
	while (chunks) {
		struct chunk *next = chunks->next;
		free(chunks);
		chunks = next;
	}
}

void arena_free(struct arena *arena)
{
	if (!arena)
		return;
	release_deferred(arena);
	free_chunks(arena->chunks);
	free(arena);
}

void arena_clear(struct arena *arena)
{
	release_deferred(arena);
	struct chunk *kept = arena->chunks;
	if (!kept)
		return;
	free_chunks(kept->next);
	kept->next = NULL;
	memset(kept->bytes, 0, kept->used);
	kept->used = 0;
}

static struct chunk *add_chunk(struct arena *arena, size_t size)
{
	struct chunk *chunk = allocate_or_exit(sizeof *chunk + size);
	chunk->size = size;
	/* A block that fills its own chunk goes behind the current one, which may
	 * still have room for small blocks. */
	if (size > CHUNK_BYTES && arena->chunks) {
		chunk->next = arena->chunks->next;
		arena->chunks->next = chunk;
	} else {
		chunk->next = arena->chunks;
		arena->chunks = chunk;
	}
	return chunk;
}

void *arena_alloc(struct arena *arena, size_t size)
{
	const size_t align = sizeof(max_align_t);
	if (size > SIZE_MAX / 2)
		arena_out_of_memory();
	size = (size + align - 1) / align * align;
	struct chunk *chunk = arena->chunks;
	if (!chunk || chunk->size - chunk->used < size)
		chunk = add_chunk(arena, size > CHUNK_BYTES ? size : CHUNK_BYTES);
	void *block = (char *)chunk->bytes + chunk->used;
	chunk->used += size;
	return block;
}

void *arena_alloc_array(struct arena *arena, size_t count, size_t size)
{
	if (size && count > SIZE_MAX / 2 / size)
		arena_out_of_memory();
	return arena_alloc(arena, count * size);
}

char *arena_strndup(struct arena *arena, const char *text, size_t length)
{
	char *copy = arena_alloc(arena, length + 1);
	memcpy(copy, text, length);
	return copy;
}

char *arena_strdup(struct arena *arena, const char *text)
{
	return arena_strndup(arena, text, strlen(text));
}

char *arena_vprintf(struct arena *arena, const char *format, va_list args)
{
	va_list again;
	va_copy(again, args);
	int length = vsnprintf(NULL, 0, format, again);
	va_end(again);
	if (length < 0)
		length = 0;
	char *text = arena_alloc(arena, (size_t)length + 1);
	vsnprintf(text, (size_t)length + 1, format, args);
	return text;
}

char *arena_printf(struct arena *arena, const char *format, ...)
{
	va_list args;
	va_start(args, format);
	char *text = arena_vprintf(arena, format, args);
	va_end(args);
	return text;
}

void arena_defer(struct arena *arena, void (*release)(void *), void *handle)
{
	struct deferred *d = ARENA_NEW(arena, struct deferred);
	d->release = release;
	d->handle = handle;
	d->next = arena->deferred;
	arena->deferred = d;
}

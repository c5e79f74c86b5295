/* strbuf.h - text that grows on an arena.
 * Owns: the text lives in the arena and is always ended by a zero byte.
 * Numbers with a fraction go through units/number.h, never through "%f": the
 * locale must not reach an output. */
#ifndef BASE_STRBUF_H
#define BASE_STRBUF_H
#include <stddef.h>

#include "base/arena.h"

struct strbuf {
	struct arena *arena;
	char *text;
	size_t length, room;
};

struct strbuf strbuf_in(struct arena *);
void strbuf_add(struct strbuf *, const char *text);
void strbuf_add_bytes(struct strbuf *, const void *bytes, size_t length);
void strbuf_add_char(struct strbuf *, char);
/* The text as XML holds it in an attribute or between tags, line ends and all. */
void strbuf_add_escaped(struct strbuf *, const char *text);
void strbuf_printf(struct strbuf *, const char *format, ...) CHECK_PRINTF(2, 3);

/* Finished bytes of an output, borrowed from an arena. */
struct bytes {
	const void *data;
	size_t length;
};
struct bytes strbuf_bytes(const struct strbuf *);

#endif

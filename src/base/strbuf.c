#include "base/strbuf.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

struct strbuf strbuf_in(struct arena *arena)
{
	struct strbuf buf = {.arena = arena, .room = 64};
	buf.text = arena_alloc(arena, buf.room);
	return buf;
}

static void reserve(struct strbuf *buf, size_t more)
{
	if (buf->room - buf->length > more)
		return;
	size_t room = buf->room * 2;
	while (room - buf->length <= more)
		room *= 2;
	char *text = arena_alloc(buf->arena, room);
	memcpy(text, buf->text, buf->length);
	buf->text = text;
	buf->room = room;
}

void strbuf_add_bytes(struct strbuf *buf, const void *bytes, size_t length)
{
	if (!length)
		return;
	reserve(buf, length);
	memcpy(buf->text + buf->length, bytes, length);
	buf->length += length;
	buf->text[buf->length] = '\0';
}

void strbuf_add(struct strbuf *buf, const char *text)
{
	strbuf_add_bytes(buf, text, strlen(text));
}

void strbuf_add_char(struct strbuf *buf, char c)
{
	strbuf_add_bytes(buf, &c, 1);
}

void strbuf_add_escaped(struct strbuf *buf, const char *text)
{
	static const char *const written[] = {
		['&'] = "&amp;", ['<'] = "&lt;",   ['>'] = "&gt;",   ['"'] = "&quot;",
		['\t'] = "&#9;", ['\n'] = "&#10;", ['\r'] = "&#13;",
	};
	for (; *text; text++) {
		unsigned char c = (unsigned char)*text;
		if (c < sizeof written / sizeof *written && written[c])
			strbuf_add(buf, written[c]);
		else
			strbuf_add_char(buf, *text);
	}
}

void strbuf_printf(struct strbuf *buf, const char *format, ...)
{
	va_list args, again;
	va_start(args, format);
	va_copy(again, args);
	int length = vsnprintf(NULL, 0, format, args);
	va_end(args);
	if (length > 0) {
		reserve(buf, (size_t)length);
		vsnprintf(buf->text + buf->length, (size_t)length + 1, format, again);
		buf->length += (size_t)length;
	}
	va_end(again);
}

struct bytes strbuf_bytes(const struct strbuf *buf)
{
	return (struct bytes){.data = buf->text, .length = buf->length};
}

/* Breaking a text into lines of a width. */
#include <string.h>

#include "base/array.h"
#include "text/measure.h"

struct wrap {
	struct text_engine *engine;
	struct arena *arena;
	enum text_weight weight;
	double cap, width;
	ARRAY_OF(const char *) lines;
	struct strbuf line;
};

static void end_line(struct wrap *w)
{
	*array_push(w->arena, &w->lines) = arena_strndup(w->arena, w->line.text, w->line.length);
	w->line = strbuf_in(w->arena);
}

static bool fits(const struct wrap *w, const char *text)
{
	return text_width(w->engine, w->weight, w->cap, text) <= w->width;
}

static size_t sign_length(const char *text)
{
	size_t length = 1;
	while (((unsigned char)text[length] & 0xc0) == 0x80)
		length++;
	return length;
}

/* Begins a line with the word; what is too wide for a whole line goes on in the next ones. */
static void begin_line(struct wrap *w, const char *word)
{
	while (!fits(w, word) && word[sign_length(word)]) {
		size_t length = 0, next = sign_length(word);
		do {
			length = next;
			next += sign_length(word + next);
		} while (word[next] && fits(w, arena_strndup(w->arena, word, next)));
		strbuf_add(&w->line, arena_strndup(w->arena, word, length));
		end_line(w);
		word += length;
	}
	strbuf_add(&w->line, word);
}

static void add_word(struct wrap *w, const char *word)
{
	if (w->line.length == 0) {
		begin_line(w, word);
		return;
	}
	if (!fits(w, arena_printf(w->arena, "%s %s", w->line.text, word))) {
		end_line(w);
		begin_line(w, word);
		return;
	}
	strbuf_add_char(&w->line, ' ');
	strbuf_add(&w->line, word);
}

struct text_lines text_wrap(struct text_engine *engine, struct arena *arena,
                            enum text_weight weight, double cap, double width, const char *text)
{
	struct wrap w = {engine, arena, weight, cap, width, {0}, strbuf_in(arena)};
	while (*text) {
		size_t blanks = strspn(text, " \t\r");
		text += blanks;
		if (*text == '\n') {
			end_line(&w);
			text++;
			continue;
		}
		size_t length = strcspn(text, " \t\r\n");
		if (length > 0)
			add_word(&w, arena_strndup(arena, text, length));
		text += length;
	}
	if (w.line.length > 0)
		end_line(&w);
	return (struct text_lines){w.lines.items, w.lines.count};
}

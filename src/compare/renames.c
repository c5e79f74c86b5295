#include "compare/renames.h"

#include <string.h>

#include "base/strbuf.h"

void renames_add(struct arena *arena, struct renames *renames, const char *base,
                 const char *revised)
{
	*array_push(arena, &renames->list) = (struct rename){base, revised};
}

bool renames_any(const struct renames *renames)
{
	for (size_t i = 0; i < renames->list.count; i++)
		if (strcmp(renames->list.items[i].base, renames->list.items[i].revised) != 0)
			return true;
	return false;
}

/* The longest id that a word of `length` bytes is, or is derived from; NULL: none. */
static const struct rename *origin_of(const struct renames *renames, const char *word,
                                      size_t length)
{
	const struct rename *found = NULL;
	size_t longest = 0;
	for (size_t i = 0; i < renames->list.count; i++) {
		const struct rename *rename = &renames->list.items[i];
		size_t size = strlen(rename->base);
		bool is_origin = size <= length && memcmp(word, rename->base, size) == 0 &&
		                 (size == length || word[size] == '.');
		if (is_origin && size > longest) {
			found = rename;
			longest = size;
		}
	}
	return found;
}

const char *renames_revised(struct arena *arena, const struct renames *renames, const char *base)
{
	struct strbuf out = strbuf_in(arena);
	if (!renames_any(renames))
		return base;
	for (const char *at = base; *at != '\0';) {
		size_t length = strcspn(at, " ");
		const struct rename *rename = origin_of(renames, at, length);
		size_t done = rename != NULL ? strlen(rename->base) : 0;
		if (rename != NULL)
			strbuf_add(&out, rename->revised);
		strbuf_add_bytes(&out, at + done, length - done);
		at += length;
		for (; *at == ' '; at++)
			strbuf_add_char(&out, ' ');
	}
	return out.length > 0 ? out.text : "";
}

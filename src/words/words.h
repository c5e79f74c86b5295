/* words.h - every text a reader sees, by key, in one language.
 * A table is a file words/LANGUAGE.words: `key = text`, one a line; a line that is set in
 * goes on with the text above it. In a text, {name} is filled with the argument of that
 * name, {name|one|many} with `one` where the argument is "1", else `many`; {{ is a brace.
 * Owns: arena. Fails: unknown language: an error in the list; a key that is not there
 * comes out as itself, and a test looks for those. */
#ifndef WORDS_WORDS_H
#define WORDS_WORDS_H
#include <stdbool.h>

#include "base/diag.h"

struct words;

struct word_arg {
	const char *name, *text;
};

/* The table shipped for `language` ("en"); NULL with an error in the list: none. */
const struct words *words_load(struct arena *, const char *language, struct diag_list *);
/* A table from its text; every fault goes to the list, and NULL comes back. */
const struct words *words_parse(struct arena *, const char *language, const char *text,
                                struct diag_list *);
/* The same table with every text in ⟦brackets⟧ and longer by two fifths: a label without
 * them is no word of it, and one that fits here fits in any language. */
const struct words *words_pseudo(struct arena *, const struct words *);

const char *words_language(const struct words *);
/* The text of a key, unfilled; the key itself where there is none. */
const char *words_find(const struct words *, const char *key);
bool words_has(const struct words *, const char *key);
/* Key at `index`, in the order of the alphabet; NULL past the end. */
const char *words_key_at(const struct words *, size_t index);
/* The text of a key, filled. An argument that is not given leaves its {name} standing. */
const char *words_format(struct arena *, const struct words *, const char *key,
                         const struct word_arg *args, size_t arg_count);
/* Shorthand for a literal list: words_fill(arena, words, "crack-wide", {"crack", id}). */
#define words_fill(arena, words, key, ...)                                            \
	words_format((arena), (words), (key), (const struct word_arg[]){__VA_ARGS__}, \
	             sizeof((const struct word_arg[]){__VA_ARGS__}) / sizeof(struct word_arg))

#endif

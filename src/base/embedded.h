/* embedded.h - the files that travel in the program: rules, words, styles and the font.
 * Names are "rules/us.rules", "words/en.words", "styles/paper.style",
 * "font/regular.ttf", "font/bold.ttf".
 * Owns: nothing; the bytes are constants of the program. A zero byte follows the last
 * one and is not counted, so a text file may be read as a string. */
#ifndef BASE_EMBEDDED_H
#define BASE_EMBEDDED_H
#include <stddef.h>

struct embedded {
	const char *name;
	const unsigned char *data;
	size_t length;
};

/* NULL: no such file. */
const struct embedded *embedded_find(const char *name);
/* Walks all files; NULL: `index` is past the last one. */
const struct embedded *embedded_at(size_t index);

#endif

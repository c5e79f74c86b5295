/* style_value.h - one value of a style file, word by word.
 * Owns: words point into the line they were split from. */
#ifndef DRAWING_STYLE_VALUE_H
#define DRAWING_STYLE_VALUE_H
#include <stdbool.h>

enum { STYLE_WORDS = 24 };

struct style_value {
	char *words[STYLE_WORDS];
	int count, next;
};

/* Cuts comment and blanks off. `#` opens a comment at the start of a line, or between
 * blanks; `#1f4e8c` is a colour. */
char *style_trimmed(char *line);
/* False: more words than a value can have. */
bool style_value_split(struct style_value *, char *text);
/* The next word, used up; NULL at the end. */
const char *style_value_next(struct style_value *);
/* Uses the next word up if it is this one. */
bool style_value_take(struct style_value *, const char *word);
/* A decimal with at most three places, in thousandths; no sign, no exponent. */
bool style_thousandths(const char *text, int *out);

#endif

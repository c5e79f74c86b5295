/* diag.h - what is wrong with the input, all of it, in the order of its lines.
 * Owns: messages live in the list's arena. Printed as `FILE:LINE: error: text`. */
#ifndef BASE_DIAG_H
#define BASE_DIAG_H
#include <stdio.h>

#include "base/arena.h"
#include "base/array.h"
#include "base/check.h"

struct diag {
	int line; /* 1 is the first; 0: the file as a whole, or the command line */
	const char *text;
};

struct diag_list {
	struct arena *arena;
	const char *file; /* as it is to be printed */
	ARRAY_OF(struct diag) diags;
};

struct diag_list diag_list_in(struct arena *, const char *file);
/* One error: what is wrong, and what was expected. The same text twice on one line
 * is kept once. */
void diag_error(struct diag_list *, int line, const char *format, ...) CHECK_PRINTF(3, 4);
/* Prints by line, then in the order of reporting. */
void diag_print(const struct diag_list *, FILE *);

#endif

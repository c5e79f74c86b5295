/* lines.h - reads the data tables that travel in the program line by line.
 * A `#` at the start of a line is a comment; blank lines are passed over; spaces and tabs
 * at both ends are cut off, but a line that began with one says so.
 * Owns: texts live in the arena; the source text is borrowed. */
#ifndef RULES_LINES_H
#define RULES_LINES_H
#include <stdbool.h>

#include "base/diag.h"

struct lines {
	struct arena *arena;
	const char *rest; /* not yet read */
	int number;       /* of the line read last; 1 is the first */
	bool is_set_in;   /* it began with a blank */
	char *text;       /* it, cut; may be written to */
};

struct lines lines_of(struct arena *, const char *text);
/* False: no line is left. */
bool lines_next(struct lines *);
/* Cuts the first word off `*text`, which moves to the next; "" where none is left. */
char *lines_word(char **text);

/* Passes the faults of a table on to the list of a run: the table's file and line stand in
 * their text, for the list's own file is the plan. */
void lines_pass_faults(const struct diag_list *table, struct diag_list *run);

#endif

/* tables.h - what tests of findings, count and record start from: an arena, the rules of the
 * us table for plans in inches, the English words; and the row of a count that they look for.
 * Owns: the arena lives from the group's start to its end. */
#ifndef SUPPORT_TABLES_H
#define SUPPORT_TABLES_H
#include "count/count.h"

struct tables {
	struct arena *arena;
	const struct rules *us;
	const struct words *en;
};
extern struct tables tables;

/* For cmocka_run_group_tests. */
int tables_start(void **state);
int tables_end(void **state);

/* NULL: there is none. */
const struct count_row *tables_row(const struct count *, const char *what, const char *where);

#endif

/* comparison_write.h - a comparison as text to read on a screen, and as a table for
 * spreadsheets.
 * Owns: arena. */
#ifndef COMPARE_COMPARISON_WRITE_H
#define COMPARE_COMPARISON_WRITE_H
#include "compare/comparison.h"

struct bytes comparison_text(struct arena *, const struct comparison *, const struct words *);
/* One row a change, edit, quantity, sum of money, number of days and finding of each line, then
 * the same of both floors (`total`). Names are the same in every language. */
struct bytes comparison_csv(struct arena *, const struct comparison *);

#endif

/* compared.h - two floors written as text, compared.
 * Owns: the arena given. A text with an error fails the test. */
#ifndef SUPPORT_COMPARED_H
#define SUPPORT_COMPARED_H
#include "compare/comparison.h"

const struct words *compared_words(struct arena *);
const struct floor_state *compared_state(struct arena *, const char *text);
const struct comparison *compared(struct arena *, const char *base, const char *revised);
/* A hall of 9 by 4 m on one slab, 200 mm tile, sheet membrane; `more` stands in
 * it beside. */
const char *compared_hall(struct arena *, const char *more);
/* The only change of the comparison; fails where there are others. */
const struct change *compared_only_change(const struct comparison *);

#endif

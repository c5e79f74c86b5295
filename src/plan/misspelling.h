/* misspelling.h - whether one name is another with a slip of the hand.
 * By value; nothing is owned. */
#ifndef PLAN_MISSPELLING_H
#define PLAN_MISSPELLING_H
#include <stdbool.h>

/* At most two letters more, fewer, other or swapped, and fewer than half of the word. */
bool is_misspelling(const char *written, const char *meant);

#endif

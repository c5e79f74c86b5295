/* screen.h - the page of a set for the screen: all its sheets in one file that needs nothing
 * else, with the questions that are open and what is known of each element.
 * It reads without its program too: then all sheets stand one under the other.
 * Owns: bytes live in the draft's arena. Fails: never; the set is drawn already.
 * Invariant: HTML that is well-formed XML, without an address outside itself. */
#ifndef SCREEN_SCREEN_H
#define SCREEN_SCREEN_H
#include "plan/markup.h"
#include "sheets/sheet_set.h"

/* `plan`: the root of the plan's text. */
struct bytes screen_write(const struct draft *, const struct sheet_set *,
                          const struct markup *plan);

#endif

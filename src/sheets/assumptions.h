/* assumptions.h - what was taken where the description is silent, in words: one item for all
 * elements of a kind that left the same unsaid. */
#ifndef SHEETS_ASSUMPTIONS_H
#define SHEETS_ASSUMPTIONS_H
#include "sheets/notes.h"

void assumptions_add(struct notes *);

#endif

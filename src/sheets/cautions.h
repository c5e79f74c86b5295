/* cautions.h - the cautions that apply to the floor; they belong on every sheet of work.
 * Source: contract "the job", cautions that belong on the sheets. */
#ifndef SHEETS_CAUTIONS_H
#define SHEETS_CAUTIONS_H
#include "sheets/notes.h"

void cautions_add(struct notes *);
/* What a hand grinder takes: where there is room for it. */
void cautions_add_air(struct notes *);

#endif

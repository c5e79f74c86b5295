/* cautions.h - the cautions that apply to the floor; they belong on every sheet of work.
 * Source: contract "the job", cautions that belong on the sheets. */
#ifndef SHEETS_CAUTIONS_H
#define SHEETS_CAUTIONS_H
#include "sheets/sheet.h"

void cautions_draw(struct sheet *);

#endif

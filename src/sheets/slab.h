/* slab.h - the slab as it was found: cracks, slab joints, where each lies, what is open. */
#ifndef SHEETS_SLAB_H
#define SHEETS_SLAB_H
#include "sheets/sheet.h"

enum sheet_fit slab_draw(struct sheet *);

#endif

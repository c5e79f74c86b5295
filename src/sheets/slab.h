/* slab.h - the slab as it was found: cracks, slab joints, where each lies, what is open. */
#ifndef SHEETS_SLAB_H
#define SHEETS_SLAB_H
#include "sheets/sheet.h"

/* False: the floor does not fit the paper at the scale asked for, or at any. */
bool slab_draw(struct sheet *);

#endif

/* slab_located.h - where cracks, joints and fixtures of a room lie, as a list: of a room with
 * many of them, where dimensions from wall to wall would hide the slab.
 * Units: floor mm in plan axes. Owns: the draft's arena. */
#ifndef SHEETS_SLAB_LOCATED_H
#define SHEETS_SLAB_LOCATED_H
#include "sheets/notes.h"

/* True where the room is listed, and its drawing has no dimensions inside. */
bool slab_located_is_listed(const struct draft *, const struct site_room *);
/* What this sheet names of each listed room, measured from two of its walls. */
void slab_located_list(struct notes *);

#endif

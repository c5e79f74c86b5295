/* materials.h - what the crew needs to know of tile, joint, membrane and sealant. */
#ifndef SHEETS_MATERIALS_H
#define SHEETS_MATERIALS_H
#include "sheets/lay_view.h"
#include "sheets/notes.h"

/* Of all the lay, or of what of it is named in a view. */
void materials_add(struct notes *, const struct placed_lay *, const struct lay_view *seen);
/* Hours the membrane must cure; NULL: the plan does not say. */
const char *materials_cure(const struct draft *, const struct placed_lay *);
/* How level edges of neighbouring tile are to be: for the whole floor, not for each room. */
void materials_lippage(struct notes *, const struct placed_lay *);

#endif

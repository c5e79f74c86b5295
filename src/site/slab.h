/* slab.h - slabs that are described with the ground they cover, and which slab is where.
 * Units: mm. Owns: everything lives in the build's arena.
 * Fails: a region that meets itself, or lies over that of another slab. */
#ifndef SITE_SLAB_H
#define SITE_SLAB_H
#include "site/build.h"

/* Before the rooms are divided. */
void slab_build_all(struct build *);
/* After the room's outline and doorways: what of it is on which slab. */
void slab_divide_room(struct build *, struct site_room *);

#endif

/* reading.h - readings of the plan: in which room and on which slab each was taken.
 * Units: mm. Owns: everything lives in the build's arena.
 * Fails: a point outside its room, or outside every room. */
#ifndef SITE_READING_H
#define SITE_READING_H
#include "site/build.h"

/* After the rooms are divided among the slabs. */
void reading_build_all(struct build *);

#endif

/* crack.h - cracks and slab joints as lines on the ground.
 * Units: mm. Owns: everything lives in the build's arena.
 * Fails: a crack with a point outside its room by more than the reach; a line without
 * length.
 * Ends land on what they nearly reach: slab joints on borders, then on each other; cracks
 * on borders, then on slab joints, then on each other. Always by the nearest point. */
#ifndef SITE_CRACK_H
#define SITE_CRACK_H
#include "site/build.h"

/* After all rooms. */
void crack_build_all(struct build *);

#endif

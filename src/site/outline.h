/* outline.h - the walls of a room, from corners or from a tape run.
 * Units: mm. Owns: points and edges live in the build's arena.
 * Fails: walls that do not close, or meet each other where they should not, are errors.
 * The edges of an arc follow each other and share their wall. */
#ifndef SITE_OUTLINE_H
#define SITE_OUTLINE_H
#include "site/build.h"

/* Fills outline, edges and closing error of `room`; false after an error, here or in the
 * reader, and then the
 * room has no edges. */
bool outline_build(struct build *, struct site_room *room);
/* The wall that edge `edge` is a part of. */
const struct plan_wall *outline_wall(const struct site_room *, size_t edge);
/* From corner to corner of the wall that `edge` is a part of: of an arc, its chord. */
struct site_edge outline_chord(const struct site_room *, size_t edge);

#endif

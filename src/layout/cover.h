/* cover.h - the membrane over a lay: which one, where, and whether all of it.
 * Units: mm, mm2 in the lay's own axes. Owns: arena. Source: contract E-C4. */
#ifndef LAYOUT_COVER_H
#define LAYOUT_COVER_H
#include "layout/cracks.h"

/* The first membrane over a room of the lay; NULL: none. */
const struct plan_membrane *cover_membrane(const struct field *);
/* Ground under it, to the walls, less the bands of carried joints and the holds. */
struct region cover_ground(struct arena *, const struct tiling *, const struct cracks *,
                           const struct plan_membrane *);
/* Mats and mortar beds. */
bool cover_is_always_full(const struct plan_membrane *);
/* By its nature, or where the owner has said so. */
bool cover_is_full(const struct plan *, const struct plan_membrane *);
/* Full coverage that nobody has approved or declined yet. */
bool cover_is_wanted(const struct plan *, const struct plan_membrane *);

#endif

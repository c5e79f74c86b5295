/* origin.h - what ids are derived from: the id of an element of the plan, and with it the id of
 * the lay in every lay but the first one that the element lies in. So no id comes twice, and
 * none changes with a lay that the element does not lie in.
 * Owns: arena. */
#ifndef LAYOUT_ORIGIN_H
#define LAYOUT_ORIGIN_H
#include "layout/field.h"

const char *origin_of_crack(struct arena *, const struct field *, const struct site_crack *);
const char *origin_of_slab_joint(struct arena *, const struct field *,
                                 const struct site_slab_joint *);
/* `of`: the wall, doorway or obstacle that a border of the field runs along. */
const char *origin_of_border(struct arena *, const struct field *, const char *of);

#endif

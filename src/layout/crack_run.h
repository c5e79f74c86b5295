/* crack_run.h - the parts of a crack's line that lie on a lay's ground.
 * Units: mm in the lay's own axes. Owns: arena. */
#ifndef LAYOUT_CRACK_RUN_H
#define LAYOUT_CRACK_RUN_H
#include "layout/field.h"

/* On the ground of the crack's room, or of all rooms of the lay. */
struct line *crack_runs(struct arena *, const struct field *, const struct site_crack *,
                        size_t *out_count);

#endif

/* field_limits.h - what lies over and under a lay says how far its tile runs without a joint, and
 * how wide the joints between panels and in doorways are.
 * Units: mm. Nothing fails. Source: contract E-M1 and "Movement joints"; R-M01 to R-M12, R-E01. */
#ifndef LAYOUT_FIELD_LIMITS_H
#define LAYOUT_FIELD_LIMITS_H
#include "layout/field.h"

/* The strictest limit of all rooms and slabs under the lay. */
double field_run_limit(const struct field *, const struct rules *);
/* The table's least width, more where a slab states a wide range of temperature, and at least what
 * a run of tile at its limit takes at the class of the sealant. */
double field_joint_width(const struct field *, const struct rules *);

#endif

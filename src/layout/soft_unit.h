/* soft_unit.h - the stretches of a group of cracks that hang together in one panel, with the
 * corridor round them: what soft joints surround.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_UNIT_H
#define LAYOUT_SOFT_UNIT_H
#include "layout/soft_end.h"
#include "layout/soft_joint.h"

struct soft_unit {
	size_t group, panel;
	const struct crack_part **parts; /* cut to the panel: line, way, ends, tiles */
	size_t part_count;
	struct region crossed; /* of the parts: B */
	struct soft_outline outline;
	struct corridor corridor;
	struct soft_end *ends; /* in order round B */
	size_t end_count;
};

/* Units in the order of their first parts. */
struct soft_unit *soft_units(struct arena *, const struct soft_setting *, size_t group,
                             struct soft_footing, size_t *out_count);
/* Two ends of one stretch of crack: its sides are its left and its right. */
bool soft_unit_is_plain(const struct soft_unit *);
/* The joint that runs beside a plain unit within one tile of all of it; NULL: none. */
const char *soft_unit_joint_beside(struct arena *, const struct soft_setting *,
                                   const struct soft_unit *, bool left);

#endif

/* soft_setting.h - what is the same for the soft joints of all groups of a lay, and what lies
 * at the border of the ground they run on.
 * Units: mm in the lay's own axes. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_SETTING_H
#define LAYOUT_SOFT_SETTING_H
#include "layout/crack_part.h"
#include "layout/field_joint.h"
#include "layout/perimeter.h"

struct soft_setting {
	const struct tiling *tiling;
	const struct cracks *cracks;
	const struct region *held;
	const struct perimeter_run *perimeter;
	size_t perimeter_count;
	const struct field_joint *field_joints;
	size_t field_joint_count;
	struct strip_reach reach;
	double beyond; /* how far a strip reaches past the far edge of its soft joints */
	double turn_penalty;
	bool one_side;     /* of an unbranched crack, the cheaper */
	const char *strip; /* id of the strip: what an end on no joint meets */
};

/* Id of the field, carried or perimeter joint at a point of the border; NULL: none is there. */
const char *soft_setting_joint_at(const struct soft_setting *, struct point);
/* Id of what lies at a point of the border: hold, field joint, wall, obstacle, slab joint. */
const char *soft_setting_border_at(const struct soft_setting *, struct point);

#endif

/* field_joint.h - the stretches of field joints that are built: the lines across a part, less
 * what is held. Inside a hold the line stops at the hold's edge; the tile beyond it stays
 * where the whole line puts it, so that an answer that lifts the hold moves nothing.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract, "Cracks", E-M2. */
#ifndef LAYOUT_FIELD_JOINT_H
#define LAYOUT_FIELD_JOINT_H
#include "layout/cracks.h"

struct field_joint {
	const char *id; /* of the line; .part.2 and on where it is interrupted */
	const struct movement_line *of;
	struct line line;
};

/* In the order of the movement's lines, each from its lesser end. */
struct field_joint *field_joints(struct arena *, const struct tiling *, const struct cracks *,
                                 size_t *out_count);
/* Id of the joint whose width holds `p`; NULL: none. */
const char *field_joint_at(const struct field_joint *, size_t count, struct point p);

#endif

/* joints.h - every joint of the finished floor that is not grouted: soft, carried, perimeter.
 * Units: mm in the lay's own axes. Owns: arena. Source: docs/sources.md#movement-joints. */
#ifndef LAYOUT_JOINTS_H
#define LAYOUT_JOINTS_H
#include "layout/strips.h"

enum joint_kind { JOINT_SOFT, JOINT_MOVEMENT, JOINT_CARRIED, JOINT_PERIMETER };
enum joint_back { JOINT_BACK_NONE, JOINT_BACK_ROD, JOINT_BACK_TAPE };

struct joint {
	const char *id;
	enum joint_kind kind;
	const char *of;   /* crack, slab joint, wall, doorway or obstacle */
	const char *side; /* of a soft joint; else "" */
	bool on_joint;    /* lies on tile joints; else cut through tile */
	bool is_open;     /* perimeter under a covering base: left open and clean */
	double width, depth;
	enum joint_back back;
	double length, turns, cost;
	const char *ends;   /* ids by blanks */
	const char *why;    /* name of the rule; perimeter-joint, field-joint */
	const char *serves; /* ids of the sides of cracks that use it, by blanks */
	struct line line;   /* of a perimeter joint: the field's edge, field to the left */
	bool is_closed;     /* the line is a ring, round an obstacle or cracks without an end */
};

/* Soft joints first, then carried, field, perimeter. A side that another joint serves has no
 * joint of its own. */
struct joints {
	struct joint *joints;
	size_t joint_count;
};

const struct joints *joints_place(struct arena *, const struct tiling *, const struct cracks *,
                                  const struct strips *, const struct rules *);

#endif

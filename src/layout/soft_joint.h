/* soft_joint.h - the joints that take up what a strip lets go: along tile joints, on the strip,
 * beside the crossed tile, by the least-cost way.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_JOINT_H
#define LAYOUT_SOFT_JOINT_H
#include "layout/soft_setting.h"

/* A joint that lies on the tile's joints: addresses first, coordinates derived. */
struct soft_joint {
	const char *id; /* CRACK.left, CRACK.right, CRACK.on, CRACK.side.3 …; CRACK.left.2 in the
	                 * next panel */
	size_t group;
	const char *crack;            /* id of the crack; of a branched group the first */
	const char *side;             /* left, right, on, or a number for branched groups */
	struct network_place *places; /* edges walked, in order; empty where `uses` is set */
	bool *reversed;
	size_t place_count;
	size_t panel;
	struct line line; /* with the first and last edge cut at the field's border; a closed one
	                       * ends where it begins */
	double length, turns; /* turns in quarter turns */
	double cost;          /* mm: length, and the penalty of the turns */
	const char *uses; /* ids of the carried, field or perimeter joints that serve this side, by
	                   * blanks, where tile lies against them; then it is no joint itself */
	const char
		*ends; /* ids of what its two ends meet, by a blank: "south J1"; "": it is closed */
	long settled;  /* directed edges settled by the search */
};

struct soft_joint_list {
	ARRAY_OF(struct soft_joint) softs;
};

/* The strip as it would be cut: its parts, and the ground that their legs cover. */
struct soft_footing {
	const struct crack_part *parts;
	size_t part_count;
	const struct region *strip;
};

/* Gives the strip as it would be if it were wider. */
struct soft_widening {
	struct soft_footing (*widen)(const void *context);
	const void *context;
};

/* Adds the soft joints of a group. A side that finds no way on the strip, where each joint that
 * meets a border leaves the strip before it meets another, is looked for on the wider one. */
void soft_joints_of_group(struct arena *, const struct soft_setting *, size_t group,
                          struct soft_footing, struct soft_widening, struct soft_joint_list *);

#endif

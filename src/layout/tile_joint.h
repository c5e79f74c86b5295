/* tile_joint.h - where an edge of the joint network lies between two tiles. Of a face that a wall
 * or a column cuts there may be several pieces, or none beside some of the edge: a cell that
 * holds tile does not say so.
 * Units: mm in the lay's own axes; stretches are shares of the edge. Owns: arena. */
#ifndef LAYOUT_TILE_JOINT_H
#define LAYOUT_TILE_JOINT_H
#include "geometry/clip.h"
#include "layout/tiling.h"

struct tile_joint {
	struct stretch on; /* 0 or 1 where it goes up to a corner of the network */
	struct tile_ref left, right;
};

/* In the order of the edge, walked from `from` to `to`. */
struct tile_joint *tile_joints_at(struct arena *, const struct tiling *, size_t panel,
                                  struct network_place, size_t *out_count);

#endif

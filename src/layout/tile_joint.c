#include "layout/tile_joint.h"

#include "base/array.h"
#include "geometry/tolerance.h"

/* A tile beside a stretch of the edge. */
struct tile_side {
	struct stretch on;
	struct tile_ref tile;
};

struct side_list {
	ARRAY_OF(struct tile_side) sides;
};

/* A tile's own side lies half a joint beside the edge: what of it the piece has, looked for a hair
 * inside. At a corner two joints meet, there it stops as short of the edge's end. */
static void add_piece(struct arena *arena, const struct tiling *tiling, struct segment edge,
                      bool left, struct tile_ref tile, struct side_list *list)
{
	struct point along = point_unit(point_sub(edge.to, edge.from));
	double joint = tiling->module->joint, corner = joint / segment_length(edge);
	double beside = joint / 2 + 2 * TOLERANCE_WHOLE;
	struct point by = point_scale(point_left(along), left ? beside : -beside);
	struct segment own = {point_add(edge.from, by), point_add(edge.to, by)};
	struct polygon shape = {tile.piece->ring, tile.piece->holes, tile.piece->hole_count};
	size_t count;
	const struct stretch *on = clip_segment(arena, own, &(struct region){&shape, 1}, &count);
	for (size_t k = 0; k < count; k++) {
		struct stretch side = {on[k].from <= corner ? 0 : on[k].from,
		                       on[k].to >= 1 - corner ? 1 : on[k].to};
		*array_push(arena, &list->sides) = (struct tile_side){side, tile};
	}
}

static struct side_list sides_of(struct arena *arena, const struct tiling *tiling, size_t index,
                                 struct network_place place, struct segment edge, bool left)
{
	const struct panel *panel = &tiling->panels[index];
	struct address at = network_beside(tiling->network, place, left);
	struct side_list list = {0};
	size_t count;
	if (panel_has_whole(panel, at)) {
		*array_push(arena, &list.sides) = (struct tile_side){{0, 1}, {index, at, NULL}};
		return list;
	}
	const struct tile_piece *pieces = panel_pieces_at(panel, at, &count);
	for (size_t k = 0; k < count; k++)
		add_piece(arena, tiling, edge, left, (struct tile_ref){index, at, &pieces[k]},
		          &list);
	return list;
}

struct tile_joint *tile_joints_at(struct arena *arena, const struct tiling *tiling, size_t panel,
                                  struct network_place place, size_t *out_count)
{
	struct segment edge = network_segment(tiling->network, tiling->module, place,
	                                      tiling->panels[panel].position);
	struct side_list left = sides_of(arena, tiling, panel, place, edge, true);
	struct side_list right = sides_of(arena, tiling, panel, place, edge, false);
	double least = TOLERANCE_WHOLE / segment_length(edge);
	ARRAY_OF(struct tile_joint) joints = {0};
	for (size_t i = 0; i < left.sides.count; i++)
		for (size_t k = 0; k < right.sides.count; k++) {
			struct tile_side l = left.sides.items[i], r = right.sides.items[k];
			struct stretch on = {fmax(l.on.from, r.on.from), fmin(l.on.to, r.on.to)};
			if (on.to - on.from <= least)
				continue;
			size_t at = joints.count;
			array_push(arena, &joints);
			for (; at > 0 && joints.items[at - 1].on.from > on.from; at--)
				joints.items[at] = joints.items[at - 1];
			joints.items[at] = (struct tile_joint){on, l.tile, r.tile};
		}
	*out_count = joints.count;
	return joints.items;
}

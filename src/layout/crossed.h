/* crossed.h - the tile a crack passes under, and the ground of its cells.
 * A tile is crossed where its panel holds some of the crack's line and the tile comes within
 * reach of the line. Units: mm in the lay's own axes. Owns: arena.
 * Source: contract E-C1. */
#ifndef LAYOUT_CROSSED_H
#define LAYOUT_CROSSED_H
#include "layout/tiling.h"

/* A stretch of line inside one panel. */
struct panel_line {
	size_t panel;
	struct line line;
};

/* The parts of `line` inside panels, panel by panel, in the order of the line. */
struct panel_line *panel_lines(struct arena *, const struct tiling *, struct line,
                               size_t *out_count);
/* Every tile crossed by the line, by panel, then in the order of tiling_near. */
struct tile_ref *crossed_by_line(struct arena *, const struct tiling *, struct line, double reach,
                                 size_t *out_count);
/* Orders tiles by panel, face, j, i, piece and takes out doubles; returns how many are left. */
size_t tile_refs_unique(struct tile_ref *, size_t count);
/* True where a tile is among others so ordered. */
bool tile_refs_hold(const struct tile_ref *, size_t count, struct tile_ref);
/* True where a cell of the one lot shares a border, a corner or ground with one of the other,
 * in the same panel. */
bool crossed_touch(struct arena *, const struct tiling *, const struct tile_ref *a, size_t a_count,
                   const struct tile_ref *b, size_t b_count);
/* Union of the cells. */
struct region crossed_cells(struct arena *, const struct tiling *, const struct tile_ref *,
                            size_t count);
/* The same, holes filled. */
struct region crossed_ground(struct arena *, const struct tiling *, const struct tile_ref *,
                             size_t count);
/* The same on some ground, a hair wider: in one where they meet in a corner. */
struct region crossed_on(struct arena *, const struct tiling *, const struct tile_ref *,
                         size_t count, const struct region *ground);
/* Of its polygons the one that most of the tiles lie in; NULL: none holds any. */
const struct polygon *crossed_home(struct arena *, const struct tiling *, const struct region *on,
                                   const struct tile_ref *, size_t count);
/* True where both lots, of one panel, lie in one polygon on the ground. */
bool crossed_hang_together(struct arena *, const struct tiling *, const struct tile_ref *a,
                           size_t a_count, const struct tile_ref *b, size_t b_count,
                           const struct region *ground);

#endif

/* tiling.h - the tile of one lay: panels, runs of whole tiles, cut pieces.
 * Units: mm in the lay's own axes. Owns: arena. Nothing is stored per whole tile: a run is
 * an interval, its count a subtraction.
 * Invariants: runs ordered by (face, j, first), pieces by (face, j, i, place). */
#ifndef LAYOUT_TILING_H
#define LAYOUT_TILING_H
#include "layout/field.h"
#include "layout/movement.h"
#include "pattern/network.h"

/* Whole tiles of one face in one lattice row, from i = first to last. */
struct tile_run {
	int face, j, first, last;
};

/* A connected part of (face and panel), less than the whole face. */
struct tile_piece {
	struct address at;
	struct ring ring; /* outer border; holes (a pipe inside one tile) are in `holes` */
	struct ring *holes;
	size_t hole_count;
	double area_mm2;
	struct box box; /* its extents along the lay's axes */
};

struct panel {
	const char *id;
	size_t part; /* index into field->region.polygons */
	struct polygon ground;
	struct point position; /* where the period's faces lie */
	double area_mm2;
	double long_side, short_side; /* of its extents along the lattice axes */
	struct tile_run *runs;
	size_t run_count;
	struct tile_piece *pieces;
	size_t piece_count;
	long whole_count;
	double lost_mm2; /* dust, and remainders narrower than gap-max less gap */
	double tile_mm2; /* all faces and pieces */
	struct {
		long rows, edges, faces; /* edges of all rows; faces that they come near */
	} work;                          /* what filling it has looked at */
};

struct tiling {
	const struct field *field;
	const struct module *module;
	const struct movement *movement;
	const struct network *network;
	struct panel *panels;
	size_t panel_count;
};

const struct tiling *tiling_place(struct arena *, const struct field *, const struct module *,
                                  const struct movement *);

/* True where the face at the address is tile in this panel, whole or in pieces. */
bool panel_has_tile(const struct panel *, struct address);
/* True where it is a whole tile. */
bool panel_has_whole(const struct panel *, struct address);
/* Its pieces, one behind the other; none where it is whole. */
const struct tile_piece *panel_pieces_at(const struct panel *, struct address, size_t *out_count);

/* One tile of a panel: a whole face, or a piece. */
struct tile_ref {
	size_t panel;
	struct address at;
	const struct tile_piece *piece; /* NULL: the whole face */
};

/* The outline of a tile: its face, or its piece. */
struct ring tile_ref_ring(struct arena *, const struct tiling *, struct tile_ref);
/* The cell around a tile's face (the whole cell, also for a piece). */
struct ring tile_ref_cell(struct arena *, const struct tiling *, struct tile_ref);
/* Every tile that comes within `distance` of `line` (0: touches it), ordered by panel and
 * address. Cost grows with the line, not with the floor. */
struct tile_ref *tiling_near(struct arena *, const struct tiling *, struct line line,
                             double distance, size_t *out_count);

#endif

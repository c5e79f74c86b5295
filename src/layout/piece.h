/* piece.h - one face against its panel: whole, cut into pieces, or no tile.
 * Units: mm, mm2 in the lay's own axes. Owns: pieces live in the arena given.
 * Source: contract of the engine, "Terms": a face is whole if all of it lies within
 * TOLERANCE_WHOLE of the panel; a part is no tile if it holds no disc of TOLERANCE_DUST or
 * lies wholly within (gap-max less gap) of the panel's border. */
#ifndef LAYOUT_PIECE_H
#define LAYOUT_PIECE_H
#include "geometry/window.h"
#include "layout/tiling.h"

/* What the judgement of faces needs of a panel; built once a panel. */
struct piece_judge {
	struct arena *arena;
	struct arena *scratch; /* cleared by the caller between faces */
	const struct polygon *ground;
	struct border_edges edges;
	double remainder; /* gap-max less gap */
};

struct piece_judge piece_judge_in(struct arena *, struct arena *scratch,
                                  const struct polygon *ground, double remainder);
/* How near an edge must come to a face to matter to its judgement. */
double piece_judge_reach(const struct piece_judge *);

enum face_verdict { FACE_OUTSIDE, FACE_WHOLE, FACE_CUT };

/* Judges the face at `at`; `near` are the panel's edges within reach, rising. Pieces are
 * added to `pieces`, the area of parts that are no tile to `lost_mm2`. */
struct piece_list {
	ARRAY_OF(struct tile_piece) pieces;
	double lost_mm2;
};
enum face_verdict piece_judge_face(struct piece_judge *, struct ring face, struct address at,
                                   const size_t *near, size_t near_count, struct piece_list *);

#endif

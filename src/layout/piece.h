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
	struct arena *once; /* for one face, cleared after it */
	const struct polygon *ground;
	struct border_edges edges;
	double remainder; /* gap-max less gap, and what lies the same */
	struct window_work work;
};

/* `panel`: memory for as long as the panel is being filled. */
struct piece_judge piece_judge_in(struct arena *, struct arena *panel, struct arena *once,
                                  const struct polygon *ground, double remainder);
/* How near an edge must come to a face to matter to its judgement. */
double piece_judge_reach(const struct piece_judge *);

/* A face that the panel's border comes near. */
struct piece_face {
	struct address at;
	struct ring ring;
	double area_mm2, length; /* of the ring */
	bool is_inside;          /* its middle lies in the panel */
	const size_t *near;      /* edges of the panel within reach, rising */
	size_t near_count;
};

enum face_verdict { FACE_OUTSIDE, FACE_WHOLE, FACE_CUT };

struct piece_list {
	ARRAY_OF(struct tile_piece) pieces;
	double lost_mm2; /* of parts that are no tile */
};

/* Adds the face's pieces to the list where it is cut. */
enum face_verdict piece_judge_face(struct piece_judge *, const struct piece_face *,
                                   struct piece_list *);

#endif

/* soft_outline.h - the tile joints right round a unit's crossed tile, in order, and where the
 * tile lies against a border instead.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_OUTLINE_H
#define LAYOUT_SOFT_OUTLINE_H
#include "layout/corridor.h"
#include "layout/soft_path.h"

/* A stretch of the outline between two corners of the network. */
struct outline_stretch {
	double round;          /* place of its middle: side of the outline, and share of it */
	bool has_step;         /* else it runs along the border of the domain */
	struct soft_step step; /* anticlockwise */
	struct segment line;   /* of a joint, as far as it can be walked */
	bool is_joint;         /* it can be walked */
	bool is_against;       /* no joint, for no tile lies beyond */
};

struct soft_outline {
	struct ring ring; /* a hair outside of the crossed cells on the domain, in one where they
	                   * meet in a corner; count 0: no tile is crossed */
	struct outline_stretch *stretches; /* anticlockwise */
	size_t count;
};

/* Joints one behind the other, from where tile lies against a border to where it does again. */
struct outline_run {
	struct outline_stretch first, last;
};

/* Outline of the cells on the corridor's domain, holes filled; of the part that most of the tiles
 * lie in. */
struct ring soft_outline_ring(struct arena *, const struct corridor *, const struct tile_ref *,
                              size_t count);
/* True where the outline passes a point. */
bool soft_outline_is_at(struct ring, struct point);
/* Place on the outline where the ray crosses it last; else the place nearest to its beginning. */
double soft_outline_place(struct ring, struct segment ray);

struct soft_outline soft_outline_in(struct arena *, const struct corridor *, struct ring);
/* The stretches from one place to another, anticlockwise; all of them where the two are one. */
struct soft_outline soft_outline_between(struct arena *, const struct soft_outline *, double from,
                                         double to);
struct outline_run *soft_outline_runs(struct arena *, const struct soft_outline *,
                                      size_t *out_count);

#endif

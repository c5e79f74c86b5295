/* crack_part.h - a group's cracks, stretch by stretch, on the ground where a strip can lie,
 * with the legs of the strip over them.
 * Carried joints and holds part a crack. Units: mm in the lay's own axes. Owns: arena.
 * Source: contract E-C1, E-C2. */
#ifndef LAYOUT_CRACK_PART_H
#define LAYOUT_CRACK_PART_H
#include "layout/cracks.h"
#include "layout/strip_leg.h"

enum part_end {
	PART_END_BORDER, /* on the border of the ground, or prolonged to it */
	PART_END_FREE,   /* in the field, prolonged by the overrun */
	PART_END_JOINED, /* on another stretch of its group */
};

struct crack_part {
	size_t crack; /* index into cracks->cracks */
	bool *panels; /* those it lies in: movement joints part panels, not strips */
	struct line line;
	struct line way;        /* the line, prolonged where it ends in the field */
	enum part_end ends[2];  /* of its first and last point */
	struct tile_ref *tiles; /* crossed, of its panels */
	size_t tile_count;
	struct strip_leg *legs; /* along `way` */
	size_t leg_count;
};

/* How far a strip must reach; mm. */
struct strip_reach {
	double half_width; /* ground it holds on each side of the crack */
	double overrun;    /* past an end in the field */
	double one_tile;   /* an end this near a border is prolonged to it */
	double straight;   /* how far the crack may stray from a leg */
};

/* Parts in the order of the group's cracks; every crossed tile goes to the nearest part of its
 * crack in its panel, and the legs hold it. */
struct crack_part *crack_parts(struct arena *, const struct tiling *, const struct cracks *,
                               const struct crack_group *, const struct region *ground,
                               const struct strip_reach *, size_t *out_count);
/* The leg nearest to `p`. */
struct strip_leg *crack_part_leg(const struct crack_part *, struct point p);
/* Grows the nearest leg until it holds the points with `margin`. */
void crack_part_hold(struct arena *, struct crack_part *, const struct point *points, size_t count,
                     double margin);

#endif

/* clip.h - what of lines lies in a region, its border included.
 * Units: mm; of a segment shares, 0 to 1. Owns: arena.
 * Each segment asks every side of the region, most of them by their boxes alone. */
#ifndef GEOMETRY_CLIP_H
#define GEOMETRY_CLIP_H
#include "geometry/segment.h"

/* The parts of the line, in its order; one goes on where it only touches a border. */
struct line *clip_line(struct arena *, struct line, const struct region *, size_t *out_count);

struct stretch {
	double from, to; /* from < to */
};

/* Stretches in rising order, none touching the next. */
struct stretch *clip_segment(struct arena *, struct segment, const struct region *,
                             size_t *out_count);
/* True where all of the segment lies in the region. */
bool clip_holds(struct arena *, struct segment, const struct region *);

#endif

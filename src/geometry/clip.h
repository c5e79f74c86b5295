/* clip.h - the stretches of a segment that lie in a region, its border included.
 * Units: shares of the segment, 0 to 1. Owns: arena.
 * For the few short segments of a search; long lines go through the overlay. */
#ifndef GEOMETRY_CLIP_H
#define GEOMETRY_CLIP_H
#include "geometry/segment.h"

struct stretch {
	double from, to; /* from < to */
};

/* Stretches in rising order, none touching the next. */
struct stretch *clip_segment(struct arena *, struct segment, const struct region *,
                             size_t *out_count);
/* True where all of the segment lies in the region. */
bool clip_holds(struct arena *, struct segment, const struct region *);

#endif

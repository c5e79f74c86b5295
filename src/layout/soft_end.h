/* soft_end.h - where a group of cracks ends, in order round the tile it crosses.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_END_H
#define LAYOUT_SOFT_END_H
#include "layout/corridor.h"
#include "layout/crack_part.h"

struct soft_end {
	const struct crack_part *part;
	int which;        /* of part->ends */
	struct point at;  /* on the border of the domain; or the crack's own end in the field */
	struct point out; /* unit vector away from the crack */
	bool at_border;
	size_t ring, side;     /* of the domain, at a border */
	struct segment across; /* else: the strip's end, left to right as one looks out */
	double round;          /* place round the crossed cells, anticlockwise */
};

/* Ends of the parts, in order round `crossed`. */
struct soft_end *soft_ends(struct arena *, const struct corridor *,
                           const struct crack_part *const *parts, size_t part_count,
                           const struct region *crossed, size_t *out_count);

#endif

/* soft_end.h - where a group of cracks ends, in order round the tile it crosses.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_END_H
#define LAYOUT_SOFT_END_H
#include "layout/soft_outline.h"
#include "layout/soft_setting.h"

struct soft_end {
	const struct crack_part *part;
	int which;        /* of part->ends */
	struct point own; /* end of the crack */
	struct point at;  /* on the border of the domain; or the crack's own end in the field */
	struct point out; /* unit vector away from the crack */
	bool at_border;
	size_t ring, side;     /* of the domain, at a border */
	const char *border;    /* id of what it meets there */
	bool is_split;         /* the joints of its two sides keep apart there */
	struct segment across; /* the strip's end, left to right as one looks out */
	double round;          /* place on the outline */
};

/* Ends of the parts, in order round the outline of the tile they cross. */
struct soft_end *soft_ends(struct arena *, const struct soft_setting *, const struct corridor *,
                           const struct crack_part *const *parts, size_t part_count,
                           struct ring outline, size_t *out_count);
/* From the crack's end in the field on to where the end lies; TOLERANCE_WHOLE beyond it. */
struct line soft_end_ahead(struct arena *, const struct soft_end *);
/* From the crack's end in the field on to the end of its strip. */
struct line soft_end_bar(struct arena *, const struct soft_end *);

#endif

/* soft_end.h - where the soft joints round a group of cracks may begin and end.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_END_H
#define LAYOUT_SOFT_END_H
#include "layout/corridor.h"
#include "layout/crack_part.h"
#include "layout/soft_path.h"

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

/* A gate, and what a joint that ends there meets. */
struct soft_port {
	struct soft_gate gate; /* walking in */
	struct point at;
	bool at_border;
};

struct soft_ports {
	ARRAY_OF(struct soft_port) ports;
};

/* Ports to the left (or right) of an end, as one looks out; `one_tile` is how near a border
 * beside an end in the field may serve. */
struct soft_ports soft_end_ports(struct arena *, struct corridor *, const struct soft_end *,
                                 bool left, double one_tile);
/* Ports all along the border of the domain, wherever the corridor reaches it. */
struct soft_ports soft_border_ports(struct arena *, struct corridor *);

#endif

/* soft_port.h - where a soft joint may begin and end: at a border or another joint between the
 * flanks of the strip, else at the strip's end.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_PORT_H
#define LAYOUT_SOFT_PORT_H
#include "layout/soft_end.h"
#include "layout/soft_path.h"

/* A gate, and what a joint that ends there meets. */
struct soft_port {
	struct soft_gate gate; /* walking in */
	struct point at;
	bool at_border;
};

struct soft_ports {
	ARRAY_OF(struct soft_port) ports;
};

/* What serves at an end in the field: the line across the strip's end; where no joint leads
 * there, the flank beside it too, then any corner past the crack's end, at last any that lacks
 * no more than one tile to it. */
enum soft_extent {
	SOFT_EXTENT_LINE,
	SOFT_EXTENT_FLANK,
	SOFT_EXTENT_BEYOND,
	SOFT_EXTENT_NEAR,
};

/* Ports to the left (or right) of an end, as one looks out; `one_tile` is how near a border
 * beside an end in the field may serve. */
struct soft_ports soft_end_ports(struct arena *, struct corridor *, const struct soft_end *,
                                 bool left, enum soft_extent, double one_tile);
/* Ports all along the border of the domain, wherever the corridor reaches it. */
struct soft_ports soft_border_ports(struct arena *, struct corridor *);

#endif

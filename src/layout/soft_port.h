/* soft_port.h - where a soft joint may begin and end: at a border or another joint between the
 * flanks of the strip, else at the strip's end.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_PORT_H
#define LAYOUT_SOFT_PORT_H
#include "layout/soft_unit.h"

/* A gate, and what a joint that ends there meets. */
struct soft_port {
	struct soft_gate gate; /* walking in */
	struct point at;
	bool at_border;
};

struct soft_ports {
	ARRAY_OF(struct soft_port) ports;
};

/* What serves at an end, each with all before it. At a border: what is met there and round its
 * corners, as far as the strip lies on it. In the field: the line across the strip's end; where
 * no joint leads there, the flank beside it too, then any corner past the crack's end, at last
 * any that lacks no more than one tile to it. At either a border is good as far along as the
 * crack is within one tile of it. */
enum soft_extent {
	SOFT_EXTENT_LINE,
	SOFT_EXTENT_FLANK,
	SOFT_EXTENT_BEYOND,
	SOFT_EXTENT_NEAR,
	SOFT_EXTENTS,
};

/* Ports to the left (or right) of an end, as one looks out; where the end is not split, on
 * both sides. */
struct soft_ports soft_end_ports(struct arena *, const struct soft_setting *, struct soft_unit *,
                                 const struct soft_end *, bool left, enum soft_extent);
/* Ports from where a run of joints round the tile begins (or ends) against a border. */
struct soft_ports soft_run_ports(struct arena *, const struct soft_setting *, struct soft_unit *,
                                 const struct outline_run *, bool at_end);
void soft_ports_join(struct arena *, struct soft_ports *, const struct soft_ports *more);

#endif

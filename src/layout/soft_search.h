/* soft_search.h - the least-cost walk of a unit's corridor from ports to ports.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract E-C3. */
#ifndef LAYOUT_SOFT_SEARCH_H
#define LAYOUT_SOFT_SEARCH_H
#include "layout/soft_port.h"
#include "layout/soft_unit.h"

struct soft_walk {
	struct soft_path path;
	struct soft_port from, to;
};

/* False: there is none. */
bool soft_search(struct arena *, const struct soft_setting *, struct soft_unit *,
                 const struct soft_ports *from, const struct soft_ports *to,
                 struct soft_walk *out_walk);

#endif

/* detail.h - sections of the joints and strips that a floor has, one of each kind, from the
 * plan's own thicknesses and the joints' own widths.
 * Owns: the draft's arena. Source: docs/sources.md#movement-joints; what is drawn and not
 * counted (depth of slab, wall and base shown) is own design. */
#ifndef SHEETS_DETAIL_H
#define SHEETS_DETAIL_H
#include "sheets/section.h"

struct details {
	struct section *items;
	size_t count;
	double scale; /* of all, once chosen */
	size_t next;  /* the first that is not drawn yet */
};

struct details details_of(const struct draft *);

/* Which kinds of joint and strip the floor has: each has its detail. */
struct detail_kinds {
	unsigned present; /* a bit each, in the order of the details */
};
struct detail_kinds detail_kinds_of(const struct draft *);
/* The number of the detail that shows how a joint is built. */
const char *detail_number(const struct draft *, const struct detail_kinds *,
                          const struct placed_lay *, const struct joint *);

#endif

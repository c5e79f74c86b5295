/* details.h - the sections that a floor needs: one of each kind of joint and strip, and one more
 * wherever its layers or its sealant are others.
 * Owns: the draft's arena. */
#ifndef SHEETS_DETAILS_H
#define SHEETS_DETAILS_H
#include "sheets/buildup.h"

struct details {
	struct section *items;
	size_t count;
	double scale; /* of all, once chosen */
	size_t next;  /* the first that is not drawn yet */
};

struct details details_of(const struct draft *);

/* What is built alike, in the order of the details. */
struct detail_group {
	int kind;
	struct buildup first; /* of its first joint; but what cracks are there is of all */
	const char *joints;   /* tags of all of it */
};
struct detail_groups {
	ARRAY_OF(struct detail_group) list;
};

struct detail_groups detail_groups_of(const struct draft *);
/* The number of the detail that shows how a joint is built. */
const char *detail_number(const struct draft *, const struct detail_groups *,
                          const struct placed_lay *, const struct joint *);

#endif

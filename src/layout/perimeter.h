/* perimeter.h - runs of the field's border along one wall, jamb, stop line or obstacle that
 * keep a gap: each is one perimeter joint.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract, "Perimeter". */
#ifndef LAYOUT_PERIMETER_H
#define LAYOUT_PERIMETER_H
#include "layout/field.h"

struct perimeter_run {
	const char *id;  /* OF.perimeter, OF.perimeter.2 … in the order of the borders, where OF
	                  * is its origin (origin.h) */
	const char *of;  /* wall, doorway or obstacle */
	size_t *borders; /* indices into field->borders, as they follow each other */
	size_t border_count;
	bool is_closed; /* all round: the last border leads to the first */
};

struct perimeter_run *perimeter_runs(struct arena *, const struct field *, size_t *out_count);
/* Id of the joint at a border of the field: a perimeter or a carried joint; NULL: none. */
const char *perimeter_joint_at(const struct field *, const struct perimeter_run *, size_t run_count,
                               size_t border);
/* The border nearest to `p`; field->border_count where the field has none. */
size_t perimeter_nearest(const struct field *, struct point p);

#endif

/* bays.h - which parts of a field share the lattice along u, and along v.
 * Across a carried joint that runs along a lattice axis and wholly separates its sides, the
 * parts share the lattice along the joint and are free across it; any other joint, and one
 * in a doorway, leaves the lattice the same on both sides.
 * Source: contract "Carried joints and bays". */
#ifndef LAYOUT_BAYS_H
#define LAYOUT_BAYS_H
#include "layout/field.h"

struct bays {
	size_t *u_of_part, *v_of_part; /* class of each part; parts of one class share it */
	size_t u_count, v_count;
};

struct bays bays_of_field(struct arena *, const struct field *);

#endif

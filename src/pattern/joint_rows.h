/* joint_rows.h - where a pattern's joints let a straight line run along a lattice axis: on
 * joints all the way, or at least from head joint to head joint.
 * Units: mm across the line, the lattice at position 0. By value; nothing fails. */
#ifndef PATTERN_JOINT_ROWS_H
#define PATTERN_JOINT_ROWS_H
#include "pattern/module.h"

struct joint_rows {
	double period;
	const double *places; /* in one period, rising, from 0 up */
	size_t count;         /* at least one */
	bool are_straight;    /* else a line there cuts tile, and meets head joints */
};

/* For lines along u (along v). */
struct joint_rows joint_rows_of(const struct module *, bool along_u);

#endif

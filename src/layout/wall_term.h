/* wall_term.h - one border of the field as setting out sees it: where it lies along a
 * lattice axis, how it weighs, and what a lattice position makes of its cut.
 * The search is blind to geometry beyond this. Units: mm in the lay's own axes.
 * Owns: arena. */
#ifndef LAYOUT_WALL_TERM_H
#define LAYOUT_WALL_TERM_H
#include "layout/cut_profile.h"
#include "layout/field.h"
#include "layout/wall_lanes.h"
#include "pattern/module.h"

struct wall_term {
	size_t border, part;
	bool along_u;     /* the cut is measured along u (the wall stands across the courses) */
	double sign;      /* +1: the floor lies towards the greater coordinate */
	double at[2];     /* of the border's ends, along the axis */
	double beside[2]; /* of the border's ends, across it */
	double weight, length;
	bool is_straight; /* parallel to the lattice: one cut a course */
	struct cut_profile profile;
	struct wall_lanes lanes; /* of a pattern without courses: then there are no slots */
};

/* A stretch of the wall that sees one cut (or one even taper): the whole wall, or a course. */
struct wall_slot {
	double phase[2]; /* at its two ends, for a lattice position of 0 along the axis */
	double length;
	int shift; /* of its course: index into the module's offsets */
};

struct wall_slots {
	struct wall_slot *slots;
	size_t count;
};

struct wall_term wall_term_from_border(struct arena *, const struct field *, const struct module *,
                                       const struct rules *, size_t border);
/* The pattern has no courses: the cuts are those of lanes. */
bool wall_term_has_lanes(const struct wall_term *);
/* One set of cuts along the whole wall, lane by lane: it is straight, or nearly so for the
 * lanes' period. */
bool wall_term_shows_lanes(const struct wall_term *);
/* The slots of a term when the courses lie at `position_v`; a straight wall's courses of
 * equal shift are one slot. `slots` needs room for wall_term_most_slots. */
size_t wall_term_most_slots(const struct wall_term *, const struct module *);
void wall_term_slots(const struct wall_term *, const struct module *, double position_v,
                     struct wall_slots *);
/* With the lattice at `position` along the term's axis: */
double wall_term_penalty(const struct wall_term *, const struct wall_slots *, double position);
double wall_term_least_cut(const struct wall_term *, const struct wall_slots *, double position);
double wall_term_worst_cut(const struct wall_term *, const struct wall_slots *, double position);
/* A whole tile starts at the wall (in one course, where courses differ) within `reach`. */
bool wall_term_starts_whole(const struct wall_term *, const struct wall_slots *, double position,
                            double reach);
double wall_term_cut_pieces(const struct wall_term *, const struct module *,
                            const struct wall_slots *, double position);

#endif

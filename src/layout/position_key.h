/* position_key.h - how two positions of the grid compare: terms in order, first to last.
 * By value; nothing is owned. Source: contract of the engine, "Setting out", k0 to k4. */
#ifndef LAYOUT_POSITION_KEY_H
#define LAYOUT_POSITION_KEY_H
#include <stdbool.h>

/* Sums nearer than TOLERANCE_KEY are equal, so that rounding never chooses, nor how a plan lies
 * on its paper. */
struct position_key {
	double unmet;          /* entries of full-at and centre-on not met; exact */
	double unmet_order;    /* of as many unmet, the more important weigh more; exact */
	double small;          /* integral of the penalty of small cuts along the edges (mm) */
	double whole_at_joint; /* parallel carried joints where no whole tile starts */
	double balance;        /* differences of opposite walls' cuts (mm) */
	double cut_pieces;     /* estimate by edge length over tile size; fewer is better */
};

struct position_key position_key_worst(void);
struct position_key position_key_sum(struct position_key, struct position_key);
struct position_key position_key_difference(struct position_key, struct position_key);
/* Negative where `a` is better. */
int position_key_compare(struct position_key a, struct position_key b);
/* True where `a`, whose later terms are still to come, can no longer be better than `b`. */
bool position_key_is_beaten(struct position_key a, struct position_key b);

#endif

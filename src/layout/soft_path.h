/* soft_path.h - the least-cost walk through the joint network, from one set of gates to
 * another, exact.
 * Dijkstra's method on directed edges, so that a turn can be charged; costs are whole
 * numbers, so that equal is equal. Edges are asked for one by one: no graph of the floor is
 * built, and each directed edge is settled at most once.
 * Least is by cost, then fewer turns, then shorter, then by the addresses read from the end
 * backwards, so exactly one walk is least.
 * Units: lengths nm; turns in millionths of a quarter turn. Owns: arena.
 * Source: E. W. Dijkstra (1959), doi 10.1007/BF01386390; own derivation of the states. */
#ifndef LAYOUT_SOFT_PATH_H
#define LAYOUT_SOFT_PATH_H
#include "pattern/network.h"

/* An edge and the way it is walked. */
struct soft_step {
	struct network_place at;
	bool reversed;
};

/* Where a walk may begin (or end): the step, and how much of its edge is walked. */
struct soft_gate {
	struct soft_step step;
	double part; /* mm; the whole edge where the walk begins or ends at a vertex */
	bool is_cut; /* the edge leads no farther: the walk begins and ends on it */
};

struct soft_cost {
	long long cost, turns, length;
};

struct soft_query {
	const struct network *network;
	const struct module *module;
	bool (*is_open)(void *context, struct network_place); /* may a walk use the whole edge */
	void *context;
	const struct soft_gate *from, *to; /* gates need not be open */
	size_t from_count, to_count;
	double turn_penalty; /* mm of length a quarter turn costs */
};

struct soft_path {
	struct soft_step *steps; /* count 0: no walk leads there */
	size_t count;
	size_t from, to; /* the gates used */
	struct soft_cost least;
	long settled; /* directed edges */
};

struct soft_path soft_path_search(struct arena *, const struct soft_query *);

/* Cost of a walk given step by step; the first and last edge count by their parts. */
struct soft_cost soft_path_cost(const struct soft_query *, const struct soft_step *, size_t count,
                                double first_part, double last_part);
int soft_cost_compare(struct soft_cost, struct soft_cost);
/* By edge, j, i, then walked forward before walked back. */
int soft_step_compare(struct soft_step, struct soft_step);
/* Turning between two directions in quarter turns, to the millionth. */
double soft_turn(struct point before, struct point after);

#endif

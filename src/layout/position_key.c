#include "layout/position_key.h"

#include <math.h>
#include <stddef.h>

#include "geometry/tolerance.h"

/* The first of the terms are counts. */
enum { COUNTS = 2, TERMS = 6 };

static void spread(struct position_key key, double terms[TERMS])
{
	terms[0] = key.unmet;
	terms[1] = key.unmet_order;
	terms[2] = key.small;
	terms[3] = key.whole_at_joint;
	terms[4] = key.balance;
	terms[5] = key.cut_pieces;
}

struct position_key position_key_worst(void)
{
	return (struct position_key){.unmet = HUGE_VAL};
}

struct position_key position_key_sum(struct position_key a, struct position_key b)
{
	return (struct position_key){a.unmet + b.unmet,     a.unmet_order + b.unmet_order,
	                             a.small + b.small,     a.whole_at_joint + b.whole_at_joint,
	                             a.balance + b.balance, a.cut_pieces + b.cut_pieces};
}

struct position_key position_key_difference(struct position_key a, struct position_key b)
{
	struct position_key minus = {-b.unmet,          -b.unmet_order, -b.small,
	                             -b.whole_at_joint, -b.balance,     -b.cut_pieces};
	return position_key_sum(a, minus);
}

static int compare_term(double a, double b, double room)
{
	if (a == b) /* or both are infinite */
		return 0;
	return a < b - room ? -1 : a > b + room;
}

int position_key_compare(struct position_key a, struct position_key b)
{
	double x[TERMS], y[TERMS];
	spread(a, x);
	spread(b, y);
	int order = 0;
	for (size_t i = 0; i < TERMS && !order; i++)
		order = compare_term(x[i], y[i], i < COUNTS ? 0 : TOLERANCE_KEY);
	return order;
}

bool position_key_is_beaten(struct position_key a, struct position_key b)
{
	int order = compare_term(a.unmet, b.unmet, 0);
	if (!order)
		order = compare_term(a.unmet_order, b.unmet_order, 0);
	return order > 0 || (order == 0 && compare_term(a.small, b.small, TOLERANCE_KEY) > 0);
}

#include "layout/position_key.h"

#include <math.h>
#include <stddef.h>

enum { TERMS = 6 };

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

static int compare_term(double a, double b)
{
	const double grid = 1e6;
	if (a == b)
		return 0;
	if (fabs(a - b) > 2 / grid) /* most are far apart, whatever they round to; or infinite */
		return a < b ? -1 : 1;
	double difference = nearbyint(a * grid) - nearbyint(b * grid);
	return difference < 0 ? -1 : difference > 0;
}

int position_key_compare(struct position_key a, struct position_key b)
{
	double x[TERMS], y[TERMS];
	spread(a, x);
	spread(b, y);
	int order = 0;
	for (size_t i = 0; i < TERMS && !order; i++)
		order = compare_term(x[i], y[i]);
	return order;
}

bool position_key_is_beaten(struct position_key a, struct position_key b)
{
	int order = compare_term(a.unmet, b.unmet);
	if (!order)
		order = compare_term(a.unmet_order, b.unmet_order);
	return order > 0 || (order == 0 && compare_term(a.small, b.small) > 0);
}

/* rates.h - which rate a row of the count goes by.
 * By value; rates are the plan's. A rate for an element comes before one for a word; the
 * first of several that serve holds. */
#ifndef COUNT_RATES_H
#define COUNT_RATES_H
#include "count/count.h"
#include "count/decimal.h"

/* The words that a kind of row goes by, the closer first. */
struct rate_words {
	enum plan_rate_word words[2];
	int count; /* 0: a kind that has no price */
};

struct rate_words rates_words(enum count_kind);
/* NULL: none serves. `*out_factor`: how many of the rate's units make one of the row's. */
const struct plan_rate *rates_find(const struct plan_rates *, const struct count_row *,
                                   struct decimal_factor *out_factor);
const char *rates_per_unit(enum plan_per);   /* m2, sqft, bag … as rows name them */
const char *rates_word(enum plan_rate_word); /* tile, membrane … as the plan writes them */

#endif

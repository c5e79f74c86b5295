/* decimal.h - money, exact: whole hundredths of a currency.
 * A price is an amount as it prints by a rate as it is written, rounded once, half away from
 * zero, to 0.01. By value. Fails: never within the limits of a plan. */
#ifndef COUNT_DECIMAL_H
#define COUNT_DECIMAL_H
#include "base/arena.h"
#include "units/quantity.h"

/* How many of a rate's units are in one of an amount's: exact. */
struct decimal_factor {
	int64_t num, den;
};

/* `amount` has at most `decimals` places; it is taken as they print. */
int64_t decimal_price(double amount, int decimals, struct decimal_factor, struct money rate);
/* A share of a sum. */
int64_t decimal_share(int64_t cents, struct share);
const char *decimal_text(struct arena *, int64_t cents); /* -12.50 */
const char *decimal_rate(struct arena *, struct money);  /* as it was written */

#endif

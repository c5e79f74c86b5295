#include "count/decimal.h"

#include <math.h>
#include <stdlib.h>

enum { CENTS = 100 };

/* Products of an amount, a rate and a factor need more than 64 bits. */
__extension__ typedef __int128 wide;

static wide power_of_ten(int n)
{
	wide power = 1;
	for (; n > 0; n--)
		power *= 10;
	return power;
}

static int64_t divided(wide num, wide den)
{
	wide half = den / 2;
	return (int64_t)((num >= 0 ? num + half : num - half) / den);
}

int64_t decimal_price(double amount, int decimals, struct decimal_factor factor, struct money rate)
{
	wide units = llround(amount * (double)power_of_ten(decimals));
	return divided(units * rate.units * factor.num * CENTS,
	               power_of_ten(decimals + rate.decimals) * factor.den);
}

int64_t decimal_share(int64_t cents, struct share share)
{
	return divided((wide)cents * share.num, share.den);
}

const char *decimal_text(struct arena *arena, int64_t cents)
{
	long long whole = llabs(cents) / CENTS, part = llabs(cents) % CENTS;
	return arena_printf(arena, "%s%lld.%02lld", cents < 0 ? "-" : "", whole, part);
}

const char *decimal_rate(struct arena *arena, struct money money)
{
	long long scale = (long long)power_of_ten(money.decimals);
	if (money.decimals == 0)
		return arena_printf(arena, "%lld", (long long)money.units);
	return arena_printf(arena, "%lld.%0*lld", (long long)money.units / scale, money.decimals,
	                    (long long)money.units % scale);
}

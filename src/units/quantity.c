#include "units/quantity.h"

#include <math.h>
#include <string.h>

#include "units/number.h"

/* A decimal before a unit; false unless the unit follows and nothing else does. */
static bool number_before(const char *text, const char *unit, double *out_value)
{
	char digits[32];
	size_t length = strlen(text), tail = strlen(unit);
	if (length <= tail || length - tail >= sizeof digits ||
	    strcmp(text + length - tail, unit) != 0)
		return false;
	length -= tail;
	while (length && text[length - 1] == ' ')
		length--;
	memcpy(digits, text, length);
	digits[length] = '\0';
	return number_parse(digits, out_value);
}

struct scale {
	const char *unit;
	double factor;
};

static bool scaled(const char *text, const struct scale *scales, double *out_value)
{
	for (const struct scale *s = scales; s->unit; s++)
		if (number_before(text, s->unit, out_value)) {
			*out_value *= s->factor;
			return true;
		}
	return false;
}

static int64_t gcd(int64_t a, int64_t b)
{
	while (b) {
		int64_t rest = a % b;
		a = b;
		b = rest;
	}
	return a < 0 ? -a : a;
}

struct share share_reduced(struct share s)
{
	int64_t by = gcd(s.num, s.den);
	return by ? (struct share){s.num / by, s.den / by} : s;
}

struct share share_simplest(struct share share, int64_t most)
{
	struct share best = {0, 1};
	double value = share_value(share), least = value;
	for (int64_t den = 2; den <= most && least * (double)share.den >= 1; den++) {
		int64_t nearest = (share.num * den + share.den / 2) / share.den;
		int64_t num = nearest < den ? nearest : den - 1;
		double off = fabs((double)num / (double)den - value);
		if (off < least) {
			best = (struct share){num, den};
			least = off;
		}
	}
	return best;
}

/* Up to nine digits, so that products stay far from overflow. */
static bool whole(const char **at, int64_t *out_value, int *out_digits)
{
	*out_value = 0;
	*out_digits = 0;
	for (; **at >= '0' && **at <= '9'; ++*at, ++*out_digits) {
		if (*out_digits == 9)
			return false;
		*out_value = *out_value * 10 + (**at - '0');
	}
	return true;
}

bool share_parse(const char *text, struct share *out_share)
{
	const char *at = text;
	int64_t first, second = 0;
	int first_digits, second_digits = 0;
	if (!whole(&at, &first, &first_digits))
		return false;
	if (*at == '/') {
		at++;
		if (!first_digits || !whole(&at, &second, &second_digits) || *at || second == 0)
			return false;
		*out_share = share_reduced((struct share){first, second});
		return true;
	}
	if (*at == '.') {
		at++;
		if (!whole(&at, &second, &second_digits))
			return false;
	}
	if (first_digits + second_digits == 0 || first_digits + second_digits > 9)
		return false;
	int64_t den = 1;
	for (int i = 0; i < second_digits; i++)
		den *= 10;
	struct share share = {first * den + second, den};
	if (*at == '%') {
		at++;
		share.den *= 100;
	}
	if (*at)
		return false;
	*out_share = share_reduced(share);
	return true;
}

bool money_parse(const char *text, struct money *out_money)
{
	enum { MOST_DECIMALS = 6 };
	const char *at = text;
	int64_t before, after = 0, scale = 1;
	int digits, decimals = 0;
	if (!whole(&at, &before, &digits) || digits == 0)
		return false;
	if (*at == '.') {
		at++;
		if (!whole(&at, &after, &decimals) || decimals == 0 || decimals > MOST_DECIMALS)
			return false;
	}
	for (int i = 0; i < decimals; i++)
		scale *= 10;
	*out_money = (struct money){before * scale + after, decimals};
	return *at == '\0';
}

bool angle_parse(const char *text, double *out_deg)
{
	return number_before(text, "deg", out_deg) || number_parse(text, out_deg);
}

bool temperature_parse(const char *text, double *out_c)
{
	double degrees;
	if (number_before(text, "C", out_c))
		return true;
	if (!number_before(text, "F", &degrees))
		return false;
	*out_c = (degrees - 32) / 1.8;
	return true;
}

bool mass_parse(const char *text, double *out_kg)
{
	static const struct scale scales[] = {{"kg", 1}, {"lb", QUANTITY_KG_PER_LB}, {NULL, 0}};
	return scaled(text, scales, out_kg);
}

bool volume_parse(const char *text, double *out_ml)
{
	/* US gallon: 231 in3, exact. */
	static const struct scale scales[] = {{"floz", QUANTITY_ML_PER_FLOZ},
	                                      {"ml", 1},
	                                      {"gal", QUANTITY_ML_PER_GALLON},
	                                      {"l", 1000},
	                                      {"L", 1000},
	                                      {NULL, 0}};
	return scaled(text, scales, out_ml);
}

bool area_parse(const char *text, double *out_m2)
{
	static const struct scale scales[] = {{"m2", 1},
	                                      {"sqft", QUANTITY_M2_PER_SQFT},
	                                      {"sq ft", QUANTITY_M2_PER_SQFT},
	                                      {"ft2", QUANTITY_M2_PER_SQFT},
	                                      {NULL, 0}};
	return scaled(text, scales, out_m2);
}

bool density_parse(const char *text, double *out_kg_l)
{
	/* A cubic foot is 28.316846592 litres. */
	static const struct scale scales[] = {{"kg/L", 1},
	                                      {"kg/l", 1},
	                                      {"lb/ft3", QUANTITY_KG_PER_LB / 28.316846592},
	                                      {NULL, 0}};
	return scaled(text, scales, out_kg_l);
}

bool strength_parse(const char *text, double *out_mpa)
{
	/* psi: 4.4482216152605 N on 645.16 mm2. */
	static const struct scale scales[] = {{"MPa", 1},
	                                      {"psi", 4.4482216152605 / 645.16},
	                                      {NULL, 0}};
	return scaled(text, scales, out_mpa);
}

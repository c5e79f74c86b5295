#include "rules/shrinkage.h"

#include <math.h>
#include <stddef.h>

/* Days of curing before it dries. Source: own choice, as the printed example has it. */
static const double CURED_DAYS = 7;

/* What is decided and printed rests on rounded strains. */
static double rounded(double strain)
{
	const double steps = 1e9;
	return floor(strain * steps + 0.5) / steps;
}

struct cement_class {
	char name;
	double a1, a2;
};

static struct cement_class class_of(char cement)
{
	static const struct cement_class classes[] = {{'N', 4, 0.12},
	                                              {'S', 3, 0.13},
	                                              {'R', 6, 0.11}};
	for (size_t i = 1; i < sizeof classes / sizeof classes[0]; i++)
		if (classes[i].name == cement)
			return classes[i];
	return classes[0];
}

/* The exponential of a number from -4 to 0 by its series at a sixteenth of it: sums and
 * products alone, the same to the last bit on every processor. */
static double exponential(double x)
{
	enum { TERMS = 14, SQUARINGS = 4 };
	double part = x / 16, term = 1, sum = 1;
	for (int k = 1; k <= TERMS; k++) {
		term *= part / k;
		sum += term;
	}
	for (int k = 0; k < SQUARINGS; k++)
		sum *= sum;
	return sum;
}

/* Annex B.2, equations B.11 and B.12. */
static double basic(const struct concrete *concrete)
{
	struct cement_class cement = class_of(concrete->cement);
	double mean_mpa = concrete->strength_mpa + 8;
	double humidity = concrete->humidity_share;
	double dryness = 1.55 * (1 - humidity * humidity * humidity);
	return 0.85 * (220 + 110 * cement.a1) * exponential(-cement.a2 * mean_mpa / 10) * 1e-6 *
	       dryness;
}

/* Table 3.3, straight between its rows. */
static double size_factor(double size_mm)
{
	static const struct {
		double size, factor;
	} rows[] = {{100, 1}, {200, 0.85}, {300, 0.75}, {500, 0.7}};
	enum { COUNT = sizeof rows / sizeof rows[0] };
	if (size_mm <= rows[0].size)
		return rows[0].factor;
	for (size_t i = 1; i < COUNT; i++) {
		double share = (size_mm - rows[i - 1].size) / (rows[i].size - rows[i - 1].size);
		if (size_mm <= rows[i].size)
			return rows[i - 1].factor + share * (rows[i].factor - rows[i - 1].factor);
	}
	return rows[COUNT - 1].factor;
}

/* Equation 3.10: the share that has come by now. */
static double share_come(const struct concrete *concrete)
{
	double dried = concrete->age_days - CURED_DAYS, size = concrete->size_mm;
	return dried > 0 ? dried / (dried + 0.04 * size * sqrt(size)) : 0;
}

double shrinkage_basic(const struct concrete *concrete)
{
	return rounded(basic(concrete));
}

double shrinkage_final(const struct concrete *concrete)
{
	return rounded(size_factor(concrete->size_mm) * basic(concrete));
}

double shrinkage_to_come(const struct concrete *concrete)
{
	return rounded((1 - share_come(concrete)) * size_factor(concrete->size_mm) *
	               basic(concrete));
}

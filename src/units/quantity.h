/* quantity.h - values with units other than lengths, as the floor description writes them.
 * By value; nothing is owned. Every parse is false on anything but the whole form. */
#ifndef UNITS_QUANTITY_H
#define UNITS_QUANTITY_H
#include <stdbool.h>
#include <stdint.h>

/* Exact by definition: US fluid ounce (231 in3 / 128), square foot,
 * avoirdupois pound. */
#define QUANTITY_ML_PER_FLOZ 29.5735295625
#define QUANTITY_ML_PER_GALLON 3785.411784 /* 231 in3 */
#define QUANTITY_M2_PER_SQFT 0.09290304
#define QUANTITY_KG_PER_LB 0.45359237

/* 1/3, 0.33, 25%: kept exact, of at most nine digits. den > 0. */
struct share {
	int64_t num, den;
};

bool share_parse(const char *text, struct share *out_share);
struct share share_reduced(struct share);
/* Of those below 1 with a denominator of at most `most`: the simplest that differs by less
 * than one of the last digit written; where there is none the nearest. */
struct share share_simplest(struct share, int64_t most);
static inline double share_value(struct share s)
{
	return (double)s.num / (double)s.den;
}

/* A decimal amount, exact: units / 10^decimals. */
struct money {
	int64_t units;
	int decimals;
};

bool money_parse(const char *text, struct money *out_money); /* 12.50 */
bool angle_parse(const char *text, double *out_deg);         /* 45, 45deg */
bool temperature_parse(const char *text, double *out_c);     /* 55F, 13C */
bool mass_parse(const char *text, double *out_kg);           /* 25kg, 50lb */
bool volume_parse(const char *text, double *out_ml);         /* 10.1floz, 600ml, 5gal */
bool area_parse(const char *text, double *out_m2);           /* 8m2, 85sqft */
bool density_parse(const char *text, double *out_kg_l);      /* 1.6kg/L, 98lb/ft3 */
bool strength_parse(const char *text, double *out_mpa);      /* 25MPa, 4000psi */

#endif

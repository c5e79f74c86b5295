/* shrinkage.h - drying shrinkage of concrete, as a strain.
 * Units: MPa, mm, days; strains are bare numbers, rounded to 1e-9. By value; nothing fails.
 * Source: EN 1992-1-1 3.1.4, equations 3.9 and 3.10, table 3.3, annex B.2; docs/sources.md. */
#ifndef RULES_SHRINKAGE_H
#define RULES_SHRINKAGE_H

struct concrete {
	double strength_mpa;   /* cylinder strength */
	char cement;           /* S, N or R: how fast it gains strength */
	double humidity_share; /* of the air */
	double size_mm;        /* notional: twice the section by what of its border dries */
	double age_days;       /* negative: not known, as if it were new */
};

/* Unrestrained, of a small section, in the end. */
double shrinkage_basic(const struct concrete *);
/* Of this size, in the end. */
double shrinkage_final(const struct concrete *);
/* What of it is still to come. */
double shrinkage_to_come(const struct concrete *);

#endif

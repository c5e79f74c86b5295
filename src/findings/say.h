/* say.h - numbers as a finding writes them: lengths the way the plan does, in feet and
 * inches or in mm; areas in sq ft or m2.
 * Units: mm, mm2. Owns: texts live in the arena. */
#ifndef FINDINGS_SAY_H
#define FINDINGS_SAY_H
#include <stdbool.h>

#include "words/words.h"

struct saying {
	struct arena *arena;
	const struct words *words;
	bool inches;
};

/* To 1/16 in from an inch up, to 1/64 in below; to 1 mm from an inch up,
 * to 1/10 below, to 1/100 under 1 mm. */
const char *say_length(const struct saying *, double mm);
const char *say_area(const struct saying *, double mm2);
/* With at most `decimals`, ending zeros left out. */
const char *say_number(const struct saying *, double value, int decimals);
/* A difference of temperature, in the degrees of the plan's measures. */
const char *say_warming(const struct saying *, double kelvin);
/* A value in the unit of its finding; shares as percentages, masses in pounds, as the trade
 * tells moisture; all but lengths, shares and masses without their unit. */
const char *say_value(const struct saying *, double value, const char *unit);
/* Two values that differ, with as many digits as tell them apart, and no more. */
struct said_pair {
	const char *a, *b;
};
struct said_pair say_apart(const struct saying *, double a, double b, const char *unit);

#endif

/* say.h - numbers as a finding writes them: lengths the way the plan does, in feet and
 * inches or in mm; areas in sq ft or m2.
 * Units: mm, mm2. Owns: texts live in the arena. */
#ifndef FINDINGS_SAY_H
#define FINDINGS_SAY_H
#include <stdbool.h>

#include "base/arena.h"

const char *say_length(struct arena *, bool inches, double mm);
const char *say_area(struct arena *, bool inches, double mm2);
/* With at most `decimals`, ending zeros left out. */
const char *say_number(struct arena *, double value, int decimals);
/* A measured value or a limit in the unit of its finding; shares as percentages. */
const char *say_value(struct arena *, bool inches, double value, const char *unit);

#endif

/* record.h - the placed floor in numbers, for anyone's script: XML, and points as CSV.
 * Every name and what it means: docs/record.md. Plan axes (x east, y north).
 * Units: lengths mm with 6 decimals, areas m2 with 12; points of the CSV in m with 4.
 * Owns: bytes live in the arena. Fails: never. */
#ifndef RECORD_RECORD_H
#define RECORD_RECORD_H
#include "findings/finding.h"

/* `plan_name`: base name of the plan's file. */
struct bytes record_write(struct arena *, const struct placed *, const struct findings *,
                          const char *plan_name);
/* Points to stake: control lines, first tiles, joint ends and turns, strip corners. */
struct bytes record_points(struct arena *, const struct placed *);

#endif

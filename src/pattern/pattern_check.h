/* pattern_check.h - errors of patterns that do not fill the plane: where, between which tiles,
 * and which one size would close it.
 * Units: lengths in messages as the plan's root unit has them, exact. Owns: the diagnostics'
 * arena. Source: docs/floor-format.md, `module`. */
#ifndef PATTERN_PATTERN_CHECK_H
#define PATTERN_PATTERN_CHECK_H
#include "base/diag.h"
#include "base/status.h"
#include "plan/plan.h"

/* Checks every sound lay; STATUS_INPUT where one fails. */
enum status pattern_check(struct arena *, const struct plan *, struct diag_list *);

#endif

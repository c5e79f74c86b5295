/* guard.h - looks through the bytes of a plan before the XML parser sees them.
 * Fails: false; what is wrong is reported once, with its line.
 * Source of the limits: docs/floor-format.md#limits. */
#ifndef PLAN_GUARD_H
#define PLAN_GUARD_H
#include <stdbool.h>

#include "base/diag.h"

/* False on bytes that are too many, that are not UTF-8, or that hold what would choke the
 * parser or lead it astray. */
bool guard_admits(const char *bytes, size_t length, struct diag_list *);

#endif

/* face_limit.h - refuses a lay of more tile than any floor has.
 * Fails: the error goes to the build's diagnostics, with the line of the lay.
 * Source of the limit: docs/floor-format.md#limits. */
#ifndef SITE_FACE_LIMIT_H
#define SITE_FACE_LIMIT_H
#include "site/build.h"

void face_limit_check(struct build *);

#endif

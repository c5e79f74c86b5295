/* detail.h - the section of a joint or strip, from the plan's own thicknesses and the joint's own
 * width.
 * Owns: the draft's arena. Source: docs/sources.md#movement-joints; what is drawn and not
 * counted (depth of slab, wall and base shown) is own design. */
#ifndef SHEETS_DETAIL_H
#define SHEETS_DETAIL_H
#include "sheets/buildup.h"

/* What it is built like, in the order in which sheets show it; past the last kind: nothing has
 * a section. */
int detail_kind_of(const struct buildup *);
struct section detail_section(struct buildup *);

#endif

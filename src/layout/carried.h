/* carried.h - slab joints that go straight up through the tile, and joints of doorways: line,
 * width, band.
 * Units: mm in the lay's own axes. Owns: arena.
 * Source: docs/sources.md#movement-joints (the tile joint is never narrower than the slab's
 * and follows it in a straight line). */
#ifndef LAYOUT_CARRIED_H
#define LAYOUT_CARRIED_H
#include "layout/field.h"

/* Of slab joints on the field's ground, one straight line a run of points; then of doorways.
 * Of the field, all that comes before its carried joints is there. */
struct field_carried *carried_place(struct arena *, const struct field *, const struct rules *,
                                    bool outdoor, size_t *out_count);

#endif

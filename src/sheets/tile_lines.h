/* tile_lines.h - the joints round all tile of a panel as the fewest, longest lines.
 * Units: mm in the lay's own axes. Owns: arena. Joints that go on from one another are one
 * line, so a grid of any size costs a line a course and a line a column. Those round a cut tile
 * are as long as round a whole one: they run out over the edge of the panel. */
#ifndef SHEETS_TILE_LINES_H
#define SHEETS_TILE_LINES_H
#include "layout/tiling.h"

/* Joints nearer to each other than `least` are thinned to one. */
struct line *tile_lines(struct arena *, const struct tiling *, const struct panel *, double least,
                        size_t *out_count);

#endif

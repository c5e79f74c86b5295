/* hatch.h - hatching cut to its area beforehand, so that no writer needs patterns or clips.
 * Units: paper mm. Rows are anchored to the sheet's origin: one material, one phase, all
 * over the sheet. Owns: lines live in the arena given. */
#ifndef DRAWING_HATCH_H
#define DRAWING_HATCH_H
#include "drawing/paper.h"
#include "drawing/style.h"

/* The strokes of `style`'s hatch inside `area` (even-odd); empty for HATCH_NONE. */
struct paper_path hatch_cut(struct arena *, const struct area_style *, struct paper_path area);

#endif

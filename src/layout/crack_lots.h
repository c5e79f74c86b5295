/* crack_lots.h - what becomes of each crack of the site over all lays: a crack that goes on from
 * one lay into the next, or meets another there, is one crack.
 * Owns: arena. Source: contract, "Cracks": a group has its worst member's state. */
#ifndef LAYOUT_CRACK_LOTS_H
#define LAYOUT_CRACK_LOTS_H
#include "layout/cracks.h"

struct laid_cracks {
	const struct field *field;
	const struct cracks *cracks;
};

/* By index of the site's cracks, from those of every lay judged by itself. */
const struct crack_lot *crack_lots_of(struct arena *, const struct site *,
                                      const struct laid_cracks *lays, size_t lay_count);

#endif

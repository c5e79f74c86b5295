/* filling.h - a panel filled with tile: runs of whole tiles, cut pieces.
 * Row by row: an edge of the panel is looked at in the rows it passes through; between the faces
 * it comes near, all faces lie inside or all outside. Units: mm in the lay's own axes.
 * Owns: what it lays lives in the arena. */
#ifndef LAYOUT_FILLING_H
#define LAYOUT_FILLING_H
#include "layout/tiling.h"

struct filling_memory {
	struct arena *lasting;      /* for what is laid */
	struct arena *panel, *face; /* scratch, empty; cleared when the panel is filled */
};

/* Lays the panel, which has its ground and position. A remainder at its border that is no wider
 * than `remainder` is no tile. */
void filling_lay(const struct filling_memory *, const struct module *, double remainder,
                 struct panel *);

#endif

/* clip.h - paths cut to a box of the sheet: what a part of a large floor leaves to its
 * neighbour.
 * Units: paper mm. Owns: new lines live in the arena given. */
#ifndef DRAWING_CLIP_H
#define DRAWING_CLIP_H
#include "drawing/paper.h"

/* The stretches inside the box; a closed line that leaves it falls into open ones. */
struct paper_path clip_stroke(struct arena *, struct paper_path, struct paper_box);
/* The area (even-odd) inside the box; its outline may run along the box's edge. */
struct paper_path clip_area(struct arena *, struct paper_path, struct paper_box);

#endif

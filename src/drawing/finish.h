/* finish.h - the last pass over a list: labels find their places, hatch and thin lines
 * make room for text, ops come into the order of their layers.
 * Units: paper mm. Invariants: see label.h; to a finished list nothing is added any more
 * but what stands outside the drawing, and then it is sorted again, and the clouds of
 * cloud.h, which lie over all. */
#ifndef DRAWING_FINISH_H
#define DRAWING_FINISH_H
#include "drawing/list.h"
#include "drawing/occupancy.h"

/* Places all labels in `within` (the drawing space). Labels that found no free place are
 * counted and listed, never drawn over another text. Areas filled with AREA_PAPER on the
 * sheet layer (title block, notes, stamp) are kept free. */
struct label_report list_finish(struct list *, struct paper_box within);
/* Ops in the order of their layers; those of one layer as they were added. */
void list_sort(struct list *);
/* All that is drawn so far, weighed by what covering it would cost; texts are blocked. */
struct occupancy *list_occupied(const struct list *);

#endif

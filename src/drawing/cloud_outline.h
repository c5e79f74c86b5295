/* cloud_outline.h - where a cloud runs: round its ground at a distance, past all texts; and its
 * scallops.
 * Units: paper mm, y up. Owns: arena. */
#ifndef DRAWING_CLOUD_OUTLINE_H
#define DRAWING_CLOUD_OUTLINE_H
#include "drawing/paper.h"
#include "geometry/region.h"

/* How far scallops reach out from the outline at the most. */
#define CLOUD_REACH 2.1

/* Outlines without holes that enclose `ground` and keep off the boxes of texts (y up). */
struct region cloud_outline(struct arena *, const struct region *ground, const struct box *texts,
                            size_t text_count);
/* Points from scallop to scallop along an outline: every corner, and as evenly as it goes; the
 * straight lines between them keep off the texts too. */
struct ring cloud_points(struct arena *, struct ring outline, const struct box *texts,
                         size_t text_count);
/* The scalloped line through them, on the sheet (y down): flatter where a text is near. */
struct paper_path cloud_scallops(struct arena *, struct ring points, const struct box *texts,
                                 size_t text_count);
/* True where any of the region lies in the box grown by `reach`. */
bool cloud_meets_box(const struct region *, struct box, double reach);

#endif

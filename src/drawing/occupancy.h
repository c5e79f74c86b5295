/* occupancy.h - what is on the sheet and where, for asking how much a box or a line would
 * cover.
 * Units: paper mm; weights per mm of covered line, or a crossing. Owns: lives in the arena given.
 * A grid of cells; every mark is cut at cell borders, so each piece is counted once. */
#ifndef DRAWING_OCCUPANCY_H
#define DRAWING_OCCUPANCY_H
#include "base/arena.h"
#include "drawing/paper.h"

struct occupancy;

struct occupancy *occupancy_new(struct arena *, double width, double height);
/* What a mm of the mark costs that is covered, and what it costs to cross it. */
struct mark_weight {
	double cover, cross;
};
void occupancy_add(struct occupancy *, struct paper_point a, struct paper_point b,
                   struct mark_weight);
/* Nothing may stand on a block (a text, a title block). */
void occupancy_block(struct occupancy *, struct paper_box);

bool occupancy_is_blocked(const struct occupancy *, struct paper_box);
bool occupancy_blocks_line(const struct occupancy *, struct paper_point a, struct paper_point b);
/* Sum over all marks of weight times length inside the box. Where it passes `most` it is not
 * followed further: then it is some value above that. */
double occupancy_cover(const struct occupancy *, struct paper_box, double most);
/* What else a reader would take to be meant at a point: sum of crossing weight times length, of
 * what lies within `reach` of it (a square). */
double occupancy_near(const struct occupancy *, struct paper_point, double reach);
/* Sum of the weights of the marks that a-b crosses. */
double occupancy_cross(const struct occupancy *, struct paper_point a, struct paper_point b);
/* True where the segments a-b and c-d cross inside both. */
bool occupancy_is_crossing(struct paper_point a, struct paper_point b, struct paper_point c,
                           struct paper_point d);

#endif

/* draw_tile.h - tile, joints of the finished floor, membrane and holds on a sheet.
 * Source: own design. Cost: one stroke for all joints of a panel, however many tiles. */
#ifndef SHEETS_DRAW_TILE_H
#define SHEETS_DRAW_TILE_H
#include "sheets/lay_view.h"
#include "sheets/sheet.h"

void draw_tile_joints(struct sheet *, const struct lay_view *);
void draw_cut_tiles(struct sheet *, const struct lay_view *);
/* Cracks under the tile: seen through it, with their tags. */
void draw_covered_cracks(struct sheet *, const struct lay_view *);
void draw_strips(struct sheet *, const struct lay_view *);
/* Hatched over tile; on the slab the outline alone, so that nothing hides the crack. */
void draw_holds(struct sheet *, const struct lay_view *, bool hatched);
void draw_joints(struct sheet *, const struct lay_view *);
/* Those of the slab alone, which a membrane ends at. */
void draw_carried_joints(struct sheet *, const struct lay_view *);
/* The same without tags. */
void draw_joint_lines(struct sheet *, const struct lay_view *);
/* Every joint that is not grouted, tagged with its id as in the schedule; perimeter joints
 * have the names of their walls. */
void draw_scheduled_joints(struct sheet *, const struct lay_view *);
void draw_controls(struct sheet *, const struct lay_view *);
void draw_first_tile(struct sheet *, const struct lay_view *);

#endif

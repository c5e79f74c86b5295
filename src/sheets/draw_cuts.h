/* draw_cuts.h - the names of the walls, each with the cut a setter finds there.
 * One label a wall (or part of one between doorways and joints); two where the cut tapers. */
#ifndef SHEETS_DRAW_CUTS_H
#define SHEETS_DRAW_CUTS_H
#include "sheets/lay_view.h"
#include "sheets/margin.h"
#include "sheets/sheet.h"

/* True where a wall on this side of the plan has a label of two lines. */
bool draw_cuts_has_ends(const struct lay_view *, enum side);
void draw_cuts(struct sheet *, const struct lay_view *);
/* The edges of the room where the tile goes on into another one, each with its name. */
void draw_open_edges(struct sheet *, const struct lay_view *);
/* The name alone, for sheets without tile. */
void draw_wall_names(struct sheet *, const struct view *, const struct site_room *);

#endif

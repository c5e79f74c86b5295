/* passage.h - a doorway from one room to another: the patch between the jamb lines and the
 * facing wall.
 * Units: mm. Owns: rings live in the build's arena.
 * Fails: no wall of the room behind faces the opening. */
#ifndef SITE_PASSAGE_H
#define SITE_PASSAGE_H
#include "site/build.h"

/* The ground between the doorway's wall and its stop line. */
struct ring passage_recess(struct arena *, const struct site_doorway *);
/* Leads a doorway of `room` on to the room `beyond`, and lists it there too, where there is
 * room for it in `doorways`. False: there is no passage; told, unless it follows from another
 * error. */
bool passage_link(struct build *, const struct site_room *room, struct site_doorway *,
                  struct site_room *beyond);

#endif

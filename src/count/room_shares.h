/* room_shares.h - lengths and areas of one lay, told apart by room: a patch in a doorway is of
 * the room that declares it.
 * Units: mm, mm2. Owns: arena: an array of one number for each room of the field, in its order;
 * together they are what was given. Source: contract E-Q1: by room = by strip = total. */
#ifndef COUNT_ROOM_SHARES_H
#define COUNT_ROOM_SHARES_H
#include "layout/field.h"

/* `length`: what the line is said to be long; a share too short to be printed goes with the
 * longest. */
const double *room_shares_of_line(struct arena *, const struct field *, struct line, bool is_closed,
                                  double length);
const double *room_shares_of_lines(struct arena *, const struct field *, const struct line *,
                                   size_t count, double length);
const double *room_shares_of_region(struct arena *, const struct field *, const struct region *);
/* Ground between the walls of one room that is tiled: field. */
const double *room_shares_of_field(struct arena *, const struct field *);
/* `total` in proportion to the shares. */
const double *room_shares_scaled(struct arena *, const struct field *, const double *shares,
                                 double total);
/* The room with the greatest share. */
size_t room_shares_greatest(const struct field *, const double *shares);

#endif

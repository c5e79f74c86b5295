/* modules.h - patterns made by hand, so that a test needs no plan.
 * Units: mm. Owns: arena. */
#ifndef SUPPORT_MODULES_H
#define SUPPORT_MODULES_H
#include "pattern/module.h"

/* Rectangles `tile_long` along u and `tile_wide` along v, each course `shift` of a step on. */
const struct module *module_of_rectangles(struct arena *, double tile_long, double tile_wide,
                                          double joint, double shift);
/* Hexagons `wide` across flats, two flats along v. */
const struct module *module_of_hexagons(struct arena *, double wide, double joint);
/* A large and a small square, five corners to each cell's share. */
const struct module *module_of_pinwheel(struct arena *, double large, double small, double joint);
/* Two tiles upright beside two lying, in squares that take turns. */
const struct module *module_of_basketweave(struct arena *, double wide, double joint);

#endif

/* lays.h - lays of every pattern, made by hand, so that a test needs no plan.
 * Units: mm. Owns: arena. */
#ifndef SUPPORT_LAYS_H
#define SUPPORT_LAYS_H
#include "base/arena.h"
#include "plan/plan.h"

/* A lay of one tile `tile_long` by `tile_wide`; its fields may be changed. */
struct plan_lay *lay_of_tile(struct arena *, enum plan_pattern, int tile_long, int tile_wide,
                             int joint);
/* Adds a tile of another size; its index. */
int lay_add_tile(struct arena *, struct plan_lay *, int tile_long, int tile_wide);
/* Makes it a lay of a module that has no piece yet, with these steps. */
struct plan_module *lay_set_module(struct arena *, struct plan_lay *, int ax, int ay, int bx,
                                   int by);
void lay_add_piece(struct arena *, struct plan_lay *, int tile, int x, int y, bool is_across);

#endif

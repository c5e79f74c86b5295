/* rooms.h - floor descriptions drawn at random: one room, one tile, one lay.
 * Units: mm. Owns: arena. */
#ifndef SUPPORT_ROOMS_H
#define SUPPORT_ROOMS_H
#include "layout/placed.h"
#include "support/seed.h"

/* A room of whole millimetres: rectangle, L, T, notched or with a skew wall. */
struct random_room {
	struct point corners[8];
	size_t corner_count;
	int tile_long, tile_wide, joint;
	const char *pattern; /* attributes of the lay from pattern on */
	int angle;
};

struct random_room random_room(struct seed *, int shape, int tile_most);
/* The XML text of a floor with this room. `extra_lay` is written into the lay. */
const char *random_room_text(struct arena *, const struct random_room *, const char *extra_lay);
/* Reads and resolves a text that must be sound; ends the test where it is not. */
const struct site *site_from_text(struct arena *, const char *text);
const struct rules *rules_for_tests(struct arena *);

#endif

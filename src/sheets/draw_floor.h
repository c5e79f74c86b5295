/* draw_floor.h - what is there before any tile: walls, doorways, obstacles, slab joints,
 * cracks. Every element is drawn with its id and asks for its tag.
 * Units: floor mm through the view. */
#ifndef SHEETS_DRAW_FLOOR_H
#define SHEETS_DRAW_FLOOR_H
#include "drawing/view.h"
#include "sheets/sheet.h"

void draw_walls(struct sheet *, const struct view *, const struct site_room *);
/* What the tag of a doorway says: on a sheet of one room, or of all rooms, where a doorway
 * between two is tagged in the first of them. */
enum doorway_tag {
	DOORWAY_ALONE, /* name and width, of one room */
	DOORWAY_WIDE,  /* name and width */
	DOORWAY_NAME,  /* a chain says how wide it is */
};
void draw_doorways(struct sheet *, const struct view *, const struct site_room *, enum doorway_tag);
void draw_obstacles(struct sheet *, const struct view *, const struct site_room *);
/* Slab joints and cracks within the window of the view, as the slab has them. */
void draw_slab_joints(struct sheet *, const struct view *, const struct region *ground);
void draw_cracks(struct sheet *, const struct view *, const struct region *ground);
/* Name of the room, where there is space for it. */
void draw_room_name(struct sheet *, const struct view *, const struct site_room *);

/* A tag: asked for beside the line a-b, in a frame of its kind. */
void draw_tag(struct sheet *, const char *element, enum label_frame, struct paper_point a,
              struct paper_point b, const char *const *lines, size_t line_count);
/* The crack as it was placed in some lay; NULL: it lies under no tile. */
const struct placed_crack *placed_crack_find(const struct placed *, const char *id);

#endif

/* control_line.h - how good a line across a room is to snap, to measure and to work from.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract L2, L3, L4. */
#ifndef LAYOUT_CONTROL_LINE_H
#define LAYOUT_CONTROL_LINE_H
#include "layout/control_share.h"

/* A room as its control lines see it, all in the lay's axes. */
struct control_room {
	const struct site_room *room;
	struct region floor; /* wall to wall, obstacles and all */
	struct region clear; /* less obstacles and holds */
	struct site_edge *walls;
	size_t wall_count;
	struct control_openings openings;
	const struct movement *movement;
	struct box box;
	double clear_share, wall_clear;
};

/* `placed`: the lines of the rooms before this one. */
struct control_room control_room_in(struct arena *, const struct tiling *, const struct cracks *,
                                    const struct rules *, const struct site_room *,
                                    const struct controls *placed);

/* Compared first to last; less is better. */
struct control_key {
	int is_blocked;  /* clear over less of the room than it should be */
	int is_apart;    /* not the line of a room that it opens into */
	int is_beside;   /* too near to a wall that runs beside it */
	int is_under;    /* under an obstacle or in a hold for a part of its way */
	int is_on_joint; /* on a field joint, whose tile is set from it to one side only */
	int is_closed;   /* through no opening to a room that is still to be placed */
	int crossing;    /* of a row: how apart and how closed the best line across it is */
	double off_middle;
};

/* The line through `at`, along u or along v, as long as the room. */
struct segment control_line_through(const struct control_room *, struct point at, bool along_u);
struct control_key control_line_key(struct arena *, const struct control_room *, struct point at,
                                    bool along_u);
int control_key_compare(struct control_key, struct control_key);
/* Cuts the line to the room, and measures it from a wall beside it at two places. */
struct control control_from_line(struct arena *, const struct control_room *, struct point at,
                                 bool along_u);
/* How far from `at` the line stays clear towards greater (or lesser) u or v. */
double control_line_ahead(struct arena *, const struct control_room *, struct point at,
                          bool along_u, bool greater);

#endif

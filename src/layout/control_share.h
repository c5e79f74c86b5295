/* control_share.h - lines that a room can have in common with other rooms of its lay, through a
 * doorway or over an open edge.
 * Units: mm in the lay's own axes. Owns: arena. Source: contract L3. */
#ifndef LAYOUT_CONTROL_SHARE_H
#define LAYOUT_CONTROL_SHARE_H
#include "layout/controls.h"

/* Where the room opens into another one. */
struct control_opening {
	struct segment at;
	const struct first_tile *first; /* of the room behind; NULL: not placed yet */
	const struct control *lines[2]; /* its lines along u, along v that run through here */
};

struct control_openings {
	struct control_opening *items;
	size_t count;
	double margin; /* nearer to the end of an opening a line does not run through it */
};

enum control_sharing {
	SHARING_LINE,    /* on the line of the room behind */
	SHARING_OPENING, /* through an opening to a room that is still to be placed */
	SHARING_NONE,
};

/* `placed`: the lines of the rooms before this one. */
struct control_openings control_openings_of(struct arena *, const struct field *,
                                            const struct site_room *,
                                            const struct controls *placed);
enum control_sharing control_sharing_of(const struct control_openings *, struct point at,
                                        bool along_u);
/* Tile is set from one edge of a row: a room that takes over a line works the same way across
 * it as the room that has it. */
void control_share_direction(const struct control_openings *, struct first_tile *);

#endif

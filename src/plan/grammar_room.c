/* Rooms: boundaries, obstacles, doorways. */
#include "plan/grammar_table.h"

static const char *const WALL_KINDS[] = {"wall", "glass", "open", "other-floor", NULL};
static const char *const BASES[] = {"covers", "first", "none", NULL};
static const char *const OBSTACLE_KINDS[] = {"column", "island", "pipe", "drain", "box", NULL};
static const char *const STOPS[] = {"middle", "near", "far", NULL};

static const struct grammar_attribute CORNER_ATTRIBUTES[] = {
	{"x", GRAMMAR_LENGTH, IN(wall, x_nm), .required = true, .meaning = "east of the origin"},
	{"y", GRAMMAR_LENGTH, IN(wall, y_nm), .required = true, .meaning = "north of the origin"},
	{"id", GRAMMAR_ID, IN(wall, id),
         .meaning = "name of the wall that starts here; default ROOM.1, ROOM.2"},
	{"kind", GRAMMAR_WORD, IN(wall, kind), "wall", .words = WALL_KINDS,
         .meaning = "what the tile meets there"},
	{"to", GRAMMAR_REF, IN(wall, to), .ref_kind = PLAN_REF_ROOM,
         .meaning = "room on the other side of an open edge"},
	{"base", GRAMMAR_WORD, IN(wall, base), "covers", .words = BASES,
         .meaning = "whether a base hides the gap"},
	{"show", GRAMMAR_YES_NO, IN(wall, show), "yes",
         .meaning = "no: hidden, counts less in setting out"},
};
static const struct grammar_element CORNER = {"corner", HEAD(wall), ROWS(CORNER_ATTRIBUTES),
                                              .kind = PLAN_REF_WALL,
                                              .meaning = "a corner and the wall that starts there"};

static const struct grammar_attribute WALL_ATTRIBUTES[] = {
	{"length", GRAMMAR_LENGTH, IN(wall, length_nm), .required = true, .range = GRAMMAR_POSITIVE,
         .meaning = "as the tape shows it"},
	{"id", GRAMMAR_ID, IN(wall, id), .meaning = "name; default ROOM.1, ROOM.2"},
	{"turn", GRAMMAR_ANGLE, IN(wall, turn_deg), "90", .range = GRAMMAR_TURN,
         .meaning = "to the left at its end"},
	{"rise", GRAMMAR_LENGTH, IN(wall, rise_nm),
         .meaning = "mid-ordinate of an arc over the chord, positive to the left"},
	{"kind", GRAMMAR_WORD, IN(wall, kind), "wall", .words = WALL_KINDS,
         .meaning = "what the tile meets there"},
	{"to", GRAMMAR_REF, IN(wall, to), .ref_kind = PLAN_REF_ROOM,
         .meaning = "room on the other side of an open edge"},
	{"base", GRAMMAR_WORD, IN(wall, base), "covers", .words = BASES,
         .meaning = "whether a base hides the gap"},
	{"show", GRAMMAR_YES_NO, IN(wall, show), "yes",
         .meaning = "no: hidden, counts less in setting out"},
};
static const struct grammar_element WALL = {"wall", HEAD(wall), ROWS(WALL_ATTRIBUTES),
                                            .kind = PLAN_REF_WALL,
                                            .meaning = "one wall of a tape run"};

static const struct grammar_attribute DIAGONAL_ATTRIBUTES[] = {
	{"from", GRAMMAR_NAME, IN(diagonal, from), .ref_kind = PLAN_REF_WALL, .required = true,
         .meaning = "id of the wall starting at one corner"},
	{"to", GRAMMAR_NAME, IN(diagonal, to), .ref_kind = PLAN_REF_WALL, .required = true,
         .meaning = "id of the wall starting at the other"},
	{"length", GRAMMAR_LENGTH, IN(diagonal, length_nm), .required = true,
         .range = GRAMMAR_POSITIVE, .meaning = "measured between them"},
};
static const struct grammar_element DIAGONAL = {"diagonal", HEAD(diagonal),
                                                ROWS(DIAGONAL_ATTRIBUTES),
                                                .meaning = "a measured diagonal"};

static const struct grammar_attribute RUN_ATTRIBUTES[] = {
	{"x", GRAMMAR_LENGTH, IN(run, x_nm), .required = true, .meaning = "of the first corner"},
	{"y", GRAMMAR_LENGTH, IN(run, y_nm), .required = true, .meaning = "of the first corner"},
	{"heading", GRAMMAR_ANGLE, IN(run, heading_deg), .required = true, .range = GRAMMAR_TURN,
         .meaning = "of the first wall"},
	{"closing", GRAMMAR_SHARE, IN(run, closing), "1/500", .range = GRAMMAR_PART,
         .meaning = "closing error allowed, of the length"},
};
static const struct grammar_child RUN_CHILDREN[] = {
	{&WALL, GRAMMAR_MANY, IN(room, walls), IN(room, wall_count), true},
	{&DIAGONAL, GRAMMAR_MANY, IN(run, diagonals), IN(run, diagonal_count), false},
};
static const struct grammar_element RUN = {"walls", HEAD(run), ROWS(RUN_ATTRIBUTES),
                                           ROWS(RUN_CHILDREN),
                                           .meaning = "the boundary as a tape measures it"};

static const struct grammar_child CORNERS_CHILDREN[] = {
	{&CORNER, GRAMMAR_MANY, IN(room, walls), IN(room, wall_count), false},
};
static const struct grammar_element CORNERS = {"corners", .children = CORNERS_CHILDREN,
                                               .child_count = 1,
                                               .meaning = "the boundary as coordinates"};

static const struct grammar_attribute OBSTACLE_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(obstacle, id), .required = true, .meaning = "name"},
	{"kind", GRAMMAR_WORD, IN(obstacle, kind), .required = true, .words = OBSTACLE_KINDS,
         .meaning = "what it is"},
	{"x", GRAMMAR_LENGTH, IN(obstacle, x_nm), .meaning = "of its centre"},
	{"y", GRAMMAR_LENGTH, IN(obstacle, y_nm), .meaning = "of its centre"},
	{"across", GRAMMAR_LENGTH, IN(obstacle, across_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "diameter, where it is round"},
	{"wide", GRAMMAR_LENGTH, IN(obstacle, wide_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "along east before it is turned"},
	{"deep", GRAMMAR_LENGTH, IN(obstacle, deep_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "along north before it is turned"},
	{"turn", GRAMMAR_ANGLE, IN(obstacle, turn_deg), .range = GRAMMAR_TURN,
         .meaning = "anticlockwise about its centre; default 0"},
};
static const struct grammar_child OBSTACLE_CORNERS_CHILDREN[] = {
	{&grammar_point, GRAMMAR_MANY, IN(obstacle, corners), IN(obstacle, corner_count), false},
};
static const struct grammar_element OBSTACLE_CORNERS = {"corners",
                                                        .children = OBSTACLE_CORNERS_CHILDREN,
                                                        .child_count = 1, .meaning = "its outline"};
static const struct grammar_child OBSTACLE_CHILDREN[] = {
	{&OBSTACLE_CORNERS, GRAMMAR_GROUP, 0, 0, false},
};
static const struct grammar_element OBSTACLE = {
	"obstacle",
	HEAD(obstacle),
	ROWS(OBSTACLE_ATTRIBUTES),
	ROWS(OBSTACLE_CHILDREN),
	.kind = PLAN_REF_OBSTACLE,
	.meaning = "where no tile goes: corners, or x y across, or x y wide deep"};

static const struct grammar_attribute DOORWAY_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(doorway, id), .required = true, .meaning = "name"},
	{"wall", GRAMMAR_NAME, IN(doorway, wall), .ref_kind = PLAN_REF_WALL, .required = true,
         .meaning = "the wall it is in"},
	{"from", GRAMMAR_LENGTH, IN(doorway, from_nm), .required = true,
         .range = GRAMMAR_NOT_NEGATIVE, .meaning = "along the wall to its first jamb"},
	{"width", GRAMMAR_LENGTH, IN(doorway, width_nm), .required = true,
         .range = GRAMMAR_POSITIVE, .meaning = "between the jambs"},
	{"to", GRAMMAR_REF, IN(doorway, to), .ref_kind = PLAN_REF_ROOM,
         .meaning = "the room behind; absent: the scope ends there"},
	{"deep", GRAMMAR_LENGTH, IN(doorway, deep_nm), "0", .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "thickness of the wall"},
	{"stop", GRAMMAR_WORD, IN(doorway, stop), "middle", .words = STOPS,
         .meaning = "where in the depth the scope ends"},
	{"joint", GRAMMAR_YES_NO, IN(doorway, joint), "no", .meaning = "a joint in the doorway"},
	{"level", GRAMMAR_LENGTH, IN(doorway, level_nm),
         .meaning = "height of the floor on the other side above the slab"},
};
static const struct grammar_element DOORWAY = {"doorway", HEAD(doorway), ROWS(DOORWAY_ATTRIBUTES),
                                               .kind = PLAN_REF_DOORWAY,
                                               .meaning = "an opening in a wall"};

static const struct grammar_attribute ROOM_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(room, id), .required = true, .meaning = "name"},
	{"slab", GRAMMAR_REF, IN(room, slab), .required = true, .ref_kind = PLAN_REF_SLAB,
         .meaning = "the concrete under it"},
	{"name", GRAMMAR_TEXT, IN(room, name), .meaning = "as people call it"},
	{"exposure", GRAMMAR_WORD, IN(room, exposure), .words = grammar_exposures,
         .meaning = "default the slab's"},
	{"heated", GRAMMAR_YES_NO, IN(room, heated), .meaning = "default the slab's"},
	{"needs", GRAMMAR_WORDS, IN(room, needs), .words = grammar_needs,
         .meaning = "what the floor must do"},
};
static const struct grammar_child ROOM_CHILDREN[] = {
	{&CORNERS, GRAMMAR_GROUP, 0, 0, false},
	{&RUN, GRAMMAR_ONE, IN(room, run), 0, false},
	{&OBSTACLE, GRAMMAR_MANY, IN(room, obstacles), IN(room, obstacle_count), false},
	{&DOORWAY, GRAMMAR_MANY, IN(room, doorways), IN(room, doorway_count), false},
};
const struct grammar_element grammar_room = {
	"room",
	HEAD(room),
	ROWS(ROOM_ATTRIBUTES),
	ROWS(ROOM_CHILDREN),
	.kind = PLAN_REF_ROOM,
	.meaning = "one room: corners or walls, obstacles, doorways"};

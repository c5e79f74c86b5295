#include "plan/grammar.h"

#include <string.h>

/* Rows are read across: name, kind of value, place in the struct, then what differs from
 * nothing. IN() names a field of the element's struct. */
#define IN(element, field) offsetof(struct plan_##element, field)
#define ROWS(array) (array), sizeof(array) / sizeof *(array)
#define HEAD(element) \
	sizeof(struct plan_##element), IN(element, line), IN(element, given)

static const char *const YES_NO[] = {"no", "yes", NULL};
static const char *const UNITS[] = {"mm", "m", "in", "ft", NULL};
static const char *const EXPOSURES[] = {"", "indoor", "sunlit", "wet", "outdoor", NULL};
static const char *const SUPPORTS[] = {"ground", "suspended", NULL};
static const char *const WALL_KINDS[] = {"wall", "glass", "open", "other-floor", NULL};
static const char *const BASES[] = {"covers", "first", "none", NULL};
static const char *const OBSTACLE_KINDS[] = {"column", "island", "pipe", "drain", "box", NULL};
static const char *const STOPS[] = {"middle", "near", "far", NULL};
static const char *const MOVINGS[] = {"unknown", "no", "yes", NULL};
static const char *const JOINT_KINDS[] = {"contraction", "construction", "isolation", "expansion", "cold", NULL};
static const char *const TREATS[] = {"carry", "relocate", NULL};
static const char *const TILE_KINDS[] = {"porcelain", "ceramic", "quarry", "stone", "glass", NULL};
static const char *const SHAPES[] = {"rectangle", "hexagon", NULL};
static const char *const TILE_EDGES[] = {"", "rectified", "calibrated", "natural", NULL};
static const char *const PATTERNS[] = {"grid",     "running", "herringbone", "basketweave",
                                       "pinwheel", "hexagon", "module",      NULL};
static const char *const STAGGERS[] = {"stair", "alternate", NULL};
static const char *const STARTS[] = {"corner", "centre", NULL};
static const char *const MEMBRANE_KINDS[] = {"liquid", "sheet", "mat", "mortar-bed", NULL};
static const char *const COVERS[] = {"partial", "full", NULL};
static const char *const SOFT_JOINTS[] = {"both", "one", NULL};
static const char *const DECISIONS[] = {"isolate", "carry", "hold", "proceed", "decline", NULL};
static const char *const NEEDS[] = {"waterproof", "sound", "heavy-traffic", NULL};
static const char *const READING_KINDS[] = {"humidity", "emission", "flatness", "drop", NULL};

/* ---- places ---- */

static const struct grammar_attribute AT_ATTRIBUTES[] = {
	{"x", GRAMMAR_LENGTH, IN(at, x_nm), .range = GRAMMAR_COORDINATE, .meaning = "east of the origin; goes with y"},
	{"y", GRAMMAR_LENGTH, IN(at, y_nm), .range = GRAMMAR_COORDINATE, .meaning = "north of the origin; goes with x"},
	{"wall", GRAMMAR_NAME, IN(at, wall), .meaning = "wall measured along; goes with along"},
	{"along", GRAMMAR_LENGTH, IN(at, along_nm), .meaning = "along the wall from its first corner"},
	{"out", GRAMMAR_LENGTH, IN(at, out_nm), .fallback = "0mm", .meaning = "square off the wall, into the room"},
};
static const struct grammar_element AT = {
	"at", HEAD(at), ROWS(AT_ATTRIBUTES), .meaning = "a point of a line: x and y, or wall and along"};

static const struct grammar_attribute POINT_ATTRIBUTES[] = {
	{"x", GRAMMAR_LENGTH, IN(at, x_nm), .required = true, .range = GRAMMAR_COORDINATE, .meaning = "east of the origin"},
	{"y", GRAMMAR_LENGTH, IN(at, y_nm), .required = true, .range = GRAMMAR_COORDINATE, .meaning = "north of the origin"},
};
static const struct grammar_element POINT = {
	"corner", HEAD(at), ROWS(POINT_ATTRIBUTES), .meaning = "a corner of the outline"};

/* ---- job, revision, sheets ---- */

static const struct grammar_attribute JOB_ATTRIBUTES[] = {
	{"number", GRAMMAR_TEXT, IN(job, number), .meaning = "job number"},
	{"site", GRAMMAR_TEXT, IN(job, site), .meaning = "where the floor is"},
	{"prepared-for", GRAMMAR_TEXT, IN(job, prepared_for), .meaning = "who receives the drawings"},
	{"prepared-by", GRAMMAR_TEXT, IN(job, prepared_by), .meaning = "the tile contractor"},
	{"drawn-by", GRAMMAR_TEXT, IN(job, drawn_by), .meaning = "who drew"},
	{"checked-by", GRAMMAR_TEXT, IN(job, checked_by), .meaning = "who checked"},
	{"date", GRAMMAR_DATE, IN(job, date), .meaning = "date of issue"},
	{"starts", GRAMMAR_DATE, IN(job, starts), .meaning = "day on which setting tile begins"},
};
static const struct grammar_element JOB = {
	"job", HEAD(job), ROWS(JOB_ATTRIBUTES), .meaning = "what the title block says"};

static const struct grammar_attribute REVISION_ATTRIBUTES[] = {
	{"mark", GRAMMAR_TEXT, IN(revision, mark), .required = true, .meaning = "A, B, C"},
	{"date", GRAMMAR_DATE, IN(revision, date), .required = true, .meaning = "date of this issue"},
	{"note", GRAMMAR_TEXT, IN(revision, note), .meaning = "what changed"},
};
static const struct grammar_element REVISION = {
	"revision", HEAD(revision), ROWS(REVISION_ATTRIBUTES), .meaning = "one issue of the drawings"};

static const struct grammar_attribute SHEETS_ATTRIBUTES[] = {
	{"paper", GRAMMAR_TEXT, IN(sheets, paper), .meaning = "letter tabloid ansi-c ansi-d arch-d a4 a3 a2 a1 a0"},
	{"scale", GRAMMAR_TEXT, IN(sheets, scale), .meaning = "1:50 or 1/4in; default the largest that fits"},
	{"style", GRAMMAR_TEXT, IN(sheets, style), .meaning = "a shipped style"},
	{"words", GRAMMAR_TEXT, IN(sheets, words), .meaning = "en or es"},
};
static const struct grammar_element SHEETS = {
	"sheets", HEAD(sheets), ROWS(SHEETS_ATTRIBUTES), .meaning = "defaults for drawing; the command line wins"};

/* ---- slab and readings ---- */

static const struct grammar_attribute SLAB_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(slab, id), .required = true, .meaning = "name"},
	{"thickness", GRAMMAR_LENGTH, IN(slab, thickness_nm), .required = true, .range = GRAMMAR_POSITIVE, .meaning = "of the concrete"},
	{"support", GRAMMAR_WORD, IN(slab, support), .required = true, .words = SUPPORTS, .meaning = "what carries it"},
	{"exposure", GRAMMAR_WORD, IN(slab, exposure), .required = true, .words = EXPOSURES, .meaning = "what it is exposed to"},
	{"placed", GRAMMAR_DATE, IN(slab, placed), .meaning = "day of the pour; absent: age not known"},
	{"post-tensioned", GRAMMAR_YES_NO, IN(slab, post_tensioned), "no", .words = YES_NO, .meaning = "has tendons under stress"},
	{"heated", GRAMMAR_YES_NO, IN(slab, heated), "no", .words = YES_NO, .meaning = "has heating in or on it"},
	{"coldest", GRAMMAR_TEMPERATURE, IN(slab, coldest_c), .meaning = "lowest temperature in use"},
	{"hottest", GRAMMAR_TEMPERATURE, IN(slab, hottest_c), .meaning = "highest temperature in use"},
	{"strength", GRAMMAR_STRENGTH, IN(slab, strength_mpa), "25MPa", .range = GRAMMAR_POSITIVE, .meaning = "cylinder strength of the concrete"},
	{"cement", GRAMMAR_TEXT, IN(slab, cement), "N", .meaning = "class S, N or R"},
	{"ambient", GRAMMAR_PERCENT, IN(slab, ambient_share), "60%", .range = GRAMMAR_POSITIVE, .meaning = "relative humidity of the air"},
	{"joints", GRAMMAR_LENGTH, IN(slab, joints_nm), .range = GRAMMAR_POSITIVE, .meaning = "usual distance between slab joints"},
};
static const struct grammar_child SLAB_CORNERS_CHILDREN[] = {
	{&POINT, GRAMMAR_MANY, IN(slab, corners), IN(slab, corner_count), false},
};
static const struct grammar_element SLAB_CORNERS = {
	"corners", .children = SLAB_CORNERS_CHILDREN, .child_count = 1, .later = true, .meaning = "the region this slab covers"};
static const struct grammar_child SLAB_CHILDREN[] = {
	{&SLAB_CORNERS, GRAMMAR_GROUP, 0, 0, false},
};
static const struct grammar_element SLAB = {
	"slab", HEAD(slab), ROWS(SLAB_ATTRIBUTES), ROWS(SLAB_CHILDREN), .kind = PLAN_REF_SLAB, .meaning = "the concrete"};

static const struct grammar_attribute READING_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(reading, id), .required = true, .meaning = "name"},
	{"kind", GRAMMAR_WORD, IN(reading, kind), .required = true, .words = READING_KINDS, .meaning = "what was measured"},
	{"value", GRAMMAR_TEXT, IN(reading, value), .required = true, .meaning = "what it showed"},
	{"under", GRAMMAR_LENGTH, IN(reading, under_nm), .range = GRAMMAR_POSITIVE, .meaning = "length of the straightedge"},
	{"date", GRAMMAR_DATE, IN(reading, date), .meaning = "day of the reading"},
	{"room", GRAMMAR_REF, IN(reading, room), .ref_kind = PLAN_REF_ROOM, .meaning = "where"},
	{"x", GRAMMAR_LENGTH, IN(reading, at.x_nm), .range = GRAMMAR_COORDINATE, .meaning = "where"},
	{"y", GRAMMAR_LENGTH, IN(reading, at.y_nm), .range = GRAMMAR_COORDINATE, .meaning = "where"},
	{"wall", GRAMMAR_NAME, IN(reading, at.wall), .meaning = "where"},
	{"along", GRAMMAR_LENGTH, IN(reading, at.along_nm), .meaning = "where"},
	{"out", GRAMMAR_LENGTH, IN(reading, at.out_nm), .meaning = "where"},
};
static const struct grammar_element READING = {
	"reading", HEAD(reading), ROWS(READING_ATTRIBUTES), .kind = PLAN_REF_OTHER, .later = true, .meaning = "measured on the slab before it is accepted"};

/* ---- room ---- */

#define WALL_TAIL                                                                                                       \
	{"kind", GRAMMAR_WORD, IN(wall, kind), "wall", .words = WALL_KINDS, .meaning = "what the tile meets there"},     \
	{"to", GRAMMAR_NAME, IN(wall, to), .later = true, .meaning = "room on the other side of an open edge"},          \
	{"base", GRAMMAR_WORD, IN(wall, base), "covers", .words = BASES, .meaning = "whether a base hides the gap"},     \
	{"show", GRAMMAR_YES_NO, IN(wall, show), "yes", .words = YES_NO, .meaning = "no: hidden, counts less in setting out"}

static const struct grammar_attribute CORNER_ATTRIBUTES[] = {
	{"x", GRAMMAR_LENGTH, IN(wall, x_nm), .required = true, .range = GRAMMAR_COORDINATE, .meaning = "east of the origin"},
	{"y", GRAMMAR_LENGTH, IN(wall, y_nm), .required = true, .range = GRAMMAR_COORDINATE, .meaning = "north of the origin"},
	{"id", GRAMMAR_ID, IN(wall, id), .meaning = "name of the wall that starts here; default ROOM.1, ROOM.2"},
	WALL_TAIL,
};
static const struct grammar_element CORNER = {
	"corner", HEAD(wall), ROWS(CORNER_ATTRIBUTES), .kind = PLAN_REF_WALL, .meaning = "a corner and the wall that starts there"};

static const struct grammar_attribute WALL_ATTRIBUTES[] = {
	{"length", GRAMMAR_LENGTH, IN(wall, length_nm), .required = true, .range = GRAMMAR_POSITIVE, .meaning = "as the tape shows it"},
	{"id", GRAMMAR_ID, IN(wall, id), .meaning = "name; default ROOM.1, ROOM.2"},
	{"turn", GRAMMAR_ANGLE, IN(wall, turn_deg), "90", .meaning = "to the left at its end"},
	{"rise", GRAMMAR_LENGTH, IN(wall, rise_nm), .later = true, .meaning = "mid-ordinate of an arc over the chord"},
	WALL_TAIL,
};
static const struct grammar_element WALL = {
	"wall", HEAD(wall), ROWS(WALL_ATTRIBUTES), .kind = PLAN_REF_WALL, .meaning = "one wall of a tape run"};

static const struct grammar_attribute DIAGONAL_ATTRIBUTES[] = {
	{"from", GRAMMAR_NAME, IN(diagonal, from), .required = true, .meaning = "id of the wall starting at one corner"},
	{"to", GRAMMAR_NAME, IN(diagonal, to), .required = true, .meaning = "id of the wall starting at the other"},
	{"length", GRAMMAR_LENGTH, IN(diagonal, length_nm), .required = true, .range = GRAMMAR_POSITIVE, .meaning = "measured between them"},
};
static const struct grammar_element DIAGONAL = {
	"diagonal", HEAD(diagonal), ROWS(DIAGONAL_ATTRIBUTES), .later = true, .meaning = "a measured diagonal"};

static const struct grammar_attribute RUN_ATTRIBUTES[] = {
	{"x", GRAMMAR_LENGTH, IN(run, x_nm), .required = true, .range = GRAMMAR_COORDINATE, .meaning = "of the first corner"},
	{"y", GRAMMAR_LENGTH, IN(run, y_nm), .required = true, .range = GRAMMAR_COORDINATE, .meaning = "of the first corner"},
	{"heading", GRAMMAR_ANGLE, IN(run, heading_deg), .required = true, .meaning = "of the first wall"},
	{"closing", GRAMMAR_SHARE, IN(run, closing), "1/500", .meaning = "closing error allowed, of the length"},
};
static const struct grammar_child RUN_CHILDREN[] = {
	{&WALL, GRAMMAR_MANY, IN(room, walls), IN(room, wall_count), true},
	{&DIAGONAL, GRAMMAR_MANY, IN(run, diagonals), IN(run, diagonal_count), false},
};
static const struct grammar_element RUN = {
	"walls", HEAD(run), ROWS(RUN_ATTRIBUTES), ROWS(RUN_CHILDREN), .meaning = "the boundary as a tape measures it"};

static const struct grammar_child CORNERS_CHILDREN[] = {
	{&CORNER, GRAMMAR_MANY, IN(room, walls), IN(room, wall_count), false},
};
static const struct grammar_element CORNERS = {
	"corners", .children = CORNERS_CHILDREN, .child_count = 1, .meaning = "the boundary as coordinates"};

static const struct grammar_attribute OBSTACLE_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(obstacle, id), .required = true, .meaning = "name"},
	{"kind", GRAMMAR_WORD, IN(obstacle, kind), .required = true, .words = OBSTACLE_KINDS, .meaning = "what it is"},
	{"x", GRAMMAR_LENGTH, IN(obstacle, x_nm), .range = GRAMMAR_COORDINATE, .meaning = "of its centre"},
	{"y", GRAMMAR_LENGTH, IN(obstacle, y_nm), .range = GRAMMAR_COORDINATE, .meaning = "of its centre"},
	{"across", GRAMMAR_LENGTH, IN(obstacle, across_nm), .range = GRAMMAR_POSITIVE, .meaning = "diameter, where it is round"},
	{"wide", GRAMMAR_LENGTH, IN(obstacle, wide_nm), .range = GRAMMAR_POSITIVE, .meaning = "along east before it is turned"},
	{"deep", GRAMMAR_LENGTH, IN(obstacle, deep_nm), .range = GRAMMAR_POSITIVE, .meaning = "along north before it is turned"},
	{"turn", GRAMMAR_ANGLE, IN(obstacle, turn_deg), .fallback = "0", .meaning = "anticlockwise about its centre"},
};
static const struct grammar_child OBSTACLE_CORNERS_CHILDREN[] = {
	{&POINT, GRAMMAR_MANY, IN(obstacle, corners), IN(obstacle, corner_count), false},
};
static const struct grammar_element OBSTACLE_CORNERS = {
	"corners", .children = OBSTACLE_CORNERS_CHILDREN, .child_count = 1, .meaning = "its outline"};
static const struct grammar_child OBSTACLE_CHILDREN[] = {
	{&OBSTACLE_CORNERS, GRAMMAR_GROUP, 0, 0, false},
};
static const struct grammar_element OBSTACLE = {
	"obstacle", HEAD(obstacle), ROWS(OBSTACLE_ATTRIBUTES), ROWS(OBSTACLE_CHILDREN), .kind = PLAN_REF_OBSTACLE, .meaning = "where no tile goes: corners, or x y across, or x y wide deep"};

static const struct grammar_attribute DOORWAY_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(doorway, id), .required = true, .meaning = "name"},
	{"wall", GRAMMAR_NAME, IN(doorway, wall), .required = true, .meaning = "the wall it is in"},
	{"from", GRAMMAR_LENGTH, IN(doorway, from_nm), .required = true, .range = GRAMMAR_NOT_NEGATIVE, .meaning = "along the wall to its first jamb"},
	{"width", GRAMMAR_LENGTH, IN(doorway, width_nm), .required = true, .range = GRAMMAR_POSITIVE, .meaning = "between the jambs"},
	{"to", GRAMMAR_REF, IN(doorway, to), .ref_kind = PLAN_REF_ROOM, .later = true, .meaning = "the room behind; absent: the scope ends there"},
	{"deep", GRAMMAR_LENGTH, IN(doorway, deep_nm), "0mm", .range = GRAMMAR_NOT_NEGATIVE, .meaning = "thickness of the wall"},
	{"stop", GRAMMAR_WORD, IN(doorway, stop), "middle", .words = STOPS, .meaning = "where in the depth the scope ends"},
	{"joint", GRAMMAR_YES_NO, IN(doorway, joint), "no", .words = YES_NO, .meaning = "a joint in the doorway"},
	{"level", GRAMMAR_LENGTH, IN(doorway, level_nm), .meaning = "height of the floor on the other side above the slab"},
};
static const struct grammar_element DOORWAY = {
	"doorway", HEAD(doorway), ROWS(DOORWAY_ATTRIBUTES), .kind = PLAN_REF_DOORWAY, .meaning = "an opening in a wall"};

static const struct grammar_attribute ROOM_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(room, id), .required = true, .meaning = "name"},
	{"slab", GRAMMAR_REF, IN(room, slab), .required = true, .ref_kind = PLAN_REF_SLAB, .meaning = "the concrete under it"},
	{"name", GRAMMAR_TEXT, IN(room, name), .meaning = "as people call it"},
	{"exposure", GRAMMAR_WORD, IN(room, exposure), .words = EXPOSURES, .meaning = "default the slab's"},
	{"heated", GRAMMAR_YES_NO, IN(room, heated), .words = YES_NO, .meaning = "default the slab's"},
	{"needs", GRAMMAR_WORDS, IN(room, needs), .words = NEEDS, .later = true, .meaning = "what the floor must do"},
};
static const struct grammar_child ROOM_CHILDREN[] = {
	{&CORNERS, GRAMMAR_GROUP, 0, IN(room, has_corners), false},
	{&RUN, GRAMMAR_ONE, IN(room, run), 0, false},
	{&OBSTACLE, GRAMMAR_MANY, IN(room, obstacles), IN(room, obstacle_count), false},
	{&DOORWAY, GRAMMAR_MANY, IN(room, doorways), IN(room, doorway_count), false},
};
static const struct grammar_element ROOM = {
	"room", HEAD(room), ROWS(ROOM_ATTRIBUTES), ROWS(ROOM_CHILDREN), .kind = PLAN_REF_ROOM, .meaning = "one room: corners or walls, obstacles, doorways"};

/* ---- cracks and slab joints ---- */

static const struct grammar_attribute CRACK_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(crack, id), .required = true, .meaning = "name"},
	{"width", GRAMMAR_LENGTH, IN(crack, width_nm), .required = true, .range = GRAMMAR_NOT_NEGATIVE, .meaning = "widest opening"},
	{"step", GRAMMAR_LENGTH, IN(crack, step_nm), "0mm", .range = GRAMMAR_NOT_NEGATIVE, .meaning = "height difference between its sides"},
	{"room", GRAMMAR_REF, IN(crack, room), .ref_kind = PLAN_REF_ROOM, .meaning = "default every room it crosses"},
	{"moving", GRAMMAR_WORD, IN(crack, moving), "unknown", .words = MOVINGS, .meaning = "whether it still moves"},
	{"wander", GRAMMAR_LENGTH, IN(crack, wander_nm), "12mm", "1/2in", .range = GRAMMAR_NOT_NEGATIVE, .meaning = "how far it may lie from the drawn line"},
	{"found", GRAMMAR_DATE, IN(crack, found), .meaning = "day on which it was found"},
	{"note", GRAMMAR_TEXT, IN(crack, note), .meaning = "anything to print"},
};
static const struct grammar_child CRACK_CHILDREN[] = {
	{&AT, GRAMMAR_MANY, IN(crack, points), IN(crack, point_count), false},
};
static const struct grammar_element CRACK = {
	"crack", HEAD(crack), ROWS(CRACK_ATTRIBUTES), ROWS(CRACK_CHILDREN), .kind = PLAN_REF_CRACK, .meaning = "a crack, two points or more"};

static const struct grammar_attribute SLAB_JOINT_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(slab_joint, id), .required = true, .meaning = "name"},
	{"kind", GRAMMAR_WORD, IN(slab_joint, kind), .required = true, .words = JOINT_KINDS, .meaning = "what it is"},
	{"width", GRAMMAR_LENGTH, IN(slab_joint, width_nm), .required = true, .range = GRAMMAR_NOT_NEGATIVE, .meaning = "of the joint in the slab"},
	{"step", GRAMMAR_LENGTH, IN(slab_joint, step_nm), "0mm", .range = GRAMMAR_NOT_NEGATIVE, .meaning = "height difference between its sides"},
	{"treat", GRAMMAR_WORD, IN(slab_joint, treat), "carry", .words = TREATS, .meaning = "relocate: only a contraction joint, if maker and designer agree"},
};
static const struct grammar_child SLAB_JOINT_CHILDREN[] = {
	{&AT, GRAMMAR_MANY, IN(slab_joint, points), IN(slab_joint, point_count), false},
};
static const struct grammar_element SLAB_JOINT = {
	"slab-joint", HEAD(slab_joint), ROWS(SLAB_JOINT_ATTRIBUTES), ROWS(SLAB_JOINT_CHILDREN), .kind = PLAN_REF_SLAB_JOINT, .meaning = "a joint in the slab, two points or more"};

/* ---- tile and lay ---- */

static const struct grammar_attribute TILE_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(tile, id), .required = true, .meaning = "name"},
	{"kind", GRAMMAR_WORD, IN(tile, kind), .required = true, .words = TILE_KINDS, .meaning = "of what"},
	{"wide", GRAMMAR_LENGTH, IN(tile, wide_nm), .required = true, .range = GRAMMAR_TILE_SIDE, .meaning = "face without joint; of a hexagon across flats"},
	{"thick", GRAMMAR_LENGTH, IN(tile, thick_nm), .required = true, .range = GRAMMAR_POSITIVE, .meaning = "thickness"},
	{"long", GRAMMAR_LENGTH, IN(tile, long_nm), .range = GRAMMAR_TILE_SIDE, .meaning = "the longer side; default wide"},
	{"name", GRAMMAR_TEXT, IN(tile, name), .meaning = "as it is ordered"},
	{"shape", GRAMMAR_WORD, IN(tile, shape), "rectangle", .words = SHAPES, .meaning = "hexagon: not yet"},
	{"edge", GRAMMAR_WORD, IN(tile, edge), .words = TILE_EDGES, .meaning = "how its sides were made"},
	{"size-spread", GRAMMAR_LENGTH, IN(tile, size_spread_nm), .range = GRAMMAR_NOT_NEGATIVE, .meaning = "largest less smallest side in the lot"},
	{"warpage", GRAMMAR_LENGTH, IN(tile, warpage_nm), .range = GRAMMAR_NOT_NEGATIVE, .meaning = "of the longest edge, as measured"},
	{"expansion", GRAMMAR_DECIMAL, IN(tile, expansion_per_k), .range = GRAMMAR_POSITIVE, .meaning = "thermal, per K"},
	{"direction", GRAMMAR_YES_NO, IN(tile, direction), "no", .words = YES_NO, .meaning = "yes: an offcut cannot be turned round"},
	{"per-box", GRAMMAR_WHOLE, IN(tile, per_box), .range = GRAMMAR_POSITIVE, .meaning = "pieces in a box"},
	{"weight", GRAMMAR_DECIMAL, IN(tile, weight_kg_m2), .range = GRAMMAR_POSITIVE, .meaning = "kg per m2"},
};
static const struct grammar_element TILE = {
	"tile", HEAD(tile), ROWS(TILE_ATTRIBUTES), .kind = PLAN_REF_TILE, .meaning = "one kind of tile"};

static const struct grammar_attribute MODULE_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, 0, .required = true, .meaning = "name"},
};
static const struct grammar_element MODULE = {
	"module", 0, 0, 0, ROWS(MODULE_ATTRIBUTES), .kind = PLAN_REF_MODULE, .later = true, .meaning = "one period of a pattern of your own"};

static const struct grammar_attribute START_ATTRIBUTES[] = {
	{"x", GRAMMAR_LENGTH, IN(start, x_nm), .required = true, .range = GRAMMAR_COORDINATE, .meaning = "east of the origin"},
	{"y", GRAMMAR_LENGTH, IN(start, y_nm), .required = true, .range = GRAMMAR_COORDINATE, .meaning = "north of the origin"},
	{"at", GRAMMAR_WORD, IN(start, at), "corner", .words = STARTS, .meaning = "what lies there: a crossing of joint centre lines, or a tile's centre"},
};
static const struct grammar_element START = {
	"start", HEAD(start), ROWS(START_ATTRIBUTES), .meaning = "pins the grid"};

static const struct grammar_attribute LAY_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(lay, id), .required = true, .meaning = "name"},
	{"rooms", GRAMMAR_REFS, IN(lay, rooms), .required = true, .ref_kind = PLAN_REF_ROOM, .count_offset = IN(lay, room_count), .meaning = "that share one grid"},
	{"tile", GRAMMAR_REFS, IN(lay, tiles), .required = true, .ref_kind = PLAN_REF_TILE, .count_offset = IN(lay, tile_count), .meaning = "one, or as many as the pattern has sizes"},
	{"joint", GRAMMAR_LENGTH, IN(lay, joint_nm), .required = true, .range = GRAMMAR_POSITIVE, .meaning = "tile joint"},
	{"pattern", GRAMMAR_WORD, IN(lay, pattern), .required = true, .words = PATTERNS, .meaning = "grid or running; the others: not yet"},
	{"shift", GRAMMAR_SHARE, IN(lay, shift), .meaning = "of each next course; default 1/2 below a 15 in nominal side, 1/3 from there on"},
	{"stagger", GRAMMAR_WORD, IN(lay, stagger), "stair", .words = STAGGERS, .meaning = "alternate: every other course"},
	{"in-pairs", GRAMMAR_WHOLE, IN(lay, in_pairs), .later = true, .meaning = "herringbone single or in pairs"},
	{"module", GRAMMAR_NAME, 0, .later = true, .meaning = "the pattern's module"},
	{"angle", GRAMMAR_ANGLE, IN(lay, angle_deg), .fallback = "0", .meaning = "of the courses, anticlockwise from east"},
	{"full-at", GRAMMAR_PLACES, IN(lay, full_at), .count_offset = IN(lay, full_at_count), .meaning = "walls or doorways where a whole tile starts, most important first"},
	{"centre-on", GRAMMAR_PLACES, IN(lay, centre_on), .count_offset = IN(lay, centre_on_count), .meaning = "walls or doorways on whose middle a joint or a tile's middle falls"},
	{"balance", GRAMMAR_YES_NO, IN(lay, balance), "yes", .words = YES_NO, .meaning = "opposite cuts alike"},
	{"tolerance", GRAMMAR_LENGTH, IN(lay, tolerance_nm), "6mm", "1/4in", .range = GRAMMAR_NOT_NEGATIVE, .meaning = "how far a wall may be off"},
	{"gap", GRAMMAR_LENGTH, IN(lay, gap_nm), "6mm", "1/4in", .range = GRAMMAR_NOT_NEGATIVE, .meaning = "perimeter gap"},
	{"gap-max", GRAMMAR_LENGTH, IN(lay, gap_max_nm), "12mm", "1/2in", .range = GRAMMAR_NOT_NEGATIVE, .meaning = "a remainder no wider than gap-max less gap is no tile"},
};
static const struct grammar_child LAY_CHILDREN[] = {
	{&START, GRAMMAR_ONE, IN(lay, start), 0, false},
};
static const struct grammar_element LAY = {
	"lay", HEAD(lay), ROWS(LAY_ATTRIBUTES), ROWS(LAY_CHILDREN), .kind = PLAN_REF_LAY, .meaning = "which tile goes where, and how"};

/* ---- membrane and materials ---- */

static const struct grammar_attribute MEMBRANE_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(membrane, id), .required = true, .meaning = "name"},
	{"rooms", GRAMMAR_REFS, IN(membrane, rooms), .required = true, .ref_kind = PLAN_REF_ROOM, .count_offset = IN(membrane, room_count), .meaning = "where it goes"},
	{"kind", GRAMMAR_WORD, IN(membrane, kind), .required = true, .words = MEMBRANE_KINDS, .meaning = "what it is; mat and mortar-bed: not yet"},
	{"cover", GRAMMAR_WORD, IN(membrane, cover), .required = true, .words = COVERS, .meaning = "strips over cracks, or the whole floor"},
	{"name", GRAMMAR_TEXT, IN(membrane, name), .meaning = "as it is ordered"},
	{"movement", GRAMMAR_LENGTH, IN(membrane, movement_nm), .range = GRAMMAR_POSITIVE, .meaning = "rated in-plane movement; liquid and sheet must state it"},
	{"thick", GRAMMAR_LENGTH, IN(membrane, thick_nm), .range = GRAMMAR_POSITIVE, .meaning = "thickness"},
	{"strip", GRAMMAR_LENGTH, IN(membrane, strip_nm), .range = GRAMMAR_POSITIVE, .meaning = "maker's least strip width"},
	{"roll-wide", GRAMMAR_LENGTH, IN(membrane, roll_wide_nm), .range = GRAMMAR_POSITIVE, .meaning = "width of a roll"},
	{"roll-long", GRAMMAR_LENGTH, IN(membrane, roll_long_nm), .range = GRAMMAR_POSITIVE, .meaning = "length of a roll"},
	{"lap", GRAMMAR_LENGTH, IN(membrane, lap_nm), .range = GRAMMAR_NOT_NEGATIVE, .meaning = "over the piece laid before"},
	{"wet-film", GRAMMAR_LENGTH, IN(membrane, wet_film_nm), .range = GRAMMAR_POSITIVE, .meaning = "thickness of each coat, wet"},
	{"dry-film", GRAMMAR_LENGTH, IN(membrane, dry_film_nm), .range = GRAMMAR_POSITIVE, .meaning = "thickness when dry"},
	{"coats", GRAMMAR_WHOLE, IN(membrane, coats), .range = GRAMMAR_POSITIVE, .meaning = "how many"},
	{"per-pail", GRAMMAR_VOLUME, IN(membrane, per_pail_ml), .range = GRAMMAR_POSITIVE, .meaning = "volume of a pail"},
	{"cure-hours", GRAMMAR_WHOLE, IN(membrane, cure_hours), .range = GRAMMAR_NOT_NEGATIVE, .meaning = "before tile"},
	{"min-slab-age", GRAMMAR_WHOLE, IN(membrane, min_slab_age_days), .range = GRAMMAR_NOT_NEGATIVE, .meaning = "days the maker asks of the concrete"},
	{"max-humidity", GRAMMAR_PERCENT, IN(membrane, max_humidity_share), .range = GRAMMAR_POSITIVE, .meaning = "humidity in the slab"},
	{"max-emission", GRAMMAR_MASS, IN(membrane, max_emission), .range = GRAMMAR_POSITIVE, .meaning = "moisture emission per 1000 sq ft and 24 h"},
	{"min-tile", GRAMMAR_LENGTH, IN(membrane, min_tile_nm), .range = GRAMMAR_POSITIVE, .meaning = "smallest tile side over it"},
	{"offers", GRAMMAR_WORDS, IN(membrane, offers), .words = NEEDS, .meaning = "what it does beside isolating cracks"},
	{"soft-joints", GRAMMAR_WORD, IN(membrane, soft_joints), "both", .words = SOFT_JOINTS, .meaning = "sides of a crack that get one"},
	{"overrun", GRAMMAR_LENGTH, IN(membrane, overrun_nm), .range = GRAMMAR_NOT_NEGATIVE, .meaning = "past a crack's end in the field; default the longer face side, at least 12 in"},
};
static const struct grammar_element MEMBRANE = {
	"membrane", HEAD(membrane), ROWS(MEMBRANE_ATTRIBUTES), .kind = PLAN_REF_MEMBRANE, .meaning = "what isolates cracks"};

static const struct grammar_attribute SEALANT_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(sealant, id), .required = true, .meaning = "name"},
	{"movement", GRAMMAR_SHARE, IN(sealant, movement), "25%", .meaning = "movement class"},
	{"per-tube", GRAMMAR_VOLUME, IN(sealant, per_tube_ml), "10.1floz", .range = GRAMMAR_POSITIVE, .meaning = "volume of a cartridge or sausage"},
	{"name", GRAMMAR_TEXT, IN(sealant, name), .meaning = "as it is ordered"},
	{"cure-hours", GRAMMAR_WHOLE, IN(sealant, cure_hours), "24", .range = GRAMMAR_NOT_NEGATIVE, .meaning = "before traffic"},
};
static const struct grammar_element SEALANT = {
	"sealant", HEAD(sealant), ROWS(SEALANT_ATTRIBUTES), .kind = PLAN_REF_OTHER, .meaning = "for soft, field, carried and perimeter joints"};

static const struct grammar_attribute MORTAR_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(mortar, id), .required = true, .meaning = "name"},
	{"trowel", GRAMMAR_TEXT, IN(mortar, trowel), .meaning = "notch"},
	{"covers", GRAMMAR_TEXT, IN(mortar, covers), .meaning = "area a bag covers"},
	{"name", GRAMMAR_TEXT, IN(mortar, name), .meaning = "as it is ordered"},
	{"cure-hours", GRAMMAR_WHOLE, IN(mortar, cure_hours), "24", .range = GRAMMAR_NOT_NEGATIVE, .meaning = "before grout"},
};
static const struct grammar_element MORTAR = {
	"mortar", HEAD(mortar), ROWS(MORTAR_ATTRIBUTES), .kind = PLAN_REF_OTHER, .meaning = "what the tile is set in"};

static const struct grammar_attribute GROUT_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(grout, id), .required = true, .meaning = "name"},
	{"density", GRAMMAR_DENSITY, IN(grout, density_kg_l), "1.6kg/L", .range = GRAMMAR_POSITIVE, .meaning = "as mixed"},
	{"bag", GRAMMAR_MASS, IN(grout, bag_kg), "25lb", .range = GRAMMAR_POSITIVE, .meaning = "weight of a bag"},
	{"name", GRAMMAR_TEXT, IN(grout, name), .meaning = "as it is ordered"},
	{"colour", GRAMMAR_TEXT, IN(grout, colour), .meaning = "as it is ordered"},
	{"cure-hours", GRAMMAR_WHOLE, IN(grout, cure_hours), "72", .range = GRAMMAR_NOT_NEGATIVE, .meaning = "before sealant"},
};
static const struct grammar_element GROUT = {
	"grout", HEAD(grout), ROWS(GROUT_ATTRIBUTES), .kind = PLAN_REF_OTHER, .meaning = "between the tile"};

static const struct grammar_attribute PATCH_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(patch, id), .required = true, .meaning = "name"},
	{"cure-hours", GRAMMAR_WHOLE, IN(patch, cure_hours), "16", .range = GRAMMAR_NOT_NEGATIVE, .meaning = "before membrane"},
	{"name", GRAMMAR_TEXT, IN(patch, name), .meaning = "as it is ordered"},
};
static const struct grammar_element PATCH = {
	"patch", HEAD(patch), ROWS(PATCH_ATTRIBUTES), .kind = PLAN_REF_OTHER, .meaning = "fills cracks flush"};

/* ---- answers, rates ---- */

static const struct grammar_attribute ANSWER_ATTRIBUTES[] = {
	{"about", GRAMMAR_ABOUT, IN(answer, about), .required = true, .meaning = "id of the element"},
	{"decision", GRAMMAR_WORD, IN(answer, decision), .required = true, .words = DECISIONS, .meaning = "what was decided"},
	{"by", GRAMMAR_TEXT, IN(answer, by), .required = true, .meaning = "who decided"},
	{"on", GRAMMAR_DATE, IN(answer, on), .required = true, .meaning = "when"},
	{"rule", GRAMMAR_TEXT, IN(answer, rule), .meaning = "which finding, where the element has several"},
	{"ref", GRAMMAR_TEXT, IN(answer, ref), .meaning = "letter or drawing it rests on; isolate on a stepped crack must state it"},
	{"note", GRAMMAR_TEXT, IN(answer, note), .meaning = "anything to print"},
};
static const struct grammar_element ANSWER = {
	"answer", HEAD(answer), ROWS(ANSWER_ATTRIBUTES), .meaning = "what someone with authority decided about a finding"};

static const struct grammar_element RATES = {"rates", .later = true, .meaning = "prices"};

/* ---- floor ---- */

static const struct grammar_attribute FLOOR_ATTRIBUTES[] = {
	{"version", GRAMMAR_WHOLE, offsetof(struct plan, version), .required = true, .meaning = "1"},
	{"unit", GRAMMAR_WORD, offsetof(struct plan, unit), .required = true, .words = UNITS, .meaning = "of a bare decimal"},
	{"title", GRAMMAR_TEXT, offsetof(struct plan, title), .meaning = "of the drawings"},
	{"north", GRAMMAR_ANGLE, offsetof(struct plan, north_deg), "90", .meaning = "angle of true north in plan axes"},
	{"rules", GRAMMAR_TEXT, offsetof(struct plan, rules), "us", .meaning = "table of regional limits"},
};
#define FLOOR(array, count) offsetof(struct plan, array), offsetof(struct plan, count), false
static const struct grammar_child FLOOR_CHILDREN[] = {
	{&JOB, GRAMMAR_ONE, offsetof(struct plan, job), 0, false},
	{&REVISION, GRAMMAR_MANY, FLOOR(revisions, revision_count)},
	{&SLAB, GRAMMAR_MANY, FLOOR(slabs, slab_count)},
	{&READING, GRAMMAR_MANY, FLOOR(readings, reading_count)},
	{&ROOM, GRAMMAR_MANY, FLOOR(rooms, room_count)},
	{&CRACK, GRAMMAR_MANY, FLOOR(cracks, crack_count)},
	{&SLAB_JOINT, GRAMMAR_MANY, FLOOR(slab_joints, slab_joint_count)},
	{&TILE, GRAMMAR_MANY, FLOOR(tiles, tile_count)},
	{&MODULE, GRAMMAR_GROUP, 0, 0, false},
	{&LAY, GRAMMAR_MANY, FLOOR(lays, lay_count)},
	{&MEMBRANE, GRAMMAR_MANY, FLOOR(membranes, membrane_count)},
	{&SEALANT, GRAMMAR_INSIDE, offsetof(struct plan, sealant), 0, false},
	{&MORTAR, GRAMMAR_INSIDE, offsetof(struct plan, mortar), 0, false},
	{&GROUT, GRAMMAR_INSIDE, offsetof(struct plan, grout), 0, false},
	{&PATCH, GRAMMAR_INSIDE, offsetof(struct plan, patch), 0, false},
	{&ANSWER, GRAMMAR_MANY, FLOOR(answers, answer_count)},
	{&RATES, GRAMMAR_GROUP, 0, 0, false},
	{&SHEETS, GRAMMAR_INSIDE, offsetof(struct plan, sheets), 0, false},
};
const struct grammar_element grammar_floor = {
	"floor", sizeof(struct plan), offsetof(struct plan, line), offsetof(struct plan, given),
	ROWS(FLOOR_ATTRIBUTES), ROWS(FLOOR_CHILDREN), .meaning = "one floor"};

const struct grammar_attribute *grammar_find_attribute(const struct grammar_element *element, const char *name)
{
	for (size_t i = 0; i < element->attribute_count; i++)
		if (strcmp(element->attributes[i].name, name) == 0)
			return &element->attributes[i];
	return NULL;
}

const struct grammar_child *grammar_find_child(const struct grammar_element *element, const char *name)
{
	for (size_t i = 0; i < element->child_count; i++)
		if (strcmp(element->children[i].element->name, name) == 0)
			return &element->children[i];
	return NULL;
}

const char *grammar_kind_name(enum plan_ref_kind kind)
{
	static const char *const names[] = {
		[PLAN_REF_ROOM] = "a room",           [PLAN_REF_WALL] = "a wall",
		[PLAN_REF_OBSTACLE] = "an obstacle",  [PLAN_REF_DOORWAY] = "a doorway",
		[PLAN_REF_SLAB] = "a slab",           [PLAN_REF_CRACK] = "a crack",
		[PLAN_REF_SLAB_JOINT] = "a slab joint", [PLAN_REF_TILE] = "a tile",
		[PLAN_REF_MODULE] = "a module",       [PLAN_REF_LAY] = "a lay",
		[PLAN_REF_MEMBRANE] = "a membrane",   [PLAN_REF_OTHER] = "something else",
	};
	return names[kind];
}

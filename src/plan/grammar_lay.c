/* Tile, modules, lays. */
#include "plan/grammar_table.h"

static const char *const TILE_KINDS[] = {"porcelain", "ceramic", "quarry", "stone", "glass", NULL};
static const char *const SHAPES[] = {"rectangle", "hexagon", NULL};
static const char *const TILE_EDGES[] = {"", "rectified", "calibrated", "natural", NULL};
static const char *const PATTERNS[] = {"grid",     "running", "herringbone", "basketweave",
                                       "pinwheel", "hexagon", "module",      NULL};
static const char *const STAGGERS[] = {"stair", "alternate", NULL};
static const char *const STARTS[] = {"corner", "centre", NULL};
static const char *const PIECE_TURNS[] = {"0", "90", NULL};

static const struct grammar_attribute TILE_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(tile, id), .required = true, .meaning = "name"},
	{"kind", GRAMMAR_WORD, IN(tile, kind), .required = true, .words = TILE_KINDS,
         .meaning = "of what"},
	{"wide", GRAMMAR_LENGTH, IN(tile, wide_nm), .required = true, .range = GRAMMAR_TILE_SIDE,
         .meaning = "face without joint; of a hexagon across flats"},
	{"thick", GRAMMAR_LENGTH, IN(tile, thick_nm), .required = true, .range = GRAMMAR_POSITIVE,
         .meaning = "thickness"},
	{"long", GRAMMAR_LENGTH, IN(tile, long_nm), .range = GRAMMAR_TILE_SIDE,
         .meaning = "the longer side; default wide"},
	{"name", GRAMMAR_TEXT, IN(tile, name), .meaning = "as it is ordered"},
	{"shape", GRAMMAR_WORD, IN(tile, shape), "rectangle", .words = SHAPES,
         .meaning = "of its face"},
	{"edge", GRAMMAR_WORD, IN(tile, edge), .words = TILE_EDGES,
         .meaning = "how its sides were made"},
	{"size-spread", GRAMMAR_LENGTH, IN(tile, size_spread_nm), .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "largest less smallest side in the lot"},
	{"warpage", GRAMMAR_LENGTH, IN(tile, warpage_nm), .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "of the longest edge, as measured"},
	{"expansion", GRAMMAR_DECIMAL, IN(tile, expansion_per_k), .range = GRAMMAR_POSITIVE,
         .meaning = "thermal, per K"},
	{"direction", GRAMMAR_YES_NO, IN(tile, direction), "no",
         .meaning = "yes: an offcut cannot be turned round"},
	{"per-box", GRAMMAR_WHOLE, IN(tile, per_box), .range = GRAMMAR_POSITIVE,
         .meaning = "pieces in a box"},
	{"weight", GRAMMAR_DECIMAL, IN(tile, weight_kg_m2), .range = GRAMMAR_POSITIVE,
         .meaning = "kg per m2"},
};
const struct grammar_element grammar_tile = {"tile", HEAD(tile), ROWS(TILE_ATTRIBUTES),
                                             .kind = PLAN_REF_TILE, .meaning = "one kind of tile"};

static const struct grammar_attribute PIECE_ATTRIBUTES[] = {
	{"tile", GRAMMAR_REF, IN(piece, tile), .required = true, .ref_kind = PLAN_REF_TILE,
         .meaning = "which"},
	{"x", GRAMMAR_LENGTH, IN(piece, x_nm), .required = true,
         .meaning = "lower left corner of the face, pattern axes"},
	{"y", GRAMMAR_LENGTH, IN(piece, y_nm), .required = true,
         .meaning = "lower left corner of the face, pattern axes"},
	{"turn", GRAMMAR_WORD, IN(piece, turn), "0", .words = PIECE_TURNS,
         .meaning = "90: the long side across"},
};
static const struct grammar_element PIECE = {"piece", HEAD(piece), ROWS(PIECE_ATTRIBUTES),
                                             .meaning = "one tile of the period"};

static const struct grammar_attribute STEP_ATTRIBUTES[] = {
	{"x", GRAMMAR_LENGTH, IN(step, x_nm), .required = true,
         .meaning = "joints included, pattern axes"},
	{"y", GRAMMAR_LENGTH, IN(step, y_nm), .required = true,
         .meaning = "joints included, pattern axes"},
};
static const struct grammar_element STEP = {"step", HEAD(step), ROWS(STEP_ATTRIBUTES),
                                            .meaning = "from a period to the next; two of them"};

static const struct grammar_attribute MODULE_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(module, id), .required = true, .meaning = "name"},
};
static const struct grammar_child MODULE_CHILDREN[] = {
	{&PIECE, GRAMMAR_MANY, IN(module, pieces), IN(module, piece_count), false},
	{&STEP, GRAMMAR_MANY, IN(module, steps), IN(module, step_count), false},
};
const struct grammar_element grammar_module = {"module",
                                               HEAD(module),
                                               ROWS(MODULE_ATTRIBUTES),
                                               ROWS(MODULE_CHILDREN),
                                               .kind = PLAN_REF_MODULE,
                                               .meaning = "one period of a pattern of your own"};

static const struct grammar_attribute START_ATTRIBUTES[] = {
	{"x", GRAMMAR_LENGTH, IN(start, x_nm), .required = true, .meaning = "east of the origin"},
	{"y", GRAMMAR_LENGTH, IN(start, y_nm), .required = true, .meaning = "north of the origin"},
	{"at", GRAMMAR_WORD, IN(start, at), "corner", .words = STARTS,
         .meaning = "what lies there: a crossing of joint centre lines, or a tile's centre"},
};
static const struct grammar_element START = {"start", HEAD(start), ROWS(START_ATTRIBUTES),
                                             .meaning = "pins the grid"};

static const struct grammar_attribute LAY_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(lay, id), .required = true, .meaning = "name"},
	{"rooms", GRAMMAR_REFS, IN(lay, rooms), .required = true, .ref_kind = PLAN_REF_ROOM,
         .count_offset = IN(lay, room_count), .meaning = "that share one grid"},
	{"tile", GRAMMAR_REFS, IN(lay, tiles), .required = true, .ref_kind = PLAN_REF_TILE,
         .count_offset = IN(lay, tile_count),
         .meaning = "one, or as many as the pattern has sizes"},
	{"joint", GRAMMAR_LENGTH, IN(lay, joint_nm), .required = true, .range = GRAMMAR_POSITIVE,
         .meaning = "tile joint"},
	{"pattern", GRAMMAR_WORD, IN(lay, pattern), .required = true, .words = PATTERNS,
         .meaning = "how the tile lie to each other"},
	{"shift", GRAMMAR_SHARE, IN(lay, shift), .range = GRAMMAR_COURSES,
         .meaning =
                 "of each next course; default 1/2 below a 15 in nominal side, 1/3 from there on"},
	{"stagger", GRAMMAR_WORD, IN(lay, stagger), "stair", .words = STAGGERS,
         .meaning = "alternate: every other course"},
	{"in-pairs", GRAMMAR_WHOLE, IN(lay, in_pairs), .range = GRAMMAR_ONE_OR_TWO,
         .meaning = "herringbone of single tile or of two side by side; default 1"},
	{"module", GRAMMAR_REF, IN(lay, module), .ref_kind = PLAN_REF_MODULE,
         .meaning = "of pattern module"},
	{"angle", GRAMMAR_ANGLE, IN(lay, angle_deg), "0", .range = GRAMMAR_TURN,
         .meaning = "of the courses, anticlockwise from east"},
	{"full-at", GRAMMAR_PLACES, IN(lay, full_at), .count_offset = IN(lay, full_at_count),
         .meaning = "walls or doorways where a whole tile starts, most important first"},
	{"centre-on", GRAMMAR_PLACES, IN(lay, centre_on), .count_offset = IN(lay, centre_on_count),
         .meaning = "walls or doorways on whose middle a joint or a tile's middle falls"},
	{"balance", GRAMMAR_YES_NO, IN(lay, balance), "yes", .meaning = "opposite cuts alike"},
	{"tolerance", GRAMMAR_LENGTH, IN(lay, tolerance_nm), "6mm", "1/4in",
         .range = GRAMMAR_NOT_NEGATIVE, .meaning = "how far a wall may be off"},
	{"gap", GRAMMAR_LENGTH, IN(lay, gap_nm), "6mm", "1/4in", .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "perimeter gap"},
	{"gap-max", GRAMMAR_LENGTH, IN(lay, gap_max_nm), "12mm", "1/2in",
         .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "a remainder no wider than gap-max less gap is no tile"},
};
static const struct grammar_child LAY_CHILDREN[] = {
	{&START, GRAMMAR_ONE, IN(lay, start), 0, false},
};
const struct grammar_element grammar_lay = {"lay",
                                            HEAD(lay),
                                            ROWS(LAY_ATTRIBUTES),
                                            ROWS(LAY_CHILDREN),
                                            .kind = PLAN_REF_LAY,
                                            .meaning = "which tile goes where, and how"};

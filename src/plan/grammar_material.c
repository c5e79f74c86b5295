/* Membranes and what goes with them. */
#include "plan/grammar_table.h"

static const char *const MEMBRANE_KINDS[] = {"liquid", "sheet", "mat", "mortar-bed", NULL};
static const char *const COVERS[] = {"partial", "full", NULL};
static const char *const SOFT_JOINTS[] = {"both", "one", NULL};

static const struct grammar_attribute MEMBRANE_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(membrane, id), .required = true, .meaning = "name"},
	{"rooms", GRAMMAR_REFS, IN(membrane, rooms), .required = true, .ref_kind = PLAN_REF_ROOM,
         .count_offset = IN(membrane, room_count), .meaning = "where it goes"},
	{"kind", GRAMMAR_WORD, IN(membrane, kind), .required = true, .words = MEMBRANE_KINDS,
         .meaning = "what it is"},
	{"cover", GRAMMAR_WORD, IN(membrane, cover), .required = true, .words = COVERS,
         .meaning = "strips over cracks, or the whole floor"},
	{"name", GRAMMAR_TEXT, IN(membrane, name), .meaning = "as it is ordered"},
	{"movement", GRAMMAR_LENGTH, IN(membrane, movement_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "rated in-plane movement; liquid and sheet must state it"},
	{"thick", GRAMMAR_LENGTH, IN(membrane, thick_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "thickness"},
	{"strip", GRAMMAR_LENGTH, IN(membrane, strip_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "maker's least strip width"},
	{"roll-wide", GRAMMAR_LENGTH, IN(membrane, roll_wide_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "width of a roll"},
	{"roll-long", GRAMMAR_LENGTH, IN(membrane, roll_long_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "length of a roll"},
	{"lap", GRAMMAR_LENGTH, IN(membrane, lap_nm), .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "over the piece laid before"},
	{"wet-film", GRAMMAR_LENGTH, IN(membrane, wet_film_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "thickness of each coat, wet"},
	{"dry-film", GRAMMAR_LENGTH, IN(membrane, dry_film_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "thickness when dry"},
	{"coats", GRAMMAR_WHOLE, IN(membrane, coats), .range = GRAMMAR_POSITIVE,
         .meaning = "how many"},
	{"per-pail", GRAMMAR_VOLUME, IN(membrane, per_pail_ml), .range = GRAMMAR_POSITIVE,
         .meaning = "volume of a pail"},
	{"cure-hours", GRAMMAR_WHOLE, IN(membrane, cure_hours), .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "before tile"},
	{"min-slab-age", GRAMMAR_WHOLE, IN(membrane, min_slab_age_days),
         .range = GRAMMAR_NOT_NEGATIVE, .meaning = "days the maker asks of the concrete"},
	{"max-humidity", GRAMMAR_PERCENT, IN(membrane, max_humidity_share), .range = GRAMMAR_PART,
         .meaning = "humidity in the slab"},
	{"max-emission", GRAMMAR_MASS, IN(membrane, max_emission), .range = GRAMMAR_POSITIVE,
         .meaning = "moisture emission per 1000 sq ft and 24 h"},
	{"min-tile", GRAMMAR_LENGTH, IN(membrane, min_tile_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "smallest tile side over it"},
	{"offers", GRAMMAR_WORDS, IN(membrane, offers), .words = grammar_needs,
         .meaning = "what it does beside isolating cracks"},
	{"soft-joints", GRAMMAR_WORD, IN(membrane, soft_joints), "both", .words = SOFT_JOINTS,
         .meaning = "sides of a crack that get one"},
	{"overrun", GRAMMAR_LENGTH, IN(membrane, overrun_nm), .range = GRAMMAR_NOT_NEGATIVE,
         .meaning =
                 "past a crack's end in the field; default the longer face side, at least 12 in"},
};
const struct grammar_element grammar_membrane = {"membrane", HEAD(membrane),
                                                 ROWS(MEMBRANE_ATTRIBUTES),
                                                 .kind = PLAN_REF_MEMBRANE,
                                                 .meaning = "what isolates cracks"};

static const struct grammar_attribute SEALANT_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(sealant, id), .required = true, .meaning = "name"},
	{"movement", GRAMMAR_SHARE, IN(sealant, movement), "25%", .range = GRAMMAR_PART,
         .meaning = "movement class"},
	{"per-tube", GRAMMAR_VOLUME, IN(sealant, per_tube_ml), "10.1floz",
         .range = GRAMMAR_POSITIVE, .meaning = "volume of a cartridge or sausage"},
	{"name", GRAMMAR_TEXT, IN(sealant, name), .meaning = "as it is ordered"},
	{"cure-hours", GRAMMAR_WHOLE, IN(sealant, cure_hours), "24", .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "before traffic"},
};
const struct grammar_element grammar_sealant = {
	"sealant", HEAD(sealant), ROWS(SEALANT_ATTRIBUTES), .kind = PLAN_REF_OTHER,
	.meaning = "for soft, field, carried and perimeter joints"};

static const struct grammar_attribute MORTAR_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(mortar, id), .required = true, .meaning = "name"},
	{"trowel", GRAMMAR_TEXT, IN(mortar, trowel),
         .meaning = "notch, its depth last, such as 1/4x3/8in or 10mm"},
	{"covers", GRAMMAR_AREA, IN(mortar, covers_m2), .range = GRAMMAR_POSITIVE,
         .meaning = "area a bag covers; default by the trowel"},
	{"name", GRAMMAR_TEXT, IN(mortar, name), .meaning = "as it is ordered"},
	{"cure-hours", GRAMMAR_WHOLE, IN(mortar, cure_hours), "24", .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "before grout"},
};
const struct grammar_element grammar_mortar = {"mortar", HEAD(mortar), ROWS(MORTAR_ATTRIBUTES),
                                               .kind = PLAN_REF_OTHER,
                                               .meaning = "what the tile is set in"};

static const struct grammar_attribute GROUT_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(grout, id), .required = true, .meaning = "name"},
	{"density", GRAMMAR_DENSITY, IN(grout, density_kg_l), "1.6kg/L", .range = GRAMMAR_POSITIVE,
         .meaning = "as mixed"},
	{"bag", GRAMMAR_MASS, IN(grout, bag_kg), "25lb", .range = GRAMMAR_POSITIVE,
         .meaning = "weight of a bag"},
	{"name", GRAMMAR_TEXT, IN(grout, name), .meaning = "as it is ordered"},
	{"colour", GRAMMAR_TEXT, IN(grout, colour), .meaning = "as it is ordered"},
	{"cure-hours", GRAMMAR_WHOLE, IN(grout, cure_hours), "72", .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "before sealant"},
};
const struct grammar_element grammar_grout = {"grout", HEAD(grout), ROWS(GROUT_ATTRIBUTES),
                                              .kind = PLAN_REF_OTHER,
                                              .meaning = "between the tile"};

static const struct grammar_attribute PATCH_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(patch, id), .required = true, .meaning = "name"},
	{"cure-hours", GRAMMAR_WHOLE, IN(patch, cure_hours), "16", .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "before membrane"},
	{"name", GRAMMAR_TEXT, IN(patch, name), .meaning = "as it is ordered"},
};
const struct grammar_element grammar_patch = {"patch", HEAD(patch), ROWS(PATCH_ATTRIBUTES),
                                              .kind = PLAN_REF_OTHER,
                                              .meaning = "fills cracks flush"};

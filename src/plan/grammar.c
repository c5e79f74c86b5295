#include "plan/grammar.h"

#include <string.h>

#include "plan/grammar_table.h"

const char *const grammar_exposures[] = {"", "indoor", "sunlit", "wet", "outdoor", NULL};
const char *const grammar_needs[] = {"waterproof", "sound", "heavy-traffic", NULL};
static const char *const UNITS[] = {"mm", "m", "in", "ft", NULL};

/* ---- places ---- */

static const struct grammar_attribute AT_ATTRIBUTES[] = {
	{"x", GRAMMAR_LENGTH, IN(at, x_nm), .meaning = "east of the origin; goes with y"},
	{"y", GRAMMAR_LENGTH, IN(at, y_nm), .meaning = "north of the origin; goes with x"},
	{"wall", GRAMMAR_NAME, IN(at, wall), .ref_kind = PLAN_REF_WALL,
         .meaning = "wall measured along; goes with along"},
	{"along", GRAMMAR_LENGTH, IN(at, along_nm),
         .meaning = "along the wall from its first corner"},
	{"out", GRAMMAR_LENGTH, IN(at, out_nm),
         .meaning = "square off the wall, into the room; default 0"},
};
const struct grammar_element grammar_at = {"at", HEAD(at), ROWS(AT_ATTRIBUTES),
                                           .meaning =
                                                   "a point of a line: x and y, or wall and along"};

static const struct grammar_attribute POINT_ATTRIBUTES[] = {
	{"x", GRAMMAR_LENGTH, IN(at, x_nm), .required = true, .meaning = "east of the origin"},
	{"y", GRAMMAR_LENGTH, IN(at, y_nm), .required = true, .meaning = "north of the origin"},
};
const struct grammar_element grammar_point = {"corner", HEAD(at), ROWS(POINT_ATTRIBUTES),
                                              .meaning = "a corner of the outline"};

/* ---- floor ---- */

static const struct grammar_attribute FLOOR_ATTRIBUTES[] = {
	{"version", GRAMMAR_WHOLE, offsetof(struct plan, version), .required = true,
         .meaning = "1"},
	{"unit", GRAMMAR_WORD, offsetof(struct plan, unit), .required = true, .words = UNITS,
         .meaning = "of a bare decimal"},
	{"title", GRAMMAR_TEXT, offsetof(struct plan, title), .meaning = "of the drawings"},
	{"north", GRAMMAR_ANGLE, offsetof(struct plan, north_deg), "90", .range = GRAMMAR_TURN,
         .meaning = "angle of true north in plan axes"},
	{"rules", GRAMMAR_TEXT, offsetof(struct plan, rules), "us",
         .meaning = "table of regional limits"},
};
#define FLOOR(array, count) offsetof(struct plan, array), offsetof(struct plan, count), false
static const struct grammar_child FLOOR_CHILDREN[] = {
	{&grammar_job, GRAMMAR_ONE, offsetof(struct plan, job), 0, false},
	{&grammar_revision, GRAMMAR_MANY, FLOOR(revisions, revision_count)},
	{&grammar_slab, GRAMMAR_MANY, FLOOR(slabs, slab_count)},
	{&grammar_reading, GRAMMAR_MANY, FLOOR(readings, reading_count)},
	{&grammar_room, GRAMMAR_MANY, FLOOR(rooms, room_count)},
	{&grammar_crack, GRAMMAR_MANY, FLOOR(cracks, crack_count)},
	{&grammar_slab_joint, GRAMMAR_MANY, FLOOR(slab_joints, slab_joint_count)},
	{&grammar_tile, GRAMMAR_MANY, FLOOR(tiles, tile_count)},
	{&grammar_module, GRAMMAR_MANY, FLOOR(modules, module_count)},
	{&grammar_lay, GRAMMAR_MANY, FLOOR(lays, lay_count)},
	{&grammar_membrane, GRAMMAR_MANY, FLOOR(membranes, membrane_count)},
	{&grammar_sealant, GRAMMAR_INSIDE, offsetof(struct plan, sealant), 0, false},
	{&grammar_mortar, GRAMMAR_INSIDE, offsetof(struct plan, mortar), 0, false},
	{&grammar_grout, GRAMMAR_INSIDE, offsetof(struct plan, grout), 0, false},
	{&grammar_patch, GRAMMAR_INSIDE, offsetof(struct plan, patch), 0, false},
	{&grammar_answer, GRAMMAR_MANY, FLOOR(answers, answer_count)},
	{&grammar_rates, GRAMMAR_ONE, offsetof(struct plan, rates), 0, false},
	{&grammar_sheets, GRAMMAR_INSIDE, offsetof(struct plan, sheets), 0, false},
};
const struct grammar_element grammar_floor = {"floor",
                                              sizeof(struct plan),
                                              offsetof(struct plan, line),
                                              offsetof(struct plan, given),
                                              ROWS(FLOOR_ATTRIBUTES),
                                              ROWS(FLOOR_CHILDREN),
                                              .meaning = "one floor"};

const struct grammar_attribute *grammar_find_attribute(const struct grammar_element *element,
                                                       const char *name)
{
	for (size_t i = 0; i < element->attribute_count; i++)
		if (strcmp(element->attributes[i].name, name) == 0)
			return &element->attributes[i];
	return NULL;
}

const struct grammar_child *grammar_find_child(const struct grammar_element *element,
                                               const char *name)
{
	for (size_t i = 0; i < element->child_count; i++)
		if (strcmp(element->children[i].element->name, name) == 0)
			return &element->children[i];
	return NULL;
}

const char *grammar_kind_name(enum plan_ref_kind kind)
{
	static const char *const names[] = {
		[PLAN_REF_ROOM] = "a room",
		[PLAN_REF_WALL] = "a wall",
		[PLAN_REF_OBSTACLE] = "an obstacle",
		[PLAN_REF_DOORWAY] = "a doorway",
		[PLAN_REF_SLAB] = "a slab",
		[PLAN_REF_CRACK] = "a crack",
		[PLAN_REF_SLAB_JOINT] = "a slab joint",
		[PLAN_REF_TILE] = "a tile",
		[PLAN_REF_MODULE] = "a module",
		[PLAN_REF_LAY] = "a lay",
		[PLAN_REF_MEMBRANE] = "a membrane",
		[PLAN_REF_OTHER] = "something else",
	};
	return names[kind];
}

const char *grammar_value_form(enum grammar_value value)
{
	static const char *const forms[] = {
		[GRAMMAR_TEXT] = "text",
		[GRAMMAR_ID] =
			"a letter and at most 63 letters, digits, dots, hyphens or underscores",
		[GRAMMAR_NAME] = "the id of an element",
		[GRAMMAR_LENGTH] = "a length such as 3810mm, 12ft 6 1/2in or 1/8in",
		[GRAMMAR_ANGLE] = "an angle in degrees",
		[GRAMMAR_TEMPERATURE] = "a temperature such as 55F or 13C",
		[GRAMMAR_STRENGTH] = "a strength such as 25MPa or 4000psi",
		[GRAMMAR_MASS] = "a mass such as 25kg or 50lb",
		[GRAMMAR_VOLUME] = "a volume such as 10.1floz, 600ml or 5gal",
		[GRAMMAR_DENSITY] = "a density such as 1.6kg/L or 98lb/ft3",
		[GRAMMAR_AREA] = "an area such as 8m2 or 85sqft",
		[GRAMMAR_DECIMAL] = "a decimal number",
		[GRAMMAR_PERCENT] = "a share such as 60% or 0.6, of at most nine digits",
		[GRAMMAR_SHARE] = "a share such as 1/3, 0.33 or 25%, of at most nine digits",
		[GRAMMAR_WHOLE] = "a whole number",
		[GRAMMAR_MONEY] = "an amount such as 12.50",
		[GRAMMAR_DATE] = "a date such as 2026-04-06",
		[GRAMMAR_YES_NO] = "yes or no",
		[GRAMMAR_WORD] = "a word of a list",
		[GRAMMAR_WORDS] = "words of a list, separated by blanks",
		[GRAMMAR_REF] = "the id of an element",
		[GRAMMAR_REFS] = "ids, separated by blanks",
		[GRAMMAR_PLACES] = "ids of walls or doorways, separated by blanks",
		[GRAMMAR_SUBJECT] = "a word of a list, or the id of an element",
		[GRAMMAR_ABOUT] = "the id of an element",
	};
	return forms[value];
}

const char *const *grammar_words(const struct grammar_attribute *attribute)
{
	static const char *const yes_no[] = {"no", "yes", NULL};
	return attribute->value == GRAMMAR_YES_NO ? yes_no : attribute->words;
}

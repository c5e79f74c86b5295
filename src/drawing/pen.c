#include "drawing/pen.h"

static const char *const layer_names[LAYER_COUNT] = {
	[LAYER_SHEET] = "sheet",       [LAYER_SLAB] = "slab",
	[LAYER_MEMBRANE] = "membrane", [LAYER_TILE] = "tile",
	[LAYER_CUTS] = "cuts",         [LAYER_CRACKS] = "cracks",
	[LAYER_HOLDS] = "holds",       [LAYER_JOINTS] = "joints",
	[LAYER_CONTROL] = "control",   [LAYER_DIMENSIONS] = "dimensions",
	[LAYER_LABELS] = "labels",     [LAYER_NOTES] = "notes",
	[LAYER_CHANGES] = "changes",
};

static const char *const pen_names[PEN_COUNT] = {
	[PEN_FRAME] = "frame",
	[PEN_RULE_HEAVY] = "rule-heavy",
	[PEN_RULE] = "rule",
	[PEN_WALL] = "wall",
	[PEN_WALL_OPEN] = "wall-open",
	[PEN_DOOR] = "door",
	[PEN_OBSTACLE] = "obstacle",
	[PEN_SLAB_JOINT] = "slab-joint",
	[PEN_CRACK] = "crack",
	[PEN_CRACK_FINE] = "crack-fine",
	[PEN_CRACK_PENDING] = "crack-pending",
	[PEN_STRIP] = "strip",
	[PEN_STRIP_PENDING] = "strip-pending",
	[PEN_STRIP_SEAM] = "strip-seam",
	[PEN_COVER] = "cover",
	[PEN_TILE] = "tile",
	[PEN_CUT] = "cut",
	[PEN_FIRST_TILE] = "first-tile",
	[PEN_SOFT_JOINT] = "soft-joint",
	[PEN_MOVEMENT_JOINT] = "movement-joint",
	[PEN_CARRIED_JOINT] = "carried-joint",
	[PEN_PERIMETER_JOINT] = "perimeter-joint",
	[PEN_JOINT_PENDING] = "joint-pending",
	[PEN_HOLD] = "hold",
	[PEN_CONTROL] = "control",
	[PEN_DIMENSION] = "dimension",
	[PEN_TICK] = "tick",
	[PEN_LEADER] = "leader",
	[PEN_TAG] = "tag",
	[PEN_SYMBOL] = "symbol",
	[PEN_SYMBOL_HEAVY] = "symbol-heavy",
	[PEN_SECTION] = "section",
	[PEN_SEEN] = "seen",
	[PEN_MATCH] = "match",
	[PEN_CLOUD] = "cloud",
	[PEN_WARNING] = "warning",
};

static const char *const area_names[AREA_COUNT] = {
	[AREA_PAPER] = "paper",
	[AREA_INK] = "ink",
	[AREA_SPOT] = "spot",
	[AREA_SHADE] = "shade",
	[AREA_HOLD] = "hold",
	[AREA_STRIP] = "strip",
	[AREA_STRIP_PENDING] = "strip-pending",
	[AREA_COVER] = "cover",
	[AREA_OBSTACLE] = "obstacle",
	[AREA_NOT_TILED] = "not-tiled",
	[AREA_CUT_TILE] = "cut-tile",
	[AREA_FIRST_TILE] = "first-tile",
	[AREA_CARRIED_JOINT] = "carried-joint",
	[AREA_CONCRETE] = "concrete",
	[AREA_MORTAR] = "mortar",
	[AREA_TILE_SECTION] = "tile-section",
	[AREA_BOND_COAT] = "bond-coat",
	[AREA_MEMBRANE] = "membrane",
	[AREA_SEALANT] = "sealant",
	[AREA_BACKER] = "backer",
};

static const char *const text_names[TEXT_ROLE_COUNT] = {
	[TEXT_TITLE] = "title",   [TEXT_HEADING] = "heading",     [TEXT_BODY] = "body",
	[TEXT_STRONG] = "strong", [TEXT_DIMENSION] = "dimension", [TEXT_TAG] = "tag",
	[TEXT_ROOM] = "room",     [TEXT_TABLE] = "table",         [TEXT_TABLE_HEAD] = "table-head",
	[TEXT_FRAME] = "frame",   [TEXT_WARNING] = "warning",
};

const char *layer_name(enum layer layer)
{
	return layer_names[layer];
}

const char *pen_name(enum pen pen)
{
	return pen_names[pen];
}

const char *area_name(enum area area)
{
	return area_names[area];
}

const char *text_role_name(enum text_role role)
{
	return text_names[role];
}

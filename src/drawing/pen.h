/* pen.h - what is drawn, by role: layers, pens, areas and texts.
 * How a role looks (width, dash, colour, hatch, height) is the style's alone (style.h). */
#ifndef DRAWING_PEN_H
#define DRAWING_PEN_H

/* From the bottom of the drawing to its top. */
enum layer {
	LAYER_SHEET,    /* frame, grid references, title block, tables */
	LAYER_SLAB,     /* walls, doorways, obstacles, slab joints */
	LAYER_CUTS,     /* cut tiles, edge of all tile */
	LAYER_MEMBRANE, /* strips, full coverage, pieces */
	LAYER_TILE,     /* joints between tiles */
	LAYER_CRACKS,
	LAYER_HOLDS,
	LAYER_JOINTS,  /* soft, movement, carried, perimeter */
	LAYER_CONTROL, /* control lines, first tile, work direction */
	LAYER_DIMENSIONS,
	LAYER_LABELS,  /* tags, leaders */
	LAYER_NOTES,   /* running text, stamps, warnings */
	LAYER_CHANGES, /* clouds round changes */
	LAYER_COUNT
};

enum pen {
	PEN_FRAME,      /* of the sheet */
	PEN_RULE_HEAVY, /* outer rules of tables and title block */
	PEN_RULE,       /* inner rules */
	PEN_WALL,       /* room outline: the heaviest line of a plan */
	PEN_WALL_OPEN,  /* open edge, doorway without a wall */
	PEN_DOOR,
	PEN_OBSTACLE,
	PEN_SLAB_JOINT,
	PEN_CRACK,
	PEN_CRACK_FINE, /* hairline, or a crack seen through tile */
	PEN_CRACK_PENDING,
	PEN_STRIP,
	PEN_STRIP_PENDING,
	PEN_STRIP_SEAM, /* between pieces of a strip */
	PEN_COVER,
	PEN_TILE, /* joints between tiles */
	PEN_CUT,  /* edge of all tile between walls and joints */
	PEN_FIRST_TILE,
	PEN_SOFT_JOINT,
	PEN_MOVEMENT_JOINT,
	PEN_CARRIED_JOINT,
	PEN_PERIMETER_JOINT,
	PEN_JOINT_PENDING,
	PEN_HOLD,
	PEN_CONTROL,
	PEN_DIMENSION, /* dimension and extension lines */
	PEN_TICK,
	PEN_LEADER,
	PEN_TAG,
	PEN_SYMBOL,
	PEN_SYMBOL_HEAVY,
	PEN_SECTION, /* cut edge in a detail */
	PEN_SEEN,    /* seen edge in a detail */
	PEN_MATCH,
	PEN_CLOUD,
	PEN_WARNING,
	PEN_COUNT
};

/* Areas: a hatch, a plain fill, or both. */
enum area {
	AREA_PAPER, /* white: what lies under is taken away */
	AREA_INK,   /* solid in the ink colour */
	AREA_SPOT,  /* solid in the spot colour */
	AREA_SHADE, /* table heads, key plan part */
	AREA_HOLD,
	AREA_STRIP,
	AREA_STRIP_PENDING,
	AREA_COVER,
	AREA_OBSTACLE,
	AREA_NOT_TILED,
	AREA_CUT_TILE,
	AREA_FIRST_TILE,
	AREA_CARRIED_JOINT,
	AREA_CONCRETE,
	AREA_MORTAR,
	AREA_TILE_SECTION,
	AREA_BOND_COAT,
	AREA_MEMBRANE,
	AREA_SEALANT,
	AREA_BACKER,
	AREA_COUNT
};

enum text_role {
	TEXT_TITLE, /* name of the sheet */
	TEXT_HEADING,
	TEXT_BODY,   /* notes a crew reads */
	TEXT_STRONG, /* body in bold */
	TEXT_DIMENSION,
	TEXT_TAG,
	TEXT_ROOM, /* name of a room */
	TEXT_TABLE,
	TEXT_TABLE_HEAD,
	TEXT_FRAME, /* grid references, size of the sheet */
	TEXT_WARNING,
	TEXT_ROLE_COUNT
};

/* Names as in styles, traces and SVG ids: `slab`, `tile-joint`, `strip-pending`. */
const char *layer_name(enum layer);
const char *pen_name(enum pen);
const char *area_name(enum area);
const char *text_role_name(enum text_role);

#endif

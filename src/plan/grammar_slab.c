/* The concrete: slabs, readings, cracks, slab joints. */
#include "plan/grammar_table.h"

static const char *const SUPPORTS[] = {"ground", "suspended", NULL};
static const char *const MOVINGS[] = {"unknown", "no", "yes", NULL};
static const char *const JOINT_KINDS[] = {"contraction", "construction", "isolation",
                                          "expansion",   "cold",         NULL};
static const char *const TREATS[] = {"carry", "relocate", NULL};
static const char *const READING_KINDS[] = {"humidity", "emission", "flatness", "drop", NULL};
static const char *const CEMENTS[] = {"S", "N", "R", NULL};
/* ---- slab and readings ---- */

static const struct grammar_attribute SLAB_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(slab, id), .required = true, .meaning = "name"},
	{"thickness", GRAMMAR_LENGTH, IN(slab, thickness_nm), .required = true,
         .range = GRAMMAR_POSITIVE, .meaning = "of the concrete"},
	{"support", GRAMMAR_WORD, IN(slab, support), .required = true, .words = SUPPORTS,
         .meaning = "what carries it"},
	{"exposure", GRAMMAR_WORD, IN(slab, exposure), .required = true, .words = grammar_exposures,
         .meaning = "what it is exposed to"},
	{"placed", GRAMMAR_DATE, IN(slab, placed),
         .meaning = "day of the pour; absent: age not known"},
	{"post-tensioned", GRAMMAR_YES_NO, IN(slab, post_tensioned), "no",
         .meaning = "has tendons under stress"},
	{"heated", GRAMMAR_YES_NO, IN(slab, heated), "no", .meaning = "has heating in or on it"},
	{"coldest", GRAMMAR_TEMPERATURE, IN(slab, coldest_c),
         .meaning = "lowest temperature in use"},
	{"hottest", GRAMMAR_TEMPERATURE, IN(slab, hottest_c),
         .meaning = "highest temperature in use"},
	{"strength", GRAMMAR_STRENGTH, IN(slab, strength_mpa), "25MPa", .range = GRAMMAR_POSITIVE,
         .meaning = "cylinder strength of the concrete"},
	{"cement", GRAMMAR_TEXT, IN(slab, cement), "N", .words = CEMENTS,
         .meaning = "class of its strength gain: slow, normal, rapid"},
	{"ambient", GRAMMAR_PERCENT, IN(slab, ambient_share), "60%", .range = GRAMMAR_PART,
         .meaning = "relative humidity of the air"},
	{"joints", GRAMMAR_LENGTH, IN(slab, joints_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "usual distance between slab joints"},
};
static const struct grammar_child SLAB_CORNERS_CHILDREN[] = {
	{&grammar_point, GRAMMAR_MANY, IN(slab, corners), IN(slab, corner_count), false},
};
static const struct grammar_element SLAB_CORNERS = {"corners", .children = SLAB_CORNERS_CHILDREN,
                                                    .child_count = 1,
                                                    .meaning = "the region this slab covers"};
static const struct grammar_child SLAB_CHILDREN[] = {
	{&SLAB_CORNERS, GRAMMAR_GROUP, 0, 0, false},
};
const struct grammar_element grammar_slab = {"slab",
                                             HEAD(slab),
                                             ROWS(SLAB_ATTRIBUTES),
                                             ROWS(SLAB_CHILDREN),
                                             .kind = PLAN_REF_SLAB,
                                             .meaning = "the concrete"};

static const struct grammar_attribute READING_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(reading, id), .required = true, .meaning = "name"},
	{"kind", GRAMMAR_WORD, IN(reading, kind), .required = true, .words = READING_KINDS,
         .meaning = "what was measured"},
	{"value", GRAMMAR_TEXT, IN(reading, value), .required = true, .meaning = "what it showed"},
	{"under", GRAMMAR_LENGTH, IN(reading, under_nm), .range = GRAMMAR_POSITIVE,
         .meaning = "length of the straightedge"},
	{"date", GRAMMAR_DATE, IN(reading, date), .meaning = "day of the reading"},
	{"room", GRAMMAR_REF, IN(reading, room), .ref_kind = PLAN_REF_ROOM, .meaning = "where"},
	{"x", GRAMMAR_LENGTH, IN(reading, at.x_nm), .meaning = "where"},
	{"y", GRAMMAR_LENGTH, IN(reading, at.y_nm), .meaning = "where"},
	{"wall", GRAMMAR_NAME, IN(reading, at.wall), .ref_kind = PLAN_REF_WALL, .meaning = "where"},
	{"along", GRAMMAR_LENGTH, IN(reading, at.along_nm), .meaning = "where"},
	{"out", GRAMMAR_LENGTH, IN(reading, at.out_nm), .meaning = "where"},
};
const struct grammar_element grammar_reading = {
	"reading", HEAD(reading), ROWS(READING_ATTRIBUTES), .kind = PLAN_REF_OTHER,
	.meaning = "measured on the slab before it is accepted"};

/* ---- cracks and slab joints ---- */

static const struct grammar_attribute CRACK_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(crack, id), .required = true, .meaning = "name"},
	{"width", GRAMMAR_LENGTH, IN(crack, width_nm), .required = true,
         .range = GRAMMAR_NOT_NEGATIVE, .meaning = "widest opening"},
	{"step", GRAMMAR_LENGTH, IN(crack, step_nm), "0", .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "height difference between its sides"},
	{"room", GRAMMAR_REF, IN(crack, room), .ref_kind = PLAN_REF_ROOM,
         .meaning = "default every room it crosses"},
	{"moving", GRAMMAR_WORD, IN(crack, moving), "unknown", .words = MOVINGS,
         .meaning = "whether it still moves"},
	{"wander", GRAMMAR_LENGTH, IN(crack, wander_nm), "12mm", "1/2in",
         .range = GRAMMAR_NOT_NEGATIVE, .meaning = "how far it may lie from the drawn line"},
	{"found", GRAMMAR_DATE, IN(crack, found), .meaning = "day on which it was found"},
	{"note", GRAMMAR_TEXT, IN(crack, note), .meaning = "anything to print"},
};
static const struct grammar_child CRACK_CHILDREN[] = {
	{&grammar_at, GRAMMAR_MANY, IN(crack, points), IN(crack, point_count), false},
};
const struct grammar_element grammar_crack = {"crack",
                                              HEAD(crack),
                                              ROWS(CRACK_ATTRIBUTES),
                                              ROWS(CRACK_CHILDREN),
                                              .kind = PLAN_REF_CRACK,
                                              .meaning = "a crack, two points or more"};

static const struct grammar_attribute SLAB_JOINT_ATTRIBUTES[] = {
	{"id", GRAMMAR_ID, IN(slab_joint, id), .required = true, .meaning = "name"},
	{"kind", GRAMMAR_WORD, IN(slab_joint, kind), .required = true, .words = JOINT_KINDS,
         .meaning = "what it is"},
	{"width", GRAMMAR_LENGTH, IN(slab_joint, width_nm), .required = true,
         .range = GRAMMAR_NOT_NEGATIVE, .meaning = "of the joint in the slab"},
	{"step", GRAMMAR_LENGTH, IN(slab_joint, step_nm), "0", .range = GRAMMAR_NOT_NEGATIVE,
         .meaning = "height difference between its sides"},
	{"treat", GRAMMAR_WORD, IN(slab_joint, treat), "carry", .words = TREATS,
         .meaning = "relocate: only a contraction joint, if maker and designer agree"},
};
static const struct grammar_child SLAB_JOINT_CHILDREN[] = {
	{&grammar_at, GRAMMAR_MANY, IN(slab_joint, points), IN(slab_joint, point_count), false},
};
const struct grammar_element grammar_slab_joint = {
	"slab-joint",
	HEAD(slab_joint),
	ROWS(SLAB_JOINT_ATTRIBUTES),
	ROWS(SLAB_JOINT_CHILDREN),
	.kind = PLAN_REF_SLAB_JOINT,
	.meaning = "a joint in the slab, two points or more"};

/* rule_names.h - the rules that the program raises; a table must give each of them. */
#ifndef RULES_RULE_NAMES_H
#define RULES_RULE_NAMES_H

#define RULE_NAMES(RULE)                                     \
	RULE(CRACK_STEP, "crack-step")                       \
	RULE(CRACK_MOVING, "crack-moving")                   \
	RULE(CRACK_WIDE, "crack-wide")                       \
	RULE(CRACK_TENSIONED, "crack-tensioned")             \
	RULE(CRACK_SUSPENDED, "crack-suspended")             \
	RULE(CRACK_FILL, "crack-fill")                       \
	RULE(CRACK_PLAIN, "crack-plain")                     \
	RULE(CRACK_UNCOVERED, "crack-uncovered")             \
	RULE(CRACK_BESIDE_JOINT, "crack-beside-joint")       \
	RULE(CRACK_MOVEMENT, "crack-movement")               \
	RULE(SOFT_JOINT_CAPACITY, "soft-joint-capacity")     \
	RULE(CRACKS_MANY, "cracks-many")                     \
	RULE(SOFT_PATH_RAGGED, "soft-path-ragged")           \
	RULE(SOFT_PATH_STEPPED, "soft-path-stepped")         \
	RULE(SLAB_YOUNG, "slab-young")                       \
	RULE(SLAB_AGE_UNKNOWN, "slab-age-unknown")           \
	RULE(SLAB_DAMP, "slab-damp")                         \
	RULE(SLAB_SEALED, "slab-sealed")                     \
	RULE(SLAB_UNEVEN, "slab-uneven")                     \
	RULE(READINGS_FEW, "readings-few")                   \
	RULE(JOINT_CARRIED, "joint-carried")                 \
	RULE(JOINT_WIDE, "joint-wide")                       \
	RULE(JOINT_STEP, "joint-step")                       \
	RULE(JOINT_CROOKED, "joint-crooked")                 \
	RULE(JOINT_RELOCATED, "joint-relocated")             \
	RULE(MOVEMENT_JOINT_NARROW, "movement-joint-narrow") \
	RULE(FIELD_JOINT_CUT, "field-joint-cut")             \
	RULE(FIELD_JOINT_STEPPED, "field-joint-stepped")     \
	RULE(FIELD_JOINT_MISSING, "field-joint-missing")     \
	RULE(COVER_UNAPPROVED, "cover-unapproved")           \
	RULE(NEED_UNMET, "need-unmet")                       \
	RULE(PARTIAL_WATERPROOF, "partial-waterproof")       \
	RULE(WATERPROOF_CUT, "waterproof-cut")               \
	RULE(TILE_SMALL, "tile-small")                       \
	RULE(TILE_UNEVEN, "tile-uneven")                     \
	RULE(FLOOR_RAISED, "floor-raised")                   \
	RULE(SHIFT_LARGE, "shift-large")                     \
	RULE(JOINT_NARROW, "joint-narrow")                   \
	RULE(CUT_SMALL, "cut-small")                         \
	RULE(FULL_AT_UNMET, "full-at-unmet")                 \
	RULE(CLOSING_ERROR, "closing-error")                 \
	RULE(OUT_OF_SQUARE, "out-of-square")                 \
	RULE(ANSWER_IDLE, "answer-idle")

enum rule_id {
#define RULE(id, name) RULE_##id,
	RULE_NAMES(RULE)
#undef RULE
		RULE_COUNT
};

#endif

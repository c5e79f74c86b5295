/* kinds.h - what a count counts: the kinds of its rows, in the order of the work.
 * A kind's name is the `what` of its rows, the same in every language, and the end of its
 * keys in the words table: count.what.NAME, count.how.NAME. */
#ifndef COUNT_KINDS_H
#define COUNT_KINDS_H

#define COUNT_KINDS(KIND)                                  \
	KIND(FIELD, "field")                               \
	KIND(TILE_WHOLE, "tile-whole")                     \
	KIND(TILE_CUT, "tile-cut")                         \
	KIND(HOLD, "hold")                                 \
	KIND(TILE_WHOLE_HELD, "tile-whole-held")           \
	KIND(TILE_CUT_HELD, "tile-cut-held")               \
	KIND(PATCH, "patch")                               \
	KIND(PATCH_VOLUME, "patch-volume")                 \
	KIND(STRIP, "membrane-strip")                      \
	KIND(STRIP_PENDING, "membrane-strip-pending")      \
	KIND(MEMBRANE_FULL, "membrane-full")               \
	KIND(MEMBRANE_ALTERNATE, "membrane-alternate")     \
	KIND(PRIMER, "primer")                             \
	KIND(MORTAR, "mortar")                             \
	KIND(MORTAR_BAG, "mortar-bag")                     \
	KIND(GROUT, "grout")                               \
	KIND(GROUT_BAG, "grout-bag")                       \
	KIND(JOINT_SOFT, "joint-soft")                     \
	KIND(JOINT_MOVEMENT, "joint-movement")             \
	KIND(JOINT_CARRIED, "joint-carried")               \
	KIND(JOINT_PERIMETER, "joint-perimeter")           \
	KIND(JOINT_PERIMETER_OPEN, "joint-perimeter-open") \
	KIND(SEALANT, "sealant")                           \
	KIND(SEALANT_TUBE, "sealant-tube")                 \
	KIND(SEALANT_SAUSAGE, "sealant-sausage")           \
	KIND(ROD, "rod")                                   \
	KIND(TAPE, "tape")

enum count_kind {
#define KIND(id, name) COUNT_##id,
	COUNT_KINDS(KIND)
#undef KIND
		COUNT_KIND_COUNT
};

const char *count_kind_name(enum count_kind);

#endif

/* kinds.h - what a count counts: the kinds of its rows, in the order of the work.
 * A kind's name is the `what` of its rows, the same in every language, and the end of its
 * keys in the words table: count.what.NAME, count.how.NAME. */
#ifndef COUNT_KINDS_H
#define COUNT_KINDS(KIND)                                  \
	KIND(FIELD, "field")                               \
	KIND(TILE_WHOLE, "tile-whole")                     \
	KIND(TILE_CUT, "tile-cut")                         \
	KIND(TILE_FOR_CUTS, "tile-for-cuts")               \
	KIND(TILE_BREAKAGE, "tile-breakage")               \
	KIND(TILE_ATTIC, "tile-attic")                     \
	KIND(TILE_BOUGHT, "tile-bought")                   \
	KIND(TILE_AREA, "tile-area")                       \
	KIND(TILE_BOX, "tile-box")                         \
	KIND(HOLD, "hold")                                 \
	KIND(TILE_WHOLE_HELD, "tile-whole-held")           \
	KIND(TILE_CUT_HELD, "tile-cut-held")               \
	KIND(CUT_STRAIGHT, "cutting-straight")             \
	KIND(CUT_TAPER, "cutting-taper")                   \
	KIND(CUT_NOTCH, "cutting-notch")                   \
	KIND(CUT_HOLE, "cutting-hole")                     \
	KIND(PATCH, "patch")                               \
	KIND(PATCH_VOLUME, "patch-volume")                 \
	KIND(PRIMER, "primer")                             \
	KIND(STRIP, "membrane-strip")                      \
	KIND(STRIP_PENDING, "membrane-strip-pending")      \
	KIND(STRIP_LENGTH, "membrane-strip-length")        \
	KIND(FEATHER, "feather")                           \
	KIND(MEMBRANE_FULL, "membrane-full")               \
	KIND(MEMBRANE_FILM, "membrane-film")               \
	KIND(MEMBRANE_PAIL, "membrane-pail")               \
	KIND(MEMBRANE_ROLL, "membrane-roll")               \
	KIND(FULL_AREA, "full-membrane")                   \
	KIND(FULL_FILM, "full-film")                       \
	KIND(FULL_PAIL, "full-pail")                       \
	KIND(FULL_ROLL, "full-roll")                       \
	KIND(MORTAR, "mortar")                             \
	KIND(MORTAR_BAG, "mortar-bag")                     \
	KIND(GROUT_AREA, "grout-area")                     \
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
	KIND(TAPE, "tape")                                 \
	KIND(PROFILE, "profile")                           \
	KIND(LABOUR, "labour")                             \
	KIND(WAIT, "wait")                                 \
	KIND(WAIT_DAYS, "wait-days")                       \
	KIND(PRICE_MATERIAL, "price-material")             \
	KIND(PRICE_LABOUR, "price-labour")                 \
	KIND(PRICE_MARKUP, "price-markup")                 \
	KIND(PRICE_TOTAL, "price-total")                   \
	KIND(PRICE_FULL, "price-full")

enum count_kind {
#define KIND(id, name) COUNT_##id,
	COUNT_KINDS(KIND)
#undef KIND
		COUNT_KIND_COUNT
};

const char *count_kind_name(enum count_kind);

#endif

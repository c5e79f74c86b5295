/* kinds.h - what a count counts: the kinds of its rows, in the order of the work.
 * A kind's name is the `what` of its rows, the same in every language, and the end of its
 * keys in the words table: count.what.NAME, count.how.NAME. The last is its source. */
#ifndef COUNT_KINDS_H
/* The source of what crews do and no text says. */
#define COUNT_COMMON_PRACTICE "common practice"

#define COUNT_KINDS(KIND)                                            \
	KIND(FIELD, "field", "")                                     \
	KIND(TILE_WHOLE, "tile-whole", "")                           \
	KIND(TILE_CUT, "tile-cut", "")                               \
	KIND(TILE_LAID, "tile-laid", "")                             \
	KIND(TILE_FOR_CUTS, "tile-for-cuts", "E-Q1")                 \
	KIND(TILE_BREAKAGE, "tile-breakage", "R-Q37")                \
	KIND(TILE_ATTIC, "tile-attic", "R-Q38")                      \
	KIND(TILE_BOUGHT, "tile-bought", "")                         \
	KIND(TILE_AREA, "tile-area", "")                             \
	KIND(TILE_BOX, "tile-box", "")                               \
	KIND(HOLD, "hold", "")                                       \
	KIND(TILE_WHOLE_HELD, "tile-whole-held", "")                 \
	KIND(TILE_CUT_HELD, "tile-cut-held", "")                     \
	KIND(CUT_STRAIGHT, "cutting-straight", "")                   \
	KIND(CUT_TAPER, "cutting-taper", "")                         \
	KIND(CUT_NOTCH, "cutting-notch", "")                         \
	KIND(CUT_HOLE, "cutting-hole", "")                           \
	KIND(PATCH, "patch", "")                                     \
	KIND(PATCH_VOLUME, "patch-volume", COUNT_COMMON_PRACTICE)    \
	KIND(PRIMER, "primer", "")                                   \
	KIND(STRIP, "membrane-strip", "")                            \
	KIND(STRIP_PENDING, "membrane-strip-pending", "")            \
	KIND(STRIP_LENGTH, "membrane-strip-length", "")              \
	KIND(FEATHER, "feather", "")                                 \
	KIND(MEMBRANE_FULL, "membrane-full", "")                     \
	KIND(MEMBRANE_FILM, "membrane-film", "R-Q18")                \
	KIND(MEMBRANE_PAIL, "membrane-pail", COUNT_COMMON_PRACTICE)  \
	KIND(MEMBRANE_ROLL, "membrane-roll", "R-Q16c")               \
	KIND(FULL_AREA, "full-membrane", "")                         \
	KIND(FULL_FILM, "full-film", "R-Q18")                        \
	KIND(FULL_PAIL, "full-pail", COUNT_COMMON_PRACTICE)          \
	KIND(FULL_ROLL, "full-roll", "R-Q16c")                       \
	KIND(FULL_LABOUR, "full-labour", "")                         \
	KIND(PARTIAL_STRIP, "partial-membrane", "")                  \
	KIND(PARTIAL_LENGTH, "partial-membrane-length", "")          \
	KIND(PARTIAL_FILM, "partial-film", "R-Q18")                  \
	KIND(PARTIAL_PAIL, "partial-pail", COUNT_COMMON_PRACTICE)    \
	KIND(PARTIAL_ROLL, "partial-roll", "R-Q16c")                 \
	KIND(PARTIAL_LABOUR, "partial-labour", "")                   \
	KIND(BED_MORTAR, "bed-mortar", "R-X3")                       \
	KIND(BED_MESH, "bed-mesh", "")                               \
	KIND(BED_CLEAVAGE, "bed-cleavage", "")                       \
	KIND(ADDED_HEIGHT, "added-height", "")                       \
	KIND(ADDED_WEIGHT, "added-weight", "R-X3")                   \
	KIND(MORTAR, "mortar", "")                                   \
	KIND(MORTAR_BAG, "mortar-bag", "R-Q12, R-Q13, R-Q14, R-Q16") \
	KIND(GROUT_AREA, "grout-area", "")                           \
	KIND(GROUT, "grout", "R-Q01")                                \
	KIND(GROUT_BAG, "grout-bag", "R-Q08")                        \
	KIND(JOINT_SOFT, "joint-soft", "")                           \
	KIND(JOINT_MOVEMENT, "joint-movement", "")                   \
	KIND(JOINT_CARRIED, "joint-carried", "")                     \
	KIND(JOINT_PERIMETER, "joint-perimeter", "")                 \
	KIND(JOINT_PERIMETER_OPEN, "joint-perimeter-open", "")       \
	KIND(SEALANT, "sealant", "R-Q25, R-Q29")                     \
	KIND(SEALANT_TUBE, "sealant-tube", "R-Q24")                  \
	KIND(SEALANT_SAUSAGE, "sealant-sausage", "R-Q28")            \
	KIND(ROD, "rod", "R-Q31, R-Q32")                             \
	KIND(TAPE, "tape", "")                                       \
	KIND(PROFILE, "profile", "")                                 \
	KIND(LABOUR, "labour", "")                                   \
	KIND(WAIT, "wait", "")                                       \
	KIND(WAIT_DAYS, "wait-days", "")                             \
	KIND(PRICE_MATERIAL, "price-material", "")                   \
	KIND(PRICE_LABOUR, "price-labour", "")                       \
	KIND(PRICE_MARKUP, "price-markup", "")                       \
	KIND(PRICE_TOTAL, "price-total", "")                         \
	KIND(PRICE_FULL, "price-full", "")                           \
	KIND(PRICE_PARTIAL, "price-partial", "")

enum count_kind {
#define KIND(id, name, source) COUNT_##id,
	COUNT_KINDS(KIND)
#undef KIND
		COUNT_KIND_COUNT
};

/* As drawn, or what might be laid instead: counted beside it and no part of the work. */
enum count_scheme { COUNT_AS_DRAWN, COUNT_FULL_INSTEAD, COUNT_STRIPS_INSTEAD, COUNT_SCHEMES };

const char *count_kind_name(enum count_kind);
/* Ids of docs/sources.md that its formula or waste rests on; "": it is measured. */
const char *count_kind_source(enum count_kind);
enum count_scheme count_kind_scheme(enum count_kind);

#endif

/* figures.h - the names of the figures that a table of rules must give, and what each is:
 * a LENGTH (mm once loaded), an AREA (mm2), a MASS (kg) or a bare NUMBER. What each is for
 * stands beside it in the table, with its source. */
#ifndef RULES_FIGURES_H
#define RULES_FIGURES_H

#define FIGURES(FIGURE)                                                          \
	FIGURE(STRIP_TILE_WIDTHS, "strip-tile-widths", NUMBER)                   \
	FIGURE(STRIP_STRAIGHT_TILE_WIDTHS, "strip-straight-tile-widths", NUMBER) \
	FIGURE(STRIP_STEP_INCH, "strip-step-inch", LENGTH)                       \
	FIGURE(STRIP_STEP_METRIC, "strip-step-metric", LENGTH)                   \
	FIGURE(STRIP_SEAM_CLEAR, "strip-seam-clear", LENGTH)                     \
	FIGURE(STRIP_BEYOND_SOFT, "strip-beyond-soft", LENGTH)                   \
	FIGURE(OVERRUN_LEAST, "overrun-least", LENGTH)                           \
	FIGURE(SOFT_TURN_PENALTY, "soft-turn-penalty", LENGTH)                   \
	FIGURE(STRIP_NEAR_TILES, "strip-near-tiles", NUMBER)                     \
	FIGURE(SOFT_LENGTH_RATIO, "soft-length-ratio", NUMBER)                   \
	FIGURE(SOFT_TURNS_MOST, "soft-turns-most", NUMBER)                       \
	FIGURE(HOLD_TILE_WIDTHS, "hold-tile-widths", NUMBER)                     \
	FIGURE(CARRIED_WIDTH_INDOOR, "carried-width-indoor", LENGTH)             \
	FIGURE(CARRIED_WIDTH_OUTDOOR, "carried-width-outdoor", LENGTH)           \
	FIGURE(FIELD_WIDTH_OUTDOOR, "field-width-outdoor", LENGTH)               \
	FIGURE(FIELD_SPACING_INDOOR, "field-spacing-indoor", LENGTH)             \
	FIGURE(FIELD_SPACING_SUNLIT, "field-spacing-sunlit", LENGTH)             \
	FIGURE(FIELD_SPACING_OUTDOOR, "field-spacing-outdoor", LENGTH)           \
	FIGURE(FIELD_SPACING_SUSPENDED, "field-spacing-suspended", LENGTH)       \
	FIGURE(FIELD_SPACING_HEATED, "field-spacing-heated", LENGTH)             \
	FIGURE(FIELD_SPACING_MORTAR_BED, "field-spacing-mortar-bed", LENGTH)     \
	FIGURE(CARRIED_COVER_WIDTH, "carried-cover-width", LENGTH)               \
	FIGURE(SEALANT_DEPTH_SHARE, "sealant-depth-share", NUMBER)               \
	FIGURE(SEALANT_DEPTH_LEAST, "sealant-depth-least", LENGTH)               \
	FIGURE(SEALANT_DEPTH_MOST, "sealant-depth-most", LENGTH)                 \
	FIGURE(ROD_OVERSIZE, "rod-oversize", LENGTH)                             \
	FIGURE(BOND_COAT, "bond-coat", LENGTH)                                   \
	FIGURE(CUT_SMALL_SHARE, "cut-small-share", NUMBER)                       \
	FIGURE(CUT_STEEP_SHARE, "cut-steep-share", NUMBER)                       \
	FIGURE(CUT_STEEP_FACTOR, "cut-steep-factor", NUMBER)                     \
	FIGURE(EDGE_WEIGHT_WALL, "edge-weight-wall", NUMBER)                     \
	FIGURE(EDGE_WEIGHT_HIDDEN, "edge-weight-hidden", NUMBER)                 \
	FIGURE(EDGE_WEIGHT_JAMB, "edge-weight-jamb", NUMBER)                     \
	FIGURE(EDGE_WEIGHT_CARRIED, "edge-weight-carried", NUMBER)               \
	FIGURE(EDGE_WEIGHT_OBSTACLE, "edge-weight-obstacle", NUMBER)             \
	FIGURE(PRINT_STEP_INCH, "print-step-inch", LENGTH)                       \
	FIGURE(PRINT_STEP_METRIC, "print-step-metric", LENGTH)                   \
	FIGURE(LARGE_TILE_SIDE, "large-tile-side", LENGTH)                       \
	FIGURE(JOINT_SPREAD_FACTOR, "joint-spread-factor", NUMBER)               \
	FIGURE(JOINT_OPEN_STEP, "joint-open-step", LENGTH)                       \
	FIGURE(JOINT_OPEN_MOST, "joint-open-most", LENGTH)                       \
	FIGURE(JOINT_RUNNING_RECTIFIED, "joint-running-rectified", LENGTH)       \
	FIGURE(JOINT_RUNNING_CALIBRATED, "joint-running-calibrated", LENGTH)     \
	FIGURE(CONTROL_CLEAR_SHARE, "control-clear-share", NUMBER)               \
	FIGURE(CONTROL_WALL_CLEAR, "control-wall-clear", LENGTH)                 \
	FIGURE(SQUARE_STEP_INCH, "square-step-inch", LENGTH)                     \
	FIGURE(SQUARE_STEP_METRIC, "square-step-metric", LENGTH)                 \
	FIGURE(ROD_WIDE_FROM, "rod-wide-from", LENGTH)                           \
	FIGURE(ROD_WIDE_SHARE, "rod-wide-share", NUMBER)                         \
	FIGURE(SEALANT_WASTE, "sealant-waste", NUMBER)                           \
	FIGURE(SEALANT_SAUSAGE_ML, "sealant-sausage-ml", NUMBER)                 \
	FIGURE(PATCH_DEPTH, "patch-depth", LENGTH)                               \
	FIGURE(GROUT_WASTE, "grout-waste", NUMBER)                               \
	FIGURE(MORTAR_NOTCH_SMALL, "mortar-notch-small", LENGTH)                 \
	FIGURE(MORTAR_NOTCH_MEDIUM, "mortar-notch-medium", LENGTH)               \
	FIGURE(MORTAR_COVERS_SMALL_SQFT, "mortar-covers-small-sqft", NUMBER)     \
	FIGURE(MORTAR_COVERS_MEDIUM_SQFT, "mortar-covers-medium-sqft", NUMBER)   \
	FIGURE(MORTAR_COVERS_LARGE_SQFT, "mortar-covers-large-sqft", NUMBER)     \
	FIGURE(MORTAR_SMALL_TILE, "mortar-small-tile", LENGTH)                   \
	FIGURE(SQUARE_MEANT_SLOPE, "square-meant-slope", NUMBER)                 \
	FIGURE(READING_AREA, "reading-area", AREA)                               \
	FIGURE(EMISSION_MOST, "emission-most", MASS)                             \
	FIGURE(FLAT_LONG_EDGE, "flat-long-edge", LENGTH)                         \
	FIGURE(FLAT_LONG, "flat-long", LENGTH)                                   \
	FIGURE(FLAT_LONG_LARGE, "flat-long-large", LENGTH)                       \
	FIGURE(FLAT_SHORT_EDGE, "flat-short-edge", LENGTH)                       \
	FIGURE(FLAT_SHORT_EDGE_LARGE, "flat-short-edge-large", LENGTH)           \
	FIGURE(FLAT_SHORT, "flat-short", LENGTH)                                 \
	FIGURE(SAW_KERF, "saw-kerf", LENGTH)                                     \
	FIGURE(TILE_BREAKAGE, "tile-breakage", NUMBER)                           \
	FIGURE(TILE_ATTIC, "tile-attic", NUMBER)                                 \
	FIGURE(FILM_WASTE, "film-waste", NUMBER)                                 \
	FIGURE(BED_DENSITY, "bed-density", NUMBER)                               \
	FIGURE(FIELD_CUT_TILE, "field-cut-tile", LENGTH)                         \
	FIGURE(TILE_EXPANSION, "tile-expansion", NUMBER)                         \
	FIGURE(WIDTH_RANGE, "width-range", NUMBER)                               \
	FIGURE(WIDTH_RANGE_STEP, "width-range-step", NUMBER)                     \
	FIGURE(WIDTH_RANGE_INCREMENT, "width-range-increment", LENGTH)           \
	FIGURE(FIELD_WIDTH_STEP, "field-width-step", LENGTH)                     \
	FIGURE(LIPPAGE_JOINT, "lippage-joint", LENGTH)                           \
	FIGURE(LIPPAGE_NARROW, "lippage-narrow", LENGTH)                         \
	FIGURE(LIPPAGE_WIDE, "lippage-wide", LENGTH)                             \
	FIGURE(LIPPAGE_WARPAGE, "lippage-warpage", NUMBER)                       \
	FIGURE(CALIBRE_SHARE, "calibre-share", NUMBER)                           \
	FIGURE(CALIBRE_MOST, "calibre-most", LENGTH)                             \
	FIGURE(VACUUM_PER_INCH, "vacuum-per-inch", NUMBER)                       \
	FIGURE(GRINDER_WHEEL, "grinder-wheel", NUMBER)                           \
	FIGURE(CONCRETE_EXPANSION, "concrete-expansion", NUMBER)                 \
	FIGURE(WARMING_INDOOR, "warming-indoor", NUMBER)                         \
	FIGURE(WARMING_HEATED, "warming-heated", NUMBER)                         \
	FIGURE(WARMING_SUNLIT, "warming-sunlit", NUMBER)                         \
	FIGURE(WARMING_OUTDOOR, "warming-outdoor", NUMBER)

enum figure {
#define FIGURE(id, name, kind) FIGURE_##id,
	FIGURES(FIGURE)
#undef FIGURE
		FIGURE_COUNT
};

#endif

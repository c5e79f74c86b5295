/* figures.h - the names of the figures that a table of rules must give.
 * Lengths are mm unless the name ends in a unit. What each is for stands beside it in
 * the table, with its source. */
#ifndef RULES_FIGURES_H
#define RULES_FIGURES_H

#define FIGURES(FIGURE)                                                       \
	FIGURE(STRIP_TILE_WIDTHS, "strip-tile-widths")                        \
	FIGURE(STRIP_STEP_INCH, "strip-step-inch")                            \
	FIGURE(STRIP_STEP_METRIC, "strip-step-metric")                        \
	FIGURE(STRIP_SEAM_CLEAR, "strip-seam-clear")                          \
	FIGURE(STRIP_BEYOND_SOFT, "strip-beyond-soft")                        \
	FIGURE(OVERRUN_LEAST, "overrun-least")                                \
	FIGURE(SOFT_TURN_PENALTY, "soft-turn-penalty")                        \
	FIGURE(HOLD_TILE_WIDTHS, "hold-tile-widths")                          \
	FIGURE(CARRIED_WIDTH_INDOOR, "carried-width-indoor")                  \
	FIGURE(CARRIED_WIDTH_OUTDOOR, "carried-width-outdoor")                \
	FIGURE(CARRIED_COVER_WIDTH, "carried-cover-width")                    \
	FIGURE(SEALANT_DEPTH_SHARE, "sealant-depth-share")                    \
	FIGURE(SEALANT_DEPTH_LEAST, "sealant-depth-least")                    \
	FIGURE(SEALANT_DEPTH_MOST, "sealant-depth-most")                      \
	FIGURE(ROD_OVERSIZE, "rod-oversize")                                  \
	FIGURE(BOND_COAT, "bond-coat")                                        \
	FIGURE(CUT_SMALL_SHARE, "cut-small-share")                            \
	FIGURE(CUT_STEEP_SHARE, "cut-steep-share")                            \
	FIGURE(CUT_STEEP_FACTOR, "cut-steep-factor")                          \
	FIGURE(EDGE_WEIGHT_WALL, "edge-weight-wall")                          \
	FIGURE(EDGE_WEIGHT_HIDDEN, "edge-weight-hidden")                      \
	FIGURE(EDGE_WEIGHT_JAMB, "edge-weight-jamb")                          \
	FIGURE(EDGE_WEIGHT_CARRIED, "edge-weight-carried")                    \
	FIGURE(EDGE_WEIGHT_OBSTACLE, "edge-weight-obstacle")                  \
	FIGURE(PRINT_STEP_INCH, "print-step-inch")                            \
	FIGURE(PRINT_STEP_METRIC, "print-step-metric")                        \
	FIGURE(CONTROL_CLEAR_SHARE, "control-clear-share")                    \
	FIGURE(CONTROL_WALL_CLEAR, "control-wall-clear")

enum figure {
#define FIGURE(id, name) FIGURE_##id,
	FIGURES(FIGURE)
#undef FIGURE
	FIGURE_COUNT
};

#endif

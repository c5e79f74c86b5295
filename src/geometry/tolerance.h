/* tolerance.h - every tolerance of the geometry, in one place, each with its reason.
 * Units: mm unless the name says otherwise. */
#ifndef GEOMETRY_TOLERANCE_H
#define GEOMETRY_TOLERANCE_H

/* Two computed points nearer than this are the same point: far above what doubles
 * lose at 20 km (4e-9), far below anything a record prints (1e-6). */
#define TOLERANCE_SAME 1e-7
/* A face that leaves its panel by no more than this is whole: half of what a rubber
 * tile spacer varies. Fixed by docs/engine contract "whole". */
#define TOLERANCE_WHOLE 0.05
/* A piece that holds no disc of this diameter is dust, not tile. */
#define TOLERANCE_DUST 0.5
/* Longest distance between an arc and the polygon drawn for it. */
#define TOLERANCE_SAGITTA 0.1
/* Lines within this slope are parallel for a setter (1 in 500). */
#define TOLERANCE_PARALLEL 0.002
/* Sine of the angle to the tile beyond which a border is no wall out of square but runs at a
 * slant, and each tile is cut on the spot: 4.6 degrees, own choice, more than a room is out of
 * square by. */
#define TOLERANCE_SQUARE 0.08
/* Points that lie apart by no more than this along an axis lie level, ends of a wall first:
 * points of a plan are whole nanometres, so a wall along an axis that is askew on its paper is
 * off by them; far below what a cut is told to. */
#define TOLERANCE_LEVEL 1e-4
/* Areas below this are rounding of the overlay, not ground (mm2). */
#define TOLERANCE_AREA_MM2 1e-4
/* Two answers of a set operation that differ by more than this are two (mm2): what areas must
 * agree to. */
#define TOLERANCE_DOUBT_MM2 1.0
/* An edge of the floor that runs this near a wall (moved by its gap) is of that wall: far
 * above what set operations round, far below the shortest wall. */
#define TOLERANCE_ORIGIN 1e-3
/* Sine of a turn below which two edges run straight on and leave no corner: at a wall of
 * 100 m a corner would stand off by TOLERANCE_SAME. */
#define TOLERANCE_STRAIGHT 1e-9
/* Cuts, and positions of the lattice, nearer than this lay the same: a whole tile is no cut of a
 * hair less. Points of a plan are whole nanometres: of a plan turned on its paper each is off by
 * some of them. */
#define TOLERANCE_CUT 1e-5
/* Sums of a position's key nearer than this are equal: what TOLERANCE_CUT makes of the penalty
 * of small cuts along walls of a hundred metres, in mm. */
#define TOLERANCE_KEY 1e-3
/* Share of a side within which a place on it is the side's end; a metre's side: a hundredth
 * of TOLERANCE_SAME. */
#define TOLERANCE_SHARE 1e-9
/* Share of a side by which rounding may put the next crossing on a border behind the last
 * one: above TOLERANCE_SHARE, far below any two crossings that are two. */
#define TOLERANCE_BEHIND 1e-7
/* Share of a period within which a place counts as whole periods away: the last bits of a
 * division. */
#define TOLERANCE_PERIOD 1e-12
/* Steps a mm that computed borders are rounded to: coarser than the last bits that differ
 * between processors, a thousand times finer than a record prints, and lengths read from a
 * plan (whole nanometres) lie on them. */
#define TOLERANCE_STEPS_PER_MM 1e9
/* Steps a mm that the corners of cells are rounded to, so that neighbours share one corner,
 * whichever it is computed from: a power of two, finer than a record prints, so coarse that the
 * last bits of a sum hardly ever lie on two sides of a step. */
#define TOLERANCE_CORNER_STEPS_PER_MM 16777216.0
/* A number of tiles, rolls or bags that is over a whole one by less than this is the whole
 * one: last bits buy nothing. */
#define TOLERANCE_COUNT 1e-6

#endif

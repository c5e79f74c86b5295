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
/* Areas below this are rounding of the overlay, not ground (mm2). */
#define TOLERANCE_AREA_MM2 1e-4

#endif

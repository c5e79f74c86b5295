/* symbol.h - the drawing language's own marks, composed of ordinary ops.
 * Units: paper mm. */
#ifndef DRAWING_SYMBOL_H
#define DRAWING_SYMBOL_H
#include "drawing/list.h"

/* Needle to plan north (a paper direction) with `letter` beyond its tip; `radius` about 8. */
void symbol_north(struct list *, struct paper_point centre, double radius, struct paper_point north,
                  const char *letter);
/* Divided bar: `count` fields of `floor_step` at `scale`, marks[0..count] under the ticks. */
void symbol_scale_bar(struct list *, struct paper_point left, double floor_step, double scale,
                      int count, const char *const *marks);
/* Arrow of work, tail at `at`. */
void symbol_arrow(struct list *, enum layer, const char *element, struct paper_point at,
                  struct paper_point direction, double length);
/* End mark of a control line: a target, half black. Gives its middle. */
struct paper_point symbol_control_end(struct list *, const char *element, struct paper_point at,
                                      struct paper_point outward);
/* Half-filled square by a crack whose sides differ in height. */
void symbol_step(struct list *, const char *element, struct paper_point at,
                 struct paper_point low_side);
/* Short bars across a crack that is filled flush: the patch. */
void symbol_fill(struct list *, const char *element, struct paper_path crack);
/* Place of a reading: cross in a circle, filled when it fails. */
void symbol_reading(struct list *, const char *element, struct paper_point at, bool fails);
/* Swatch of a hatch or fill for a legend; framed thinly. */
void symbol_swatch_area(struct list *, struct paper_box, enum area, enum pen outline);
void symbol_swatch_pen(struct list *, struct paper_box, enum pen);

#endif

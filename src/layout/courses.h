/* courses.h - how many courses of tile lie between a control line and a joint beside it, as a
 * crew counts them: over field joints too, which move the tile and add no course.
 * Units: mm in the lay's own axes. Source: contract, "Control lines". */
#ifndef LAYOUT_COURSES_H
#define LAYOUT_COURSES_H
#include "geometry/segment.h"
#include "layout/controls.h"

/* Courses (along_u), or tiles of a course, from the edge at the crossing of the control lines
 * to the row's border that lies in the joint, `width` wide; false: the run is not along the
 * control line, or on no border of a row; or the pattern has no
 * courses. */
bool courses_between(const struct tiling *, const struct first_tile *, bool along_u,
                     struct segment run, double width, long *out_count);

#endif

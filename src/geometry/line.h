/* line.h - open lines through points.
 * Units: mm. By value; nothing is owned and nothing fails. */
#ifndef GEOMETRY_LINE_H
#define GEOMETRY_LINE_H
#include "geometry/point.h"

double line_length(struct line);
double line_length_of_all(const struct line *lines, size_t count);
/* Least distance between two; infinite where one has fewer than two points. */
double line_gap(struct line, struct line);

#endif

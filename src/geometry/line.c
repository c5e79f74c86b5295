#include "geometry/line.h"

double line_length(struct line line)
{
	double length = 0;
	for (size_t i = 0; i + 1 < line.count; i++)
		length += point_distance(line.points[i], line.points[i + 1]);
	return length;
}

double line_length_of_all(const struct line *lines, size_t count)
{
	double length = 0;
	for (size_t i = 0; i < count; i++)
		length += line_length(lines[i]);
	return length;
}

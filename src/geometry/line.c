#include "geometry/line.h"

#include "geometry/segment.h"

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

double line_gap(struct line a, struct line b)
{
	double least = INFINITY;
	for (size_t i = 0; i + 1 < a.count; i++)
		for (size_t k = 0; k + 1 < b.count; k++) {
			struct segment one = {a.points[i], a.points[i + 1]};
			struct segment other = {b.points[k], b.points[k + 1]};
			least = fmin(least, segment_gap(one, other));
		}
	return least;
}

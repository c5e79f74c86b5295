#include "layout/movement_beside.h"

#include <stdlib.h>

#include "geometry/tolerance.h"

static int lowest_first(const void *a, const void *b)
{
	double x = ((const struct movement_reach *)a)->from;
	double y = ((const struct movement_reach *)b)->from;
	return x < y ? -1 : x > y;
}

static double across(struct point p, bool along_u)
{
	return along_u ? p.y : p.x;
}

/* The field lies to the left of its border: on that side a row of half a tile is left. */
static struct movement_reach reach_of(const struct field_border *border, bool along_u, double width,
                                      double row)
{
	double from = across(border->from, along_u), to = across(border->to, along_u);
	struct point way = point_sub(border->to, border->from);
	bool is_field_ahead = along_u ? way.x > 0 : way.y < 0;
	double before = is_field_ahead ? -TOLERANCE_WHOLE : row,
	       after = is_field_ahead ? row : -TOLERANCE_WHOLE;
	return (struct movement_reach){fmin(from, to) - width / 2 - before,
	                               fmax(from, to) + width / 2 + after};
}

struct movement_beside movement_beside_of(struct arena *arena, const struct field *field,
                                          size_t part, bool along_u, double width, double row)
{
	struct movement_beside beside = {
		.reaches = ARENA_ARRAY(arena, struct movement_reach, field->border_count)};
	for (size_t i = 0; i < field->border_count; i++) {
		const struct field_border *border = &field->borders[i];
		double taper = across(border->to, along_u) - across(border->from, along_u);
		if (border->part != part || fabs(taper) > width)
			continue;
		struct movement_reach reach =
			reach_of(border, along_u, width, row - TOLERANCE_WHOLE);
		beside.longest = fmax(beside.longest, reach.to - reach.from);
		beside.reaches[beside.count++] = reach;
	}
	if (beside.count)
		qsort(beside.reaches, beside.count, sizeof *beside.reaches, lowest_first);
	return beside;
}

size_t movement_beside_count(const struct movement_beside *beside, double centre)
{
	size_t low = 0, high = beside->count, found = 0;
	while (low < high) {
		size_t middle = low + (high - low) / 2;
		if (beside->reaches[middle].from < centre - beside->longest)
			low = middle + 1;
		else
			high = middle;
	}
	for (size_t i = low; i < beside->count && beside->reaches[i].from < centre; i++)
		found += beside->reaches[i].to > centre;
	return found;
}

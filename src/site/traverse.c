#include "site/traverse.h"

#include "geometry/frame.h"

double *traverse_headings(struct arena *arena, double first_deg, const double *turns_deg,
                          size_t count)
{
	double *headings = ARENA_ARRAY(arena, double, count);
	double heading = first_deg;
	for (size_t i = 0; i < count; i++) {
		headings[i] = heading;
		heading += turns_deg[i];
	}
	return headings;
}

/* Where each leg begins when nothing is corrected, and after them where the last one ends. */
static struct point *walk(struct arena *arena, const struct traverse *run)
{
	struct point *stations = ARENA_ARRAY(arena, struct point, run->count + 1);
	stations[0] = run->start;
	for (size_t i = 0; i < run->count; i++) {
		struct frame heading = frame_from_deg(run->headings_deg[i]);
		struct point leg = {heading.cos * run->lengths[i], heading.sin * run->lengths[i]};
		stations[i + 1] = point_add(stations[i], leg);
	}
	return stations;
}

struct traverse_closing traverse_close(struct arena *arena, const struct traverse *run)
{
	struct traverse_closing closing = {.corners = walk(arena, run)};
	for (size_t i = 0; i < run->count; i++)
		closing.perimeter += run->lengths[i];
	closing.error = point_sub(closing.corners[run->count], run->start);
	closing.error_length = point_length(closing.error);

	double walked = 0;
	for (size_t i = 1; i < run->count; i++) {
		walked += run->lengths[i - 1];
		struct point share = point_scale(closing.error, walked / closing.perimeter);
		closing.corners[i] = point_sub(closing.corners[i], share);
	}
	return closing;
}

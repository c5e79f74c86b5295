#include "count/room_shares.h"

#include <string.h>

#include "geometry/clip.h"
#include "geometry/overlay.h"

/* mm, mm2: the last place that a count prints; less would read 0.00. */
static const double LEAST_LENGTH = 10, LEAST_AREA = 1e4;

size_t room_shares_greatest(const struct field *field, const double *shares)
{
	size_t most = 0;
	for (size_t r = 1; r < field->room_count; r++)
		if (shares[r] > shares[most])
			most = r;
	return most;
}

/* Small ones, and what rounding left over, go with the greatest. */
static const double *settled(const struct field *field, double *shares, double total, double least)
{
	size_t most = room_shares_greatest(field, shares);
	shares[most] = total;
	for (size_t r = 0; r < field->room_count; r++) {
		if (r == most)
			continue;
		if (shares[r] < least)
			shares[r] = 0;
		shares[most] -= shares[r];
	}
	return shares;
}

/* Along a border that two rooms share a line is of the first. */
static double length_in_room(const struct field *field, size_t room, struct line run)
{
	double length = 0;
	for (size_t k = 1; k < run.count; k++) {
		struct point a = run.points[k - 1], b = run.points[k];
		if (field_room_at(field, point_between(a, b, 0.5)) == room)
			length += point_distance(a, b);
	}
	return length;
}

static void add_line(struct arena *arena, const struct field *field, struct line line,
                     double *shares)
{
	for (size_t r = 0; r < field->room_count; r++) {
		size_t count;
		const struct line *runs = clip_line(arena, line, &field->room_grounds[r], &count);
		for (size_t i = 0; i < count; i++)
			shares[r] += length_in_room(field, r, runs[i]);
	}
}

static struct line closed_line(struct arena *arena, struct line line)
{
	struct point *points = ARENA_ARRAY(arena, struct point, line.count + 1);
	memcpy(points, line.points, line.count * sizeof *points);
	points[line.count] = points[0];
	return (struct line){points, line.count + 1};
}

const double *room_shares_of_lines(struct arena *arena, const struct field *field,
                                   const struct line *lines, size_t count, double length)
{
	double *shares = ARENA_ARRAY(arena, double, field->room_count);
	for (size_t i = 0; i < count && field->room_count > 1; i++)
		add_line(arena, field, lines[i], shares);
	return settled(field, shares, length, LEAST_LENGTH);
}

const double *room_shares_of_line(struct arena *arena, const struct field *field, struct line line,
                                  bool is_closed, double length)
{
	struct line whole = is_closed ? closed_line(arena, line) : line;
	return room_shares_of_lines(arena, field, &whole, 1, length);
}

static double area_in_room(struct arena *arena, const struct field *field, size_t room,
                           const struct region *region)
{
	struct region own = overlay_intersection(arena, region, &field->room_grounds[room]);
	return region_area(&own);
}

const double *room_shares_of_region(struct arena *arena, const struct field *field,
                                    const struct region *region)
{
	double *shares = ARENA_ARRAY(arena, double, field->room_count);
	for (size_t r = 0; r < field->room_count && field->room_count > 1; r++)
		shares[r] = area_in_room(arena, field, r, region);
	return settled(field, shares, region_area(region), LEAST_AREA);
}

const double *room_shares_of_field(struct arena *arena, const struct field *field)
{
	double *shares = ARENA_ARRAY(arena, double, field->room_count);
	for (size_t r = 0; r < field->room_count && field->room_count > 1; r++)
		shares[r] = area_in_room(arena, field, r, &field->region);
	return settled(field, shares, field->area_mm2, 0);
}

const double *room_shares_scaled(struct arena *arena, const struct field *field,
                                 const double *shares, double total)
{
	double *scaled = ARENA_ARRAY(arena, double, field->room_count), sum = 0;
	for (size_t r = 0; r < field->room_count; r++)
		sum += shares[r];
	for (size_t r = 0; r < field->room_count && sum > 0; r++)
		scaled[r] = total * (shares[r] / sum);
	return settled(field, scaled, total, 0);
}

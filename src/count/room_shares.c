#include "count/room_shares.h"

#include <stdlib.h>
#include <string.h>

#include "base/array.h"
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

static int by_value(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return x < y ? -1 : x > y;
}

/* Where a segment comes from one room's ground into another's, its own ends included, rising. */
static double *changes_of(struct arena *arena, const struct field *field, struct segment segment,
                          size_t *out_count)
{
	ARRAY_OF(double) shares = {0};
	*array_push(arena, &shares) = 0;
	*array_push(arena, &shares) = 1;
	for (size_t r = 0; r < field->room_count; r++) {
		size_t count;
		const struct stretch *on =
			clip_segment(arena, segment, &field->room_grounds[r], &count);
		for (size_t k = 0; k < count; k++) {
			*array_push(arena, &shares) = on[k].from;
			*array_push(arena, &shares) = on[k].to;
		}
	}
	qsort(shares.items, shares.count, sizeof *shares.items, by_value);
	*out_count = shares.count;
	return shares.items;
}

static void add_line(struct arena *arena, const struct field *field, struct line line,
                     double *shares)
{
	for (size_t k = 1; k < line.count; k++) {
		struct segment segment = {line.points[k - 1], line.points[k]};
		size_t count;
		const double *at = changes_of(arena, field, segment, &count);
		for (size_t i = 1; i < count; i++) {
			double middle = (at[i - 1] + at[i]) / 2;
			size_t room = field_room_at(field, point_between(segment.from, segment.to,
			                                                 middle));
			shares[room] += (at[i] - at[i - 1]) * segment_length(segment);
		}
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

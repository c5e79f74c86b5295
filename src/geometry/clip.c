#include "geometry/clip.h"

#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "geometry/tolerance.h"

struct shares {
	ARRAY_OF(double) items;
};

static int by_value(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return x < y ? -1 : x > y;
}

static struct box box_of(struct segment segment)
{
	return box_with(box_with(box_empty(), segment.from), segment.to);
}

static void add_crossings(struct arena *arena, struct shares *shares, struct segment segment,
                          struct ring ring)
{
	struct box near = box_grown(box_of(segment), TOLERANCE_SAME);
	for (size_t i = 0; i < ring.count; i++) {
		struct segment side = segment_of_ring(ring, i);
		double share;
		if (box_meets(near, box_of(side)) && segment_crossing(segment, side, &share))
			*array_push(arena, &shares->items) = share;
	}
}

/* Shares at which the segment may change sides, its own ends included, rising. */
static struct shares shares_of(struct arena *arena, struct segment segment,
                               const struct region *region)
{
	struct shares shares = {0};
	*array_push(arena, &shares.items) = 0;
	*array_push(arena, &shares.items) = 1;
	for (size_t p = 0; p < region->count; p++) {
		const struct polygon *polygon = &region->polygons[p];
		add_crossings(arena, &shares, segment, polygon->outline);
		for (size_t h = 0; h < polygon->hole_count; h++)
			add_crossings(arena, &shares, segment, polygon->holes[h]);
	}
	qsort(shares.items.items, shares.items.count, sizeof(double), by_value);
	return shares;
}

static bool is_in(const struct region *region, struct point p)
{
	return region_holds(region, p) || region_distance(region, p) < TOLERANCE_SAME;
}

struct stretch *clip_segment(struct arena *arena, struct segment segment,
                             const struct region *region, size_t *out_count)
{
	ARRAY_OF(struct stretch) stretches = {0};
	double length = segment_length(segment);
	struct shares shares = shares_of(arena, segment, region);
	for (size_t k = 0; k + 1 < shares.items.count; k++) {
		double from = shares.items.items[k], to = shares.items.items[k + 1];
		if ((to - from) * length < TOLERANCE_SAME ||
		    !is_in(region, point_between(segment.from, segment.to, (from + to) / 2)))
			continue;
		struct stretch *last =
			stretches.count ? &stretches.items[stretches.count - 1] : NULL;
		if (last && (from - last->to) * length < TOLERANCE_SAME)
			last->to = to;
		else
			*array_push(arena, &stretches) = (struct stretch){from, to};
	}
	*out_count = stretches.count;
	return stretches.items;
}

bool clip_holds(struct arena *arena, struct segment segment, const struct region *region)
{
	size_t count;
	const struct stretch *stretches = clip_segment(arena, segment, region, &count);
	double length = segment_length(segment);
	return count == 1 && stretches[0].from * length < TOLERANCE_SAME &&
	       (1 - stretches[0].to) * length < TOLERANCE_SAME;
}

/* The segment's own ends as they are, to the last bit. */
static struct point at_share(struct segment segment, double share)
{
	if (share <= 0)
		return segment.from;
	return share >= 1 ? segment.to : point_between(segment.from, segment.to, share);
}

/* A part that is being put together, and those finished before it. */
struct parts {
	ARRAY_OF(struct line) done;
	ARRAY_OF(struct point) points;
};

static void end_part(struct arena *arena, struct parts *parts)
{
	if (parts->points.count > 0)
		*array_push(arena, &parts->done) =
			(struct line){parts->points.items, parts->points.count};
	memset(&parts->points, 0, sizeof parts->points);
}

static void add_stretch(struct arena *arena, struct parts *parts, struct point from,
                        struct point to)
{
	size_t count = parts->points.count;
	if (count == 0 || point_distance(parts->points.items[count - 1], from) > TOLERANCE_SAME) {
		end_part(arena, parts);
		*array_push(arena, &parts->points) = from;
	}
	*array_push(arena, &parts->points) = to;
}

struct line *clip_line(struct arena *arena, struct line line, const struct region *region,
                       size_t *out_count)
{
	struct parts parts = {0};
	for (size_t i = 0; i + 1 < line.count; i++) {
		struct segment segment = {line.points[i], line.points[i + 1]};
		size_t count;
		struct stretch *on = clip_segment(arena, segment, region, &count);
		for (size_t k = 0; k < count; k++)
			add_stretch(arena, &parts, at_share(segment, on[k].from),
			            at_share(segment, on[k].to));
	}
	end_part(arena, &parts);
	*out_count = parts.done.count;
	return parts.done.items;
}

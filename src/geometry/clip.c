#include "geometry/clip.h"

#include <stdlib.h>

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

static void add_crossings(struct arena *arena, struct shares *shares, struct segment segment,
                          struct ring ring)
{
	for (size_t i = 0; i < ring.count; i++) {
		double share;
		if (segment_crossing(segment, segment_of_ring(ring, i), &share))
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

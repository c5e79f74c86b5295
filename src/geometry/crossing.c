#include "geometry/crossing.h"

#include <stdint.h>
#include <stdlib.h>

#include "geometry/segment.h"
#include "geometry/tolerance.h"

struct side {
	struct segment segment;
	double low, high;   /* reach along the longer way of all, grown by the tolerance */
	size_t index, next; /* next: the side that starts where this one ends */
};

static int lowest_first(const void *a, const void *b)
{
	const struct side *s = a, *t = b;
	if (s->low != t->low)
		return s->low < t->low ? -1 : 1;
	return s->index < t->index ? -1 : s->index > t->index;
}

static bool is_tall(struct box box)
{
	return box.y1 - box.y0 > box.x1 - box.x0;
}

/* The first `count` sides of a ring whose first side is number `first`. */
static void list_sides(struct side *sides, struct ring ring, size_t count, size_t first,
                       bool upright)
{
	for (size_t i = 0; i < count; i++) {
		struct segment s = segment_of_ring(ring, i);
		double from = upright ? s.from.y : s.from.x, to = upright ? s.to.y : s.to.x;
		size_t next = i + 1 < ring.count ? i + 1 : 0;
		sides[i] = (struct side){s, fmin(from, to) - TOLERANCE_SAME,
		                         fmax(from, to) + TOLERANCE_SAME, first + i, first + next};
	}
}

/* `b` starts where `a` ends: do they share more than that corner? */
static bool runs_back(struct segment a, struct segment b)
{
	struct segment back = {a.to, a.from};
	struct segment shorter = segment_length(back) < segment_length(b) ? back : b;
	struct segment longer = segment_length(back) < segment_length(b) ? b : back;
	return segment_distance(longer, shorter.to) < TOLERANCE_SAME;
}

static bool is_meeting(const struct side *a, const struct side *b)
{
	if (a->next == b->index)
		return runs_back(a->segment, b->segment);
	if (b->next == a->index)
		return runs_back(b->segment, a->segment);
	return segment_meets(a->segment, b->segment);
}

static bool is_sooner(struct crossing a, struct crossing b)
{
	return a.second != b.second ? a.second < b.second : a.first < b.first;
}

/* Puts the sides in the order of their low ends. */
static struct crossing soonest_of(struct side *sides, size_t count)
{
	struct crossing soonest = {SIZE_MAX, SIZE_MAX};
	qsort(sides, count, sizeof *sides, lowest_first);
	for (size_t i = 0; i < count; i++) {
		for (size_t k = i + 1; k < count && sides[k].low <= sides[i].high; k++) {
			bool in_order = sides[i].index < sides[k].index;
			const struct side *a = in_order ? &sides[i] : &sides[k];
			const struct side *b = in_order ? &sides[k] : &sides[i];
			struct crossing here = {a->index, b->index};
			if (is_sooner(here, soonest) && is_meeting(a, b))
				soonest = here;
		}
	}
	return soonest;
}

/* Twice as many sides each time: of a line wound up on itself only the first turns are looked at,
 * where all of it would take a time that grows with its square. */
bool crossing_find(struct arena *arena, struct ring ring, struct crossing *out_crossing)
{
	static const size_t FIRST_SIDES = 64;
	struct side *sides = ARENA_ARRAY(arena, struct side, ring.count);
	size_t count = ring.count < FIRST_SIDES ? ring.count : FIRST_SIDES;
	for (;;) {
		list_sides(sides, ring, count, 0, is_tall(ring_box(ring)));
		*out_crossing = soonest_of(sides, count);
		if (out_crossing->second < ring.count || count == ring.count)
			return out_crossing->second < ring.count;
		count = 2 * count < ring.count ? 2 * count : ring.count;
	}
}

bool crossing_in_region(struct arena *arena, const struct region *region)
{
	size_t rings = region_ring_count(region), count = 0;
	bool upright = is_tall(region_box(region));
	for (size_t r = 0; r < rings; r++)
		count += region_ring(region, r).count;
	struct side *sides = ARENA_ARRAY(arena, struct side, count);
	count = 0;
	for (size_t r = 0; r < rings; r++) {
		struct ring ring = region_ring(region, r);
		list_sides(sides + count, ring, ring.count, count, upright);
		count += ring.count;
	}
	return count > 0 && soonest_of(sides, count).second < count;
}

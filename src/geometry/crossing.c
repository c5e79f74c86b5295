#include "geometry/crossing.h"

#include <stdlib.h>

#include "geometry/segment.h"
#include "geometry/tolerance.h"

struct side {
	struct segment segment;
	double low, high; /* reach along the longer way of all, grown by the tolerance */
	size_t index;
};

static int lowest_first(const void *a, const void *b)
{
	const struct side *s = a, *t = b;
	if (s->low != t->low)
		return s->low < t->low ? -1 : 1;
	return s->index < t->index ? -1 : s->index > t->index;
}

/* The first `count` sides of the ring, in the order of their low ends. */
static void list_sides(struct side *sides, struct ring ring, size_t count)
{
	struct box box = ring_box(ring);
	bool is_tall = box.y1 - box.y0 > box.x1 - box.x0;
	for (size_t i = 0; i < count; i++) {
		struct segment s = segment_of_ring(ring, i);
		double from = is_tall ? s.from.y : s.from.x, to = is_tall ? s.to.y : s.to.x;
		sides[i] = (struct side){s, fmin(from, to) - TOLERANCE_SAME,
		                         fmax(from, to) + TOLERANCE_SAME, i};
	}
	qsort(sides, count, sizeof *sides, lowest_first);
}

/* `b` starts where `a` ends: do they share more than that corner? */
static bool runs_back(struct segment a, struct segment b)
{
	struct segment back = {a.to, a.from};
	struct segment shorter = segment_length(back) < segment_length(b) ? back : b;
	struct segment longer = segment_length(back) < segment_length(b) ? b : back;
	return segment_distance(longer, shorter.to) < TOLERANCE_SAME;
}

static bool is_meeting(const struct side *a, const struct side *b, size_t count)
{
	if (b->index == a->index + 1)
		return runs_back(a->segment, b->segment);
	if (a->index == 0 && b->index == count - 1)
		return runs_back(b->segment, a->segment);
	return segment_meets(a->segment, b->segment);
}

static bool is_sooner(struct crossing a, struct crossing b)
{
	return a.second != b.second ? a.second < b.second : a.first < b.first;
}

static struct crossing soonest_of(const struct side *sides, size_t count, size_t all)
{
	struct crossing soonest = {all, all};
	for (size_t i = 0; i < count; i++) {
		for (size_t k = i + 1; k < count && sides[k].low <= sides[i].high; k++) {
			bool in_order = sides[i].index < sides[k].index;
			const struct side *a = in_order ? &sides[i] : &sides[k];
			const struct side *b = in_order ? &sides[k] : &sides[i];
			struct crossing here = {a->index, b->index};
			if (is_sooner(here, soonest) && is_meeting(a, b, all))
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
		list_sides(sides, ring, count);
		*out_crossing = soonest_of(sides, count, ring.count);
		if (out_crossing->second < ring.count || count == ring.count)
			return out_crossing->second < ring.count;
		count = 2 * count < ring.count ? 2 * count : ring.count;
	}
}

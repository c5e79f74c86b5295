#include "geometry/crossing.h"

#include <stdlib.h>

#include "geometry/segment.h"
#include "geometry/tolerance.h"

struct side {
	struct segment segment;
	double x0, x1; /* reach from west to east, grown by the tolerance */
	size_t index;
};

static int west_first(const void *a, const void *b)
{
	const struct side *s = a, *t = b;
	if (s->x0 != t->x0)
		return s->x0 < t->x0 ? -1 : 1;
	return s->index < t->index ? -1 : s->index > t->index;
}

static struct side *sides_from_west(struct arena *arena, struct ring ring)
{
	struct side *sides = ARENA_ARRAY(arena, struct side, ring.count);
	for (size_t i = 0; i < ring.count; i++) {
		struct segment s = segment_of_ring(ring, i);
		double west = fmin(s.from.x, s.to.x), east = fmax(s.from.x, s.to.x);
		sides[i] = (struct side){s, west - TOLERANCE_SAME, east + TOLERANCE_SAME, i};
	}
	qsort(sides, ring.count, sizeof *sides, west_first);
	return sides;
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

bool crossing_find(struct arena *arena, struct ring ring, struct crossing *out_crossing)
{
	struct side *sides = sides_from_west(arena, ring);
	struct crossing soonest = {ring.count, ring.count};
	for (size_t i = 0; i < ring.count; i++) {
		for (size_t k = i + 1; k < ring.count && sides[k].x0 <= sides[i].x1; k++) {
			bool in_order = sides[i].index < sides[k].index;
			const struct side *a = in_order ? &sides[i] : &sides[k];
			const struct side *b = in_order ? &sides[k] : &sides[i];
			struct crossing here = {a->index, b->index};
			if (is_sooner(here, soonest) && is_meeting(a, b, ring.count))
				soonest = here;
		}
	}
	*out_crossing = soonest;
	return soonest.second < ring.count;
}

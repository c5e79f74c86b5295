/* Outlines that meet themselves, by hand and against the overlay library's own verdict. */
#include "support/program.h"

#include <stdlib.h>

#include "geometry/crossing.h"
#include "geometry/overlay.h"
#include "geometry/segment.h"

enum { CORNERS_MOST = 8, NONE = 99 };

struct shape {
	const char *what;
	struct point corners[CORNERS_MOST];
	size_t count;
	size_t first, second; /* NONE: simple */
};

static const struct shape SHAPES[] = {
	{"triangle", {{0, 0}, {4, 0}, {0, 3}}, 3, NONE, NONE},
	{"clockwise triangle", {{0, 0}, {0, 3}, {4, 0}}, 3, NONE, NONE},
	{"L", {{0, 0}, {9, 0}, {9, 4}, {4, 4}, {4, 9}, {0, 9}}, 6, NONE, NONE},
	{"corner in a straight wall", {{0, 0}, {5, 0}, {9, 0}, {9, 4}, {0, 4}}, 5, NONE, NONE},
	{"bow", {{0, 0}, {9, 9}, {9, 0}, {0, 9}}, 4, 0, 2},
	{"bow, other start", {{9, 9}, {9, 0}, {0, 9}, {0, 0}}, 4, 1, 3},
	{"nose on a wall", {{0, 0}, {9, 0}, {9, 6}, {5, 0}, {0, 6}}, 5, 0, 2},
	{"nose in a corner", {{0, 0}, {9, 0}, {9, 6}, {0, 0}, {0, 6}}, 5, 0, 2},
	{"run back", {{0, 0}, {9, 0}, {4, 0}, {4, 5}}, 4, 0, 1},
	{"run back past its start", {{0, 0}, {4, 0}, {-2, 0}, {0, 5}}, 4, 0, 1},
	{"last side runs back over the first", {{0, 0}, {9, 0}, {9, 5}, {4, 0}}, 4, 0, 2},
	{"all in one line", {{0, 0}, {4, 0}, {9, 0}}, 3, 0, 2},
	{"lies on another wall",
         {{0, 0}, {9, 0}, {9, 5}, {6, 5}, {6, 0}, {3, 0}, {3, 5}, {0, 5}},
         8,
         0,
         3},
	{"hair apart", {{0, 0}, {9, 0}, {9, 6}, {5, 1e-6}, {0, 6}}, 5, NONE, NONE},
	{"nearer than a hair", {{0, 0}, {9, 0}, {9, 6}, {5, 1e-8}, {0, 6}}, 5, 0, 2},
};

static void test_shapes(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (size_t k = 0; k < sizeof SHAPES / sizeof *SHAPES; k++) {
		const struct shape *shape = &SHAPES[k];
		struct ring ring = ring_copy(arena, shape->corners, shape->count);
		struct crossing at;
		bool found = crossing_find(arena, ring, &at);
		if (found != (shape->first != NONE))
			fail_msg("%s: found %d", shape->what, found);
		if (found && (at.first != shape->first || at.second != shape->second))
			fail_msg("%s: sides %zu and %zu", shape->what, at.first, at.second);
	}
	arena_free(arena);
}

/* Corners on a coarse grid, so that touching is as common as crossing. */
static struct ring random_ring(struct arena *arena)
{
	struct ring ring = {ARENA_ARRAY(arena, struct point, CORNERS_MOST), 0};
	ring.count = 3 + (size_t)(rand() % (CORNERS_MOST - 2));
	for (size_t i = 0; i < ring.count; i++)
		ring.points[i] = (struct point){rand() % 12, rand() % 12};
	return ring;
}

static bool has_short_side(struct ring ring)
{
	for (size_t i = 0; i < ring.count; i++)
		if (segment_length(segment_of_ring(ring, i)) < 1)
			return true;
	return false;
}

static void test_agrees_with_overlay(void **state)
{
	(void)state;
	srand(20260302);
	int simple = 0, crossed = 0;
	for (int k = 0; k < 4000; k++) {
		struct arena *arena = arena_new();
		struct ring ring = random_ring(arena);
		struct crossing at;
		if (!has_short_side(ring)) {
			bool found = crossing_find(arena, ring, &at);
			if (found == overlay_is_simple(ring))
				fail_msg("ring %d: crossing %d, overlay thinks otherwise", k,
				         found);
			found ? crossed++ : simple++;
		}
		arena_free(arena);
	}
	assert_true(simple > 200 && crossed > 200);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_shapes),
		cmocka_unit_test(test_agrees_with_overlay),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

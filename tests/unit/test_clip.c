/* Stretches of a segment in a region, worked by hand. */
#include "support/program.h"

#include "geometry/clip.h"

static struct point corners[] = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
static struct point hole[] = {{4, 4}, {4, 6}, {6, 6}, {6, 4}};
static struct ring holes[] = {{hole, 4}};
static struct polygon frame = {{corners, 4}, holes, 1};
static const struct region FRAME = {&frame, 1};

struct expected {
	const char *what;
	struct segment segment;
	size_t count;
	struct stretch stretches[2];
};

static const struct expected CASES[] = {
	{"all inside", {{1, 1}, {9, 1}}, 1, {{0, 1}}},
	{"in at one end", {{-10, 2}, {10, 2}}, 1, {{0.5, 1}}},
	{"across a hole", {{0, 5}, {10, 5}}, 2, {{0, 0.4}, {0.6, 1}}},
	{"along a side", {{-10, 0}, {10, 0}}, 1, {{0.5, 1}}},
	{"along a side of a hole: one stretch", {{0, 4}, {10, 4}}, 1, {{0, 1}}},
	{"touches a corner of a hole: one stretch", {{2, 6}, {6, 2}}, 1, {{0, 1}}},
	{"touches a corner from outside", {{-5, 5}, {5, -5}}, 0, {{0, 0}}},
	{"beside it", {{0, 11}, {10, 11}}, 0, {{0, 0}}},
};

static void test_stretches(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (size_t k = 0; k < sizeof CASES / sizeof CASES[0]; k++) {
		const struct expected *e = &CASES[k];
		size_t count;
		const struct stretch *found = clip_segment(arena, e->segment, &FRAME, &count);
		if (count != e->count)
			fail_msg("%s: %zu stretches, expected %zu", e->what, count, e->count);
		for (size_t i = 0; i < count; i++)
			if (fabs(found[i].from - e->stretches[i].from) > 1e-12 ||
			    fabs(found[i].to - e->stretches[i].to) > 1e-12)
				fail_msg("%s: stretch %zu lies elsewhere", e->what, i);
	}
	arena_free(arena);
}

static void test_holds(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	assert_true(clip_holds(arena, (struct segment){{0, 0}, {10, 0}}, &FRAME));
	assert_true(clip_holds(arena, (struct segment){{2, 6}, {6, 2}}, &FRAME));
	assert_false(clip_holds(arena, (struct segment){{0, 5}, {10, 5}}, &FRAME));
	assert_false(clip_holds(arena, (struct segment){{-0.001, 1}, {5, 1}}, &FRAME));
	assert_false(clip_holds(arena, (struct segment){{5, 1}, {10.001, 1}}, &FRAME));
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_stretches),
		cmocka_unit_test(test_holds),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

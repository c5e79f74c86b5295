/* A field joint across courses, cut or stepped: worked by hand on tile of 300 by 600 with its
 * joint. A cut tile counts 450 mm, a turn 150. */
#include "support/program.h"

#include "layout/movement_steps.h"
#include "support/rooms.h"

static const struct {
	const char *what;
	double offsets[4];
	int count;
	int tiles, turns;
	double cut, stepped; /* of 3000 mm: ten courses, nine times from one to the next */
} ROWS[] = {
	{"half", {0, 300}, 2, 5, 18, 3000 + 5 * 450, 3000 + 9 * 300 + 18 * 150},
	/* 200 to one side, 200 to the other, back. */
	{"thirds", {0, 200, 400}, 3, 6, 18, 3000 + 6 * 450, 3000 + 3 * 800 + 18 * 150},
	{"a hair", {0, 20, 0, 580}, 4, 5, 18, 3000 + 5 * 450, 3000 + 9 * 20 + 18 * 150},
	{"every other course twice",
         {0, 0, 300, 300},
         4,
         4,
         8,
         3000 + 4 * 450,
         3000 + 4 * 300 + 8 * 150},
};

static struct movement_line line_of_3000(struct arena *arena, bool along_u)
{
	struct movement_line line = {.along_u = along_u, .run_count = 1};
	line.runs = ARENA_NEW(arena, struct line);
	line.runs->points = ARENA_ARRAY(arena, struct point, 2);
	line.runs->points[1] = (struct point){0, 3000};
	line.runs->count = 2;
	return line;
}

static struct movement_steps steps_of(struct arena *arena, const struct module *module,
                                      const struct movement_line *line)
{
	struct field field = {.gap = 6, .gap_max = 6};
	struct tiling tiling = {.field = &field, .module = module};
	return movement_steps_of(rules_for_tests(arena), &tiling, (struct point){0, 0}, line);
}

static void test_by_hand(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct movement_line line = line_of_3000(arena, false);
	for (size_t i = 0; i < sizeof ROWS / sizeof *ROWS; i++) {
		double offsets[4];
		for (int k = 0; k < 4; k++)
			offsets[k] = ROWS[i].offsets[k];
		struct module module = {.pitch = 600,
		                        .course = 300,
		                        .offsets = offsets,
		                        .offset_count = ROWS[i].count};
		struct movement_steps steps = steps_of(arena, &module, &line);
		assert_int_equal(steps.tiles, ROWS[i].tiles);
		assert_int_equal(steps.turns, ROWS[i].turns);
		assert_near(steps.cut, ROWS[i].cut, 1e-6);
		assert_near(steps.stepped, ROWS[i].stepped, 1e-6);
	}
	arena_free(arena);
}

/* Without courses, or along them, there is no stepping to weigh. */
static void test_without_courses(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct movement_line line = line_of_3000(arena, false);
	struct module module = {.pitch = 600, .course = 300};
	assert_true(isinf(steps_of(arena, &module, &line).stepped));
	line = line_of_3000(arena, true);
	module.offset_count = 2;
	module.offsets = (double[]){0, 300};
	assert_true(isinf(steps_of(arena, &module, &line).stepped));
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_by_hand),
		cmocka_unit_test(test_without_courses),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

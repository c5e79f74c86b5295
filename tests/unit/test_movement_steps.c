/* A field joint across courses, cut or stepped: worked by hand on tile of 300 by 600 with its
 * joint. A cut tile counts 450 mm, a turn 150. */
#include "support/program.h"

#include "layout/movement_steps.h"
#include "support/rooms.h"

static const struct {
	const char *what;
	double offsets[4];
	int count;
	double tiles, turns, cut, stepped; /* of 3000 mm: ten courses */
} ROWS[] = {
	{"half", {0, 300}, 2, 5, 20, 3000 + 5 * 450, 3000 + 10 * 300 + 20 * 150},
	{"thirds",
         {0, 200, 400},
         3,
         20 / 3.0,
         20,
         3000 + 20 / 3.0 * 450,
         3000 + 10 * 200 + 20 * 150},
	{"a hair", {0, 20, 0, 580}, 4, 5, 20, 3000 + 5 * 450, 3000 + 10 * 20 + 20 * 150},
	{"every other course twice",
         {0, 0, 300, 300},
         4,
         5,
         10,
         3000 + 5 * 450,
         3000 + 10 * 150 + 10 * 150},
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
		struct movement_steps steps =
			movement_steps_of(rules_for_tests(arena), &module, &line);
		assert_near(steps.tiles, ROWS[i].tiles, 1e-9);
		assert_near(steps.turns, ROWS[i].turns, 1e-9);
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
	assert_true(isinf(movement_steps_of(rules_for_tests(arena), &module, &line).stepped));
	line = line_of_3000(arena, true);
	module.offset_count = 2;
	module.offsets = (double[]){0, 300};
	assert_true(isinf(movement_steps_of(rules_for_tests(arena), &module, &line).stepped));
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

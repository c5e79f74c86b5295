/* How far a crack runs beside a joint. */
#include "findings/beside.h"
#include "support/program.h"

static double beside(const struct point *points, size_t count)
{
	struct point copy[8];
	for (size_t i = 0; i < count; i++)
		copy[i] = points[i];
	return beside_length((struct line){copy, count}, (struct point){0, 0},
	                     (struct point){10000, 0}, 600);
}

#define BESIDE(...)                                 \
	beside((const struct point[]){__VA_ARGS__}, \
	       sizeof((const struct point[]){__VA_ARGS__}) / sizeof(struct point))

static void a_line_along_counts_in_full(void **state)
{
	(void)state;
	assert_near(BESIDE({1000, 300}, {4000, 300}), 3000, 1e-9);
	assert_near(BESIDE({1000, 600}, {4000, 600}), 3000, 1e-9);
	assert_near(BESIDE({1000, 601}, {4000, 601}), 0, 1e-9);
	assert_near(BESIDE({4000, -300}, {1000, -300}), 3000, 1e-9);
	assert_near(BESIDE({1000, 0}, {4000, 0}), 3000, 1e-9);
}

static void it_ends_with_the_joint(void **state)
{
	(void)state;
	assert_near(BESIDE({-5000, 300}, {2000, 300}), 2000, 1e-9);
	assert_near(BESIDE({9000, 300}, {20000, 300}), 1000, 1e-9);
	assert_near(BESIDE({11000, 300}, {20000, 300}), 0, 1e-9);
}

static void a_crossing_counts_on_one_side(void **state)
{
	(void)state;
	assert_near(BESIDE({5000, -2000}, {5000, 2000}), 0, 1e-9);
	assert_near(BESIDE({3000, -2000}, {7000, 2000}), 600, 1e-9);
}

static void stretches_are_not_added_up(void **state)
{
	(void)state;
	assert_near(BESIDE({1000, 300}, {2000, 300}, {2000, 900}, {3000, 900}, {3000, 300},
	                   {5500, 300}),
	            2500, 1e-9);
	assert_near(BESIDE({1000, 300}, {2000, 100}, {3000, 300}), 2000, 1e-9);
}

static void turning_back_adds_nothing(void **state)
{
	(void)state;
	assert_near(BESIDE({1000, 300}, {3000, 300}, {2000, 200}), 2000, 1e-9);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_line_along_counts_in_full),
		cmocka_unit_test(it_ends_with_the_joint),
		cmocka_unit_test(a_crossing_counts_on_one_side),
		cmocka_unit_test(stretches_are_not_added_up),
		cmocka_unit_test(turning_back_adds_nothing),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

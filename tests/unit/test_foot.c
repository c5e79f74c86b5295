/* The nearest point of lines and borders, worked by hand. */
#include "support/program.h"

#include "geometry/foot.h"

static struct point corners[] = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
static struct point hole[] = {{4, 4}, {4, 6}, {6, 6}, {6, 4}};
static struct ring holes[] = {{hole, 4}};
static struct polygon frame = {{corners, 4}, holes, 1};
static const struct region FRAME = {&frame, 1};

static void assert_foot(struct foot foot, double x, double y, double distance)
{
	assert_true(fabs(foot.at.x - x) < 1e-12 && fabs(foot.at.y - y) < 1e-12);
	assert_true(fabs(foot.distance - distance) < 1e-12);
}

static void test_on_line(void **state)
{
	(void)state;
	struct point bend[] = {{0, 0}, {10, 0}, {10, 5}};
	struct line line = {bend, 3};
	assert_foot(foot_on_line(line, (struct point){3, 2}), 3, 0, 2);
	assert_foot(foot_on_line(line, (struct point){-3, 4}), 0, 0, 5);
	assert_foot(foot_on_line(line, (struct point){13, 9}), 10, 5, 5);
}

/* Equally far, or farther by less than a computed hair: the first along the line. */
static void test_first_of_equals(void **state)
{
	(void)state;
	struct point bend[] = {{0, 0}, {10, 0}, {10, 10}, {0, 10}};
	struct line line = {bend, 4};
	assert_foot(foot_on_line(line, (struct point){2, 5}), 2, 0, 5);
	double hair = 1e-9, wide = 1e-6;
	assert_foot(foot_on_line(line, (struct point){2, 5 + hair}), 2, 0, 5 + hair);
	assert_foot(foot_on_line(line, (struct point){2, 5 + wide}), 2, 10, 5 - wide);
}

static void test_without_points(void **state)
{
	(void)state;
	struct foot foot = foot_on_line((struct line){NULL, 0}, (struct point){1, 2});
	assert_true(isinf(foot.distance));
	assert_true(
		isinf(foot_on_region(&(struct region){NULL, 0}, (struct point){1, 2}).distance));
}

static void test_on_region(void **state)
{
	(void)state;
	assert_foot(foot_on_region(&FRAME, (struct point){1, 5}), 0, 5, 1);
	assert_foot(foot_on_region(&FRAME, (struct point){3, 5}), 4, 5, 1);
	assert_foot(foot_on_region(&FRAME, (struct point){13, 14}), 10, 10, 5);
}

/* The same nearest border, asked for its distance alone. */
static void test_region_distance(void **state)
{
	(void)state;
	assert_true(fabs(region_distance(&FRAME, (struct point){3, 5}) - 1) < 1e-12);
	assert_true(fabs(region_distance(&FRAME, (struct point){5, 5}) - 1) < 1e-12);
	assert_true(fabs(region_distance(&FRAME, (struct point){13, 14}) - 5) < 1e-12);
	assert_true(isinf(region_distance(&(struct region){NULL, 0}, (struct point){0, 0})));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_on_line),         cmocka_unit_test(test_first_of_equals),
		cmocka_unit_test(test_without_points),  cmocka_unit_test(test_on_region),
		cmocka_unit_test(test_region_distance),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

/* Packing of lengths and pieces of roll, against published instances and small known optima.
 * Source of the instances: docs/sources.md#quantities. */
#include "count/packing.h"

#include "count/rolls.h"
#include "support/program.h"

static const int64_t u120_00[] = {
	42, 69, 67, 57, 93, 90, 38, 36, 45, 42, 33, 79, 27, 57, 44, 84, 86, 92, 46, 38,
	85, 33, 82, 73, 49, 70, 59, 23, 57, 72, 74, 69, 33, 42, 28, 46, 30, 64, 29, 74,
	41, 49, 55, 98, 80, 32, 25, 38, 82, 30, 35, 39, 57, 84, 62, 50, 55, 27, 30, 36,
	20, 78, 47, 26, 45, 41, 58, 98, 91, 96, 73, 84, 37, 93, 91, 43, 73, 85, 81, 79,
	71, 80, 76, 83, 41, 78, 70, 23, 42, 87, 43, 84, 60, 55, 49, 78, 73, 62, 36, 44,
	94, 69, 32, 96, 70, 84, 58, 78, 25, 80, 58, 66, 83, 24, 98, 60, 42, 43, 43, 39,
};
static const int64_t u120_01[] = {
	97, 57, 81,  62, 75, 81, 23, 43, 50, 38, 60, 58, 70, 88, 36, 90,  37, 45, 45, 39,
	44, 53, 70,  24, 82, 81, 47, 97, 35, 65, 74, 68, 49, 55, 52, 94,  95, 29, 99, 20,
	22, 25, 49,  46, 98, 59, 98, 60, 23, 72, 33, 98, 80, 95, 78, 57,  67, 53, 47, 53,
	36, 38, 92,  30, 80, 32, 97, 39, 80, 72, 55, 41, 60, 67, 53, 65,  95, 20, 66, 78,
	98, 47, 100, 85, 53, 53, 67, 27, 22, 61, 43, 52, 76, 64, 61, 29,  30, 46, 79, 66,
	27, 79, 98,  90, 22, 75, 57, 67, 36, 70, 99, 48, 43, 45, 71, 100, 88, 48, 27, 39,
};
static const int64_t u120_08[] = {
	100, 30, 20, 100, 29, 21, 100, 27, 23, 98, 52, 96, 54, 98, 52, 98, 52, 97, 53, 97,
	33,  20, 97, 29,  23, 95, 33,  22, 95, 29, 26, 94, 54, 94, 51, 92, 58, 89, 61, 91,
	59,  91, 34, 25,  92, 58, 89,  35, 26, 91, 58, 91, 58, 89, 60, 88, 62, 86, 64, 88,
	60,  85, 65, 85,  65, 87, 63,  85, 64, 84, 34, 32, 80, 70, 82, 67, 82, 67, 81, 69,
	81,  69, 75, 39,  36, 79, 71,  79, 70, 77, 73, 76, 74, 75, 38, 37, 72, 40, 37, 69,
	42,  39, 67, 43,  40, 57, 49,  44, 57, 48, 45, 57, 47, 46, 57, 45, 45, 51, 49, 49,
};
static const int64_t u120_19[] = {
	100, 50, 97, 32, 21, 100, 50, 99, 51, 99, 29, 22, 97, 32, 21, 97, 28, 25, 99, 28,
	23,  97, 27, 26, 97, 52,  95, 55, 96, 54, 96, 54, 95, 31, 24, 95, 31, 24, 94, 33,
	23,  95, 54, 93, 57, 94,  33, 23, 92, 58, 90, 60, 90, 60, 90, 59, 90, 58, 89, 58,
	88,  62, 83, 67, 86, 64,  86, 63, 85, 65, 85, 65, 84, 66, 77, 73, 80, 37, 33, 77,
	39,  34, 79, 36, 35, 78,  72, 77, 72, 76, 74, 75, 74, 69, 43, 38, 68, 44, 38, 66,
	44,  40, 63, 48, 39, 62,  47, 41, 62, 46, 42, 49, 49, 48, 50, 50, 44, 50, 50, 43,
};

static struct arena *arena;

static int start(void **state)
{
	(void)state;
	arena = arena_new();
	return 0;
}

static int end(void **state)
{
	(void)state;
	arena_free(arena);
	return 0;
}

/* 120 items, bins of 150; optimum 48, 49, 50, 49. First fit alone takes 49, 49, 51, 50. */
static void published_instances_are_packed_to_the_bound(void **state)
{
	(void)state;
	static const struct {
		const int64_t *sizes;
		size_t optimum;
	} instances[] = {{u120_00, 48}, {u120_01, 49}, {u120_08, 50}, {u120_19, 49}};
	for (size_t i = 0; i < sizeof instances / sizeof instances[0]; i++) {
		struct packing packing = packing_of(arena, instances[i].sizes, 120, 150);
		assert_int_equal(packing.bound, instances[i].optimum);
		assert_true(packing.bins >= packing.bound);
		assert_true(packing.bins <= instances[i].optimum + 1);
	}
}

/* 50 60 30 70 50 40 in bins of 100: 3. */
static void a_small_one_is_exact(void **state)
{
	(void)state;
	static const int64_t sizes[] = {50, 60, 30, 70, 50, 40};
	struct packing packing = packing_of(arena, sizes, 6, 100);
	assert_int_equal(packing.bins, 3);
	assert_int_equal(packing.bound, 3);
	assert_int_equal(packing_of(arena, sizes, 0, 100).bins, 0);
}

/* Three items over half a bin need three bins, though their sum is under two. */
static void the_bound_sees_what_fits_nowhere_else(void **state)
{
	(void)state;
	static const int64_t sizes[] = {60, 60, 60};
	assert_int_equal(packing_of(arena, sizes, 3, 100).bound, 3);
	static const int64_t tight[] = {70, 70, 40, 40};
	assert_int_equal(packing_of(arena, tight, 4, 100).bound, 3);
}

static void add(struct roll_list *list, double length, double wide)
{
	*array_push(arena, &list->pieces) = (struct roll_piece){length, wide};
}

static void pieces_lie_side_by_side(void **state)
{
	(void)state;
	struct roll_goods goods = {900, 10000, 50};
	struct roll_list list = {0};
	add(&list, 6000, 450);
	add(&list, 6000, 450);
	add(&list, 4000, 900);
	struct packing rolls = rolls_for(arena, &list, goods);
	assert_int_equal(rolls.bins, 1);
	assert_int_equal(rolls.bound, 1);
	add(&list, 100, 900);
	assert_int_equal(rolls_for(arena, &list, goods).bins, 2);
}

/* 2000 mm of ground under rolls 900 wide that lap 50: lanes at 0, 850 and 1700. */
static void ground_is_covered_in_lanes(void **state)
{
	(void)state;
	struct point corners[] = {{0, 0}, {12000, 0}, {12000, 2000}, {0, 2000}};
	struct region ground = region_from_ring(arena, (struct ring){corners, 4});
	struct roll_goods goods = {900, 10000, 50};
	struct roll_list list = {0};
	rolls_cover(arena, &ground, goods, &list);
	assert_int_equal(list.pieces.count, 6);
	assert_near(list.pieces.items[0].length, 10000, 1e-9);
	assert_near(list.pieces.items[1].length, 2050, 1e-9);
	assert_near(list.pieces.items[4].wide, 300, 1e-9);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(published_instances_are_packed_to_the_bound),
		cmocka_unit_test(a_small_one_is_exact),
		cmocka_unit_test(the_bound_sees_what_fits_nowhere_else),
		cmocka_unit_test(pieces_lie_side_by_side),
		cmocka_unit_test(ground_is_covered_in_lanes),
	};
	return cmocka_run_group_tests(tests, start, end);
}

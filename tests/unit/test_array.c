#include "support/program.h"

#include "base/array.h"

struct pair {
	int a;
	double b;
};

static void test_keeps_order_at_every_growth(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	ARRAY_OF(struct pair) pairs = {0};
	for (int i = 0; i < 3000; i++) {
		*array_push(arena, &pairs) = (struct pair){.a = i, .b = i / 2.0};
		assert_int_equal(pairs.count, i + 1);
		assert_true(pairs.room >= pairs.count);
	}
	for (int i = 0; i < 3000; i++) {
		assert_int_equal(pairs.items[i].a, i);
		assert_near(pairs.items[i].b, i / 2.0, 0);
	}
	arena_free(arena);
}

static void test_new_element_is_zero(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	ARRAY_OF(struct pair) pairs = {0};
	for (int i = 0; i < 100; i++) {
		struct pair *pair = array_push(arena, &pairs);
		assert_int_equal(pair->a, 0);
		assert_near(pair->b, 0, 0);
		*pair = (struct pair){.a = -1, .b = -1};
	}
	arena_free(arena);
}

static void test_room_doubles(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	ARRAY_OF(char) text = {0};
	size_t growths = 0, room = 0;
	for (int i = 0; i < 100000; i++) {
		*array_push(arena, &text) = 'x';
		if (text.room != room)
			growths++;
		room = text.room;
	}
	assert_true(growths <= 15);
	arena_free(arena);
}

static void test_two_arrays_on_one_arena(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	ARRAY_OF(int) even = {0}, odd = {0};
	for (int i = 0; i < 1000; i++) {
		if (i % 2)
			*array_push(arena, &odd) = i;
		else
			*array_push(arena, &even) = i;
	}
	for (int i = 0; i < 500; i++) {
		assert_int_equal(even.items[i], 2 * i);
		assert_int_equal(odd.items[i], 2 * i + 1);
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_keeps_order_at_every_growth),
		cmocka_unit_test(test_new_element_is_zero),
		cmocka_unit_test(test_room_doubles),
		cmocka_unit_test(test_two_arrays_on_one_arena),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

#include "support/program.h"

#include <math.h>
#include <string.h>

#include "units/number.h"

static struct arena *arena;

static int set_up(void **state)
{
	(void)state;
	arena = arena_new();
	return 0;
}

static int tear_down(void **state)
{
	(void)state;
	arena_free(arena);
	return 0;
}

static void test_writes_fixed_places(void **state)
{
	(void)state;
	const struct {
		double value;
		int decimals;
		const char *text;
	} numbers[] = {
		{0, 0, "0"},
		{0, 2, "0.00"},
		{-0.0, 2, "0.00"},
		{-0.004, 2, "0.00"},
		{-0.006, 2, "-0.01"},
		{1.5, 0, "2"},
		{2.5, 0, "2"},
		{0.125, 2, "0.12"},
		{0.375, 2, "0.38"},
		{1.005, 2, "1.00"},
		{999.9996, 3, "1000.000"},
		{-1234.5, 1, "-1234.5"},
		{1e15, 0, "1000000000000000"},
		{0.1, 15, "0.100000000000000"},
		{9007199254740993.0, 0, "9007199254740992"},
		{25.4, 6, "25.400000"},
		{1e22, 1, "10000000000000000000000.0"},
	};
	for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++)
		assert_string_equal(number_text(arena, numbers[i].value, numbers[i].decimals),
		                    numbers[i].text);
	assert_int_equal(strlen(number_text(arena, 1.7e308, 15)), 309 + 16);
}

static void test_writes_short(void **state)
{
	(void)state;
	const struct {
		double value;
		const char *text;
	} numbers[] = {{1.5, "1.5"},   {100, "100"}, {0.25, "0.25"},
	               {-0.0001, "0"}, {0, "0"},     {1200.1004, "1200.1"}};
	for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
		struct strbuf buf = strbuf_in(arena);
		number_add_short(&buf, numbers[i].value, 3);
		assert_string_equal(buf.text, numbers[i].text);
	}
}

static void test_reads(void **state)
{
	(void)state;
	const struct {
		const char *text;
		double value;
	} numbers[] = {
		{"0", 0},
		{"12", 12},
		{"-12.5", -12.5},
		{"+3", 3},
		{".5", 0.5},
		{"5.", 5},
		{"0.1", 0.1},
		{"25.4", 25.4},
		{"0.0000065", 0.0000065},
		{"123456789012345", 123456789012345},
		{"0.3333333333333333333333", 0.333333333333333},
	};
	for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
		double value = 77;
		assert_true(number_parse(numbers[i].text, &value));
		assert_true(value == numbers[i].value);
	}
}

static void test_refuses(void **state)
{
	(void)state;
	static const char *const texts[] = {"",    " ",   "-",   ".",     "1e3",
	                                    "1,5", "0x1", "nan", "inf",   "1 2",
	                                    " 1",  "1 ",  "--1", "1.2.3", "1234567890123456"};
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
		double value = 77;
		assert_false(number_parse(texts[i], &value));
		assert_true(value == 77);
	}
}

/* What is written with 15 places is read back as what was written. */
static void test_reads_what_it_writes(void **state)
{
	(void)state;
	for (int n = -5000; n < 5000; n++) {
		double value = n / 64.0, read;
		assert_true(number_parse(number_text(arena, value, 6), &read));
		assert_true(value == read);
	}
}

/* Last bits decide nothing, and what is past all numbers is still ordered. */
static void test_orders(void **state)
{
	(void)state;
	assert_int_equal(number_order(0.1 + 0.2, 0.3), 0);
	assert_int_equal(number_order(3, 3 + 4e-7), 0);
	assert_int_equal(number_order(3, 3 + 6e-7), -1);
	assert_int_equal(number_order(3 + 6e-7, 3), 1);
	assert_int_equal(number_order(-2, -1), -1);
	assert_int_equal(number_order((double)INFINITY, 1e15), 1);
	assert_int_equal(number_order(1e15, (double)INFINITY), -1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_writes_fixed_places),
		cmocka_unit_test(test_writes_short),
		cmocka_unit_test(test_reads),
		cmocka_unit_test(test_refuses),
		cmocka_unit_test(test_reads_what_it_writes),
		cmocka_unit_test(test_orders),
	};
	return cmocka_run_group_tests(tests, set_up, tear_down);
}

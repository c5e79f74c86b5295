#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "sheets/drawing_scale.h"
#include "sheets/paper_size.h"

static void test_written_scales_are_read(void **state)
{
	(void)state;
	static const struct {
		const char *text;
		double scale;
	} cases[] = {{"1:50", 50}, {"1:1", 1},     {"1/4in", 48},  {"3/8in", 32},
	             {"3in", 4},   {"1 1/2in", 8}, {"3/16in", 64}, {"12in", 1}};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		double scale = 0;
		assert_true(drawing_scale_parse(cases[i].text, &scale));
		assert_true(scale == cases[i].scale);
	}
}

static void test_what_is_no_scale_is_refused(void **state)
{
	(void)state;
	static const char *const cases[] = {"",      "50",   "1:",     "1:0",     "2:1",
	                                    "1:50x", "1/4",  "0in",    "1/0in",   "1 2in",
	                                    "-1:5",  "1:+5", "1/4 in", "1:50000", "in"};
	double scale;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		if (drawing_scale_parse(cases[i], &scale))
			fail_msg("`%s` was read", cases[i]);
}

static void test_standard_scales_fall(void **state)
{
	(void)state;
	for (int inches = 0; inches <= 1; inches++)
		for (size_t i = 1; drawing_scale_at(inches, i) > 0; i++)
			assert_true(drawing_scale_at(inches, i) > drawing_scale_at(inches, i - 1));
}

/* Between two scales of rooms a view never shrinks to less than half of what would fit. */
static void test_no_scale_of_rooms_is_half_of_the_next(void **state)
{
	(void)state;
	for (int inches = 0; inches <= 1; inches++)
		for (size_t i = 1; drawing_scale_at(inches, i) > 0; i++)
			assert_true(drawing_scale_at(inches, i) > 100 ||
			            drawing_scale_at(inches, i) <=
			                    2 * drawing_scale_at(inches, i - 1));
}

static void test_scales_print_as_a_rule_has_them(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	assert_string_equal(drawing_scale_text(arena, true, 32), "3/8\" = 1'-0\"");
	assert_string_equal(drawing_scale_text(arena, true, 50), "1:50");
	assert_string_equal(drawing_scale_text(arena, false, 48), "1:48");
	arena_free(arena);
}

static void test_half_of_ansi_d_is_tabloid(void **state)
{
	(void)state;
	const struct paper_size *large = paper_size_find("ansi-d"),
				*small = paper_size_find("tabloid");
	assert_true(large->width == 2 * small->width && large->height == 2 * small->height);
	assert_null(paper_size_find("b5"));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_written_scales_are_read),
		cmocka_unit_test(test_what_is_no_scale_is_refused),
		cmocka_unit_test(test_standard_scales_fall),
		cmocka_unit_test(test_no_scale_of_rooms_is_half_of_the_next),
		cmocka_unit_test(test_scales_print_as_a_rule_has_them),
		cmocka_unit_test(test_half_of_ansi_d_is_tabloid),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

#include "support/program.h"

#include <string.h>

#include "base/embedded.h"

static void test_every_file_is_found_by_its_name(void **state)
{
	(void)state;
	size_t count = 0;
	for (const struct embedded *file; (file = embedded_at(count)); count++) {
		assert_ptr_equal(embedded_find(file->name), file);
		assert_true(file->length > 0);
		assert_int_equal(file->data[file->length], 0);
	}
	assert_true(count >= 2);
	assert_null(embedded_at(count + 1));
}

static void test_no_other_name_is_found(void **state)
{
	(void)state;
	assert_null(embedded_find(""));
	assert_null(embedded_find("font"));
	assert_null(embedded_find("font/regular.ttf "));
}

/* The first four bytes of a TrueType file. */
static void test_fonts_are_fonts(void **state)
{
	(void)state;
	static const unsigned char magic[] = {0, 1, 0, 0};
	static const char *const names[] = {"font/regular.ttf", "font/bold.ttf"};
	for (size_t i = 0; i < 2; i++) {
		const struct embedded *font = embedded_find(names[i]);
		assert_non_null(font);
		assert_true(font->length > 100000);
		assert_memory_equal(font->data, magic, sizeof magic);
	}
	assert_int_not_equal(embedded_find(names[0])->length, embedded_find(names[1])->length);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_every_file_is_found_by_its_name),
		cmocka_unit_test(test_no_other_name_is_found),
		cmocka_unit_test(test_fonts_are_fonts),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

#include "support/program.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/diag.h"

static void assert_printed(const struct diag_list *list, const char *expected)
{
	char *text = NULL;
	size_t length = 0;
	FILE *out = open_memstream(&text, &length);
	assert_non_null(out);
	diag_print(list, out);
	assert_int_equal(fclose(out), 0);
	assert_string_equal(text, expected);
	free(text);
}

static void test_nothing_wrong(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct diag_list list = diag_list_in(arena, "floor.xml");
	assert_printed(&list, "");
	arena_free(arena);
}

static void test_by_line_then_as_reported(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct diag_list list = diag_list_in(arena, "floor.xml");
	diag_error(&list, 12, "second of %d", 12);
	diag_error(&list, 3, "b");
	diag_error(&list, 12, "a later one of 12");
	diag_error(&list, 0, "the whole file");
	diag_error(&list, 3, "a");
	assert_printed(&list, "floor.xml: error: the whole file\n"
	                      "floor.xml:3: error: b\n"
	                      "floor.xml:3: error: a\n"
	                      "floor.xml:12: error: second of 12\n"
	                      "floor.xml:12: error: a later one of 12\n");
	arena_free(arena);
}

static void test_same_text_on_one_line_is_kept_once(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct diag_list list = diag_list_in(arena, "-");
	for (int i = 0; i < 3; i++) {
		diag_error(&list, 5, "no such tile \"%s\"", "T9");
		diag_error(&list, 6, "no such tile \"%s\"", "T9");
	}
	assert_int_equal(list.diags.count, 2);
	assert_printed(&list, "-:5: error: no such tile \"T9\"\n"
	                      "-:6: error: no such tile \"T9\"\n");
	arena_free(arena);
}

static void test_many_in_falling_order(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct diag_list list = diag_list_in(arena, "f");
	enum { MANY = 500 };
	for (int line = MANY; line > 0; line--)
		diag_error(&list, line, "e");
	char *text = NULL;
	size_t length = 0;
	FILE *out = open_memstream(&text, &length);
	diag_print(&list, out);
	fclose(out);
	const char *at = text;
	for (int line = 1; line <= MANY; line++) {
		assert_int_equal(strtol(at + strlen("f:"), NULL, 10), line);
		at = strchr(at, '\n') + 1;
	}
	assert_int_equal(*at, 0);
	free(text);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_nothing_wrong),
		cmocka_unit_test(test_by_line_then_as_reported),
		cmocka_unit_test(test_same_text_on_one_line_is_kept_once),
		cmocka_unit_test(test_many_in_falling_order),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

#include <string.h>

#include "support/ink.h"
#include "support/program.h"

static struct bytes text_bytes(const char *text)
{
	return (struct bytes){text, strlen(text)};
}

static struct diag_list parse(struct arena *arena, const char *text, struct style *style)
{
	struct diag_list diags = diag_list_in(arena, "mine.style");
	enum status status = style_parse(arena, text_bytes(text), "mine", &diags, style);
	assert_int_equal(status, diags.diags.count ? STATUS_INPUT : STATUS_OK);
	return diags;
}

static void test_all_embedded_styles_are_sound(void **state)
{
	(void)state;
	static const char *const names[] = {"paper", "copier", "screen"};
	for (int i = 0; i < 3; i++) {
		struct ink ink = ink_sheet(names[i], 10, 10);
		assert_string_equal(ink.style.name, names[i]);
		assert_int_equal(ink.diags.diags.count, 0);
		assert_true(ink.style.texts[TEXT_DIMENSION].cap >= 3.5);
		assert_true(ink.style.texts[TEXT_TABLE].cap >= 2.5);
		ink_release(&ink);
	}
}

/* Pure black and white, nothing under 0.25 mm that a crew must read. */
static void test_copier_is_black(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("copier", 10, 10);
	for (int i = 0; i < PEN_COUNT; i++) {
		struct colour c = ink.style.pens[i].colour;
		assert_int_equal(c.red + c.green + c.blue, 0);
	}
	for (int i = 0; i < AREA_COUNT; i++) {
		struct colour c = ink.style.areas[i].fill;
		assert_true(c.red == c.green && c.green == c.blue && (c.red == 0 || c.red == 255));
	}
	for (int i = 0; i < TEXT_ROLE_COUNT; i++)
		assert_int_equal(ink.style.texts[i].colour.red, 0);
	ink_release(&ink);
}

static void test_derived_style(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct style style;
	struct diag_list diags = parse(arena,
	                               "like = paper\n"
	                               "[colours]\nspot = #0000ff # blue here\n"
	                               "[pens]\nwall = 1 ink\n",
	                               &style);
	assert_int_equal(diags.diags.count, 0);
	assert_near(style.pens[PEN_WALL].width, 1, 0);
	assert_int_equal(style.pens[PEN_SOFT_JOINT].colour.blue, 255); /* the base's own pen */
	assert_int_equal(style.pens[PEN_SOFT_JOINT].colour.red, 0);
	assert_near(style.pens[PEN_STRIP_PENDING].dash[0], 8 * 0.5, 1e-12);
	arena_free(arena);
}

/* What each faulty line of the style below is to be told. */
static const struct {
	int line;
	const char *says;
} expected[] = {
	{3, "expected a colour"},
	{5, "width"},
	{6, "unknown name"},
	{7, "expected a name"},
	{8, "dash"},
	{9, "given twice"},
	{11, "1.4 mm"},
	{12, "multiple of 15"},
	{13, "0.25"},
	{14, "not expected"},
	{16, "1.8 to 20"},
	{17, "regular or bold"},
	{18, "unknown section"},
	{19, "NAME = VALUE"},
};
enum { COUNT = sizeof expected / sizeof *expected };

static void test_each_fault_has_its_line(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct style style;
	struct diag_list diags = parse(arena,
	                               "like = paper\n"
	                               "[colours]\n"
	                               "spot = red\n"
	                               "[pens]\n"
	                               "wall = 0.6 ink\n"
	                               "wal = 0.7 ink\n"
	                               "crack = 0.7 inc\n"
	                               "strip = 0.5 ink dash 3\n"
	                               "wall = 0.7 ink\n"
	                               "[areas]\n"
	                               "hold = lines 45 pitch 1.5 width 0.25 ink\n"
	                               "strip = lines 40 pitch 2 width 0.25 ink\n"
	                               "cover = dots pitch 2 width 0.18 ink\n"
	                               "obstacle = waves 0 pitch 2 width 0.25 ink extra\n"
	                               "[texts]\n"
	                               "body = 1 regular ink\n"
	                               "tag = 3.5 italic ink\n"
	                               "[fonts]\n"
	                               "nonsense\n",
	                               &style);
	for (int i = 0; i < COUNT; i++) {
		bool is_found = false;
		for (size_t j = 0; j < diags.diags.count; j++)
			is_found =
				is_found || (diags.diags.items[j].line == expected[i].line &&
			                     strstr(diags.diags.items[j].text, expected[i].says));
		if (!is_found)
			print_message("no error on line %d\n", expected[i].line);
		assert_true(is_found);
	}
	for (size_t j = 0; j < diags.diags.count; j++) {
		bool is_expected = false;
		for (int i = 0; i < COUNT; i++)
			is_expected = is_expected || diags.diags.items[j].line == expected[i].line;
		if (!is_expected)
			print_message("line %d: %s\n", diags.diags.items[j].line,
			              diags.diags.items[j].text);
		assert_true(is_expected);
	}
	arena_free(arena);
}

static void test_missing_roles_are_named(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct style style;
	struct diag_list diags = parse(arena, "[colours]\nink = #000000\n", &style);
	assert_int_equal(diags.diags.count, PEN_COUNT + AREA_COUNT + TEXT_ROLE_COUNT + 1);
	assert_int_equal(diags.diags.items[0].line, 0);
	arena_free(arena);
}

static void test_unknown_style(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct diag_list diags = diag_list_in(arena, "command line");
	struct style style;
	assert_int_equal(style_embedded(arena, "fancy", 0, &diags, &style), STATUS_INPUT);
	assert_non_null(strstr(diags.diags.items[0].text, "copier paper screen"));
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_all_embedded_styles_are_sound),
		cmocka_unit_test(test_copier_is_black),
		cmocka_unit_test(test_derived_style),
		cmocka_unit_test(test_each_fault_has_its_line),
		cmocka_unit_test(test_missing_roles_are_named),
		cmocka_unit_test(test_unknown_style),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

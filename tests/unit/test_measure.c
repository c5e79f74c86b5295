#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "support/ink.h"

static struct text_engine *engine_in(struct arena *arena)
{
	struct text_engine *engine;
	assert_int_equal(text_engine_embedded(arena, &engine), STATUS_OK);
	return engine;
}

/* Capitals 20 mm high are 200 pixels high at 254 dpi, in both weights. */
static void test_capital_height_as_drawn(void **state)
{
	(void)state;
	static const enum text_role roles[] = {TEXT_BODY, TEXT_STRONG};
	for (int i = 0; i < 2; i++) {
		struct ink ink = ink_sheet("paper", 60, 60);
		list_text_at(ink.list, LAYER_NOTES, roles[i], NULL, paper_at(10, 40),
		             (struct text_place){.cap = 20}, "H");
		list_finish(ink.list, (struct paper_box){0, 0, 60, 60});
		struct pixels pixels = ink_pixels(&ink, 254);
		struct pixel_box dark = pixels_dark(&pixels);
		assert_in_range(dark.y1 - dark.y0, 199, 201);
		assert_in_range(dark.y1, 399, 401);
		ink_release(&ink);
	}
}

static void test_run_is_cached_and_scales(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct text_engine *engine = engine_in(arena);
	const struct text_run *run = text_shape(engine, TEXT_REGULAR, "12'-6 1/2\"");
	assert_ptr_equal(run, text_shape(engine, TEXT_REGULAR, "12'-6 1/2\""));
	assert_ptr_not_equal(run, text_shape(engine, TEXT_BOLD, "12'-6 1/2\""));
	double at_one = text_width(engine, TEXT_REGULAR, 1, "Kitchen 12");
	double at_five = text_width(engine, TEXT_REGULAR, 5, "Kitchen 12");
	assert_true(fabs(at_five - 5 * at_one) < 1e-12 * at_five);
	assert_true(text_width(engine, TEXT_BOLD, 1, "Kitchen 12") > at_one);
	/* Many texts, so that the cache grows: all are found again. */
	for (int i = 0; i < 2000; i++)
		text_shape(engine, TEXT_REGULAR, arena_printf(arena, "%d", i));
	assert_ptr_equal(run, text_shape(engine, TEXT_REGULAR, "12'-6 1/2\""));
	arena_free(arena);
}

static void test_digits_are_tabular(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct text_engine *engine = engine_in(arena);
	double one = text_width(engine, TEXT_REGULAR, 1, "1");
	for (const char *digit = "023456789"; *digit; digit++)
		assert_true(text_width(engine, TEXT_REGULAR, 1, (char[]){*digit, 0}) == one);
	arena_free(arena);
}

static void test_missing_sign_is_reported(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct text_engine *engine = engine_in(arena);
	static const char used[] = "ñáéíóúü¿¡ºª ½ ′ ″ × ± ° ² Ø";
	assert_int_equal(text_shape(engine, TEXT_REGULAR, used)->missing, 0);
	assert_null(text_missing(engine));
	assert_int_equal(text_shape(engine, TEXT_REGULAR, "a漢b漢字")->missing, 3);
	assert_string_equal(text_missing(engine), "漢 字");
	arena_free(arena);
}

static void test_no_font_is_refused(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct text_engine *engine;
	const struct bytes junk = {"no font at all", 14};
	assert_int_equal(text_engine_new(arena, (struct bytes[]){junk, junk}, &engine),
	                 STATUS_LIBRARY);
	arena_free(arena);
}

static void test_wrap(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct text_engine *engine = engine_in(arena);
	const char *text = "Lay the first  tile at the crossing,\nthen work towards the exit.";
	double width = 40;
	struct text_lines lines = text_wrap(engine, arena, TEXT_REGULAR, 3.5, width, text);
	assert_true(lines.count >= 3);
	for (size_t i = 0; i < lines.count; i++)
		assert_true(text_width(engine, TEXT_REGULAR, 3.5, lines.lines[i]) <= width);
	lines = text_wrap(engine, arena, TEXT_REGULAR, 3.5, 1000, text);
	assert_int_equal(lines.count, 2);
	assert_string_equal(lines.lines[0], "Lay the first tile at the crossing,");
	lines = text_wrap(engine, arena, TEXT_REGULAR, 3.5, 0.1, "two w\303\266rds");
	assert_int_equal(lines.count, 8);
	assert_string_equal(lines.lines[4], "\303\266");
	lines = text_wrap(engine, arena, TEXT_REGULAR, 3.5, 20, "a wordwithoutanyblank b");
	assert_true(lines.count >= 3);
	assert_string_equal(lines.lines[0], "a");
	for (size_t i = 0; i < lines.count; i++)
		assert_true(text_width(engine, TEXT_REGULAR, 3.5, lines.lines[i]) <= 20);
	assert_int_equal(text_wrap(engine, arena, TEXT_REGULAR, 3.5, 50, "").count, 0);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_capital_height_as_drawn),
		cmocka_unit_test(test_run_is_cached_and_scales),
		cmocka_unit_test(test_digits_are_tabular),
		cmocka_unit_test(test_missing_sign_is_reported),
		cmocka_unit_test(test_no_font_is_refused),
		cmocka_unit_test(test_wrap),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

#include "support/program.h"

#include <stdio.h>

#include "units/length.h"

static const int64_t IN = 25400000, FT = 304800000, MM = 1000000, M = 1000000000;

static void reads(const char *text, enum length_unit unit, int64_t expected)
{
	int64_t nm = -1;
	const char *wrong = NULL;
	if (!length_parse(text, unit, &nm, &wrong) || nm != expected)
		print_error("%s: %lld nm, expected %lld (%s)\n", text, (long long)nm,
		            (long long)expected, wrong ? wrong : "read");
	assert_null(wrong);
	assert_true(nm == expected);
}

static void test_reads_every_form(void **state)
{
	(void)state;
	const struct {
		const char *text;
		int64_t nm;
	} forms[] = {
		{"3810mm", 3810 * MM},
		{"381cm", 3810 * MM},
		{"3.81m", 3810 * MM},
		{"12ft 6 1/2in", 12 * FT + 6 * IN + IN / 2},
		{"12ft", 12 * FT},
		{"12.5ft", 12 * FT + FT / 2},
		{"6 1/2in", 6 * IN + IN / 2},
		{"6-1/2in", 6 * IN + IN / 2},
		{"1/2in", IN / 2},
		{"78.5in", 78 * IN + IN / 2},
		{"12'-6 1/2\"", 12 * FT + 6 * IN + IN / 2},
		{"12' - 6 1/2\"", 12 * FT + 6 * IN + IN / 2},
		{"12'6\"", 12 * FT + 6 * IN},
		{"12' 6\"", 12 * FT + 6 * IN},
		{"12'-0\"", 12 * FT},
		{"12ft 1/2in", 12 * FT + IN / 2},
		{"1/8\"", IN / 8},
		{"12\xe2\x80\xb2-6 1/2\xe2\x80\xb3", 12 * FT + 6 * IN + IN / 2},
		{"25mil", 635000},
		{"600um", 600000},
		{"1/64in", 396875},
		{"-3ft 2in", -(3 * FT + 2 * IN)},
		{"-1/8in", -IN / 8},
		{"0mm", 0},
		{"-0mm", 0},
		{".5m", M / 2},
		{"5.m", 5 * M},
		{" 5 mm ", 5 * MM},
		{"999999999m", 999999999 * M},
		{"0.000001mm", 1},
		{"1/3in", 8466667},
	};
	for (size_t i = 0; i < sizeof forms / sizeof *forms; i++)
		reads(forms[i].text, LENGTH_MM, forms[i].nm);
}

static void test_bare_decimals_are_in_the_unit(void **state)
{
	(void)state;
	reads("12.5", LENGTH_MM, 12 * MM + MM / 2);
	reads("12.5", LENGTH_M, 12 * M + M / 2);
	reads("12.5", LENGTH_IN, 12 * IN + IN / 2);
	reads("12.5", LENGTH_FT, 12 * FT + FT / 2);
	reads("-3", LENGTH_FT, -3 * FT);
	reads("0", LENGTH_M, 0);
}

/* All 64ths up to two feet: no rounding anywhere. */
static void test_64ths_are_exact(void **state)
{
	(void)state;
	for (int n = 1; n < 24 * 64; n++) {
		char text[40];
		snprintf(text, sizeof text, "%d %d/64in", n / 64, n % 64);
		reads(text, LENGTH_MM, n * INT64_C(396875));
	}
}

static void test_refuses(void **state)
{
	(void)state;
	static const char *const texts[] = {
		"",        " ",       "-",           "mm",         "1/2",     "6 1/2",
		"1e3",     "1e3mm",   "1,000mm",     "1.000,5mm",  "3 yd",    "3ft 2",
		"3ft 2mm", "3ft2in5", "12ft -6in",   "3ft - -2in", "--3mm",   "+3mm",
		"1/0in",   "1/in",    "/2in",        "1/2mm",      "6 1/2m",  "1.5/2in",
		"5mmm",    "5inch",   "12345678901", "3 4mm",      "0x10mm",  "nan",
		"infmm",   "5mm 3mm", "12'6'",       "1..5mm",     "1.5.2mm", "\xc3\xa9mm",
		"1/2/4in", "five",    "3ft 2in 1/2", "5 mm x",     ".mm",     "6\"12'",
	};
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
		int64_t nm = 77;
		const char *wrong = NULL;
		if (length_parse(texts[i], LENGTH_IN, &nm, &wrong))
			print_error("\"%s\" was read as %lld nm\n", texts[i], (long long)nm);
		assert_non_null(wrong);
		assert_true(nm == 77);
	}
}

static void prints(double mm, int denominator, const char *expected)
{
	struct arena *arena = arena_new();
	struct strbuf buf = strbuf_in(arena);
	length_add_feet_inches(&buf, mm, denominator);
	assert_string_equal(buf.text, expected);
	arena_free(arena);
}

/* Source: docs/sources.md, feet and inches: the notation, and each of its figures. */
static void test_prints_feet_and_inches(void **state)
{
	(void)state;
	prints(3822.7, 16, "12'-6 1/2\"");
	prints(47.625, 16, "1 7/8\"");
	prints(12.7, 16, "1/2\"");
	prints(2438.4, 16, "8'-0\"");
	prints(1219.2, 16, "4'-0\"");
	prints(3048, 16, "10'-0\"");
	prints(304.8, 16, "1'-0\"");
	prints(304.0, 16, "11 15/16\"");
	prints(304.5, 16, "1'-0\"");
	prints(0, 16, "0\"");
	prints(0.1, 16, "0\"");
	prints(-0.1, 16, "0\"");
	prints(-12.7, 16, "-1/2\"");
	prints(-3822.7, 16, "-12'-6 1/2\"");
	prints(317.5, 16, "1'-0 1/2\"");
	prints(25.4, 16, "1\"");
	prints(3822.7, 2, "12'-6 1/2\"");
	prints(3822.7, 1, "12'-7\"");
	prints(396.875 / 1000, 64, "1/64\"");
}

/* What is printed to a sixteenth is read back as the same length. */
static void test_printed_lengths_are_read_back(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (int n = 1; n < 40 * 12 * 16; n += 7) {
		struct strbuf buf = strbuf_in(arena);
		int64_t expected = n * (IN / 16);
		length_add_feet_inches(&buf, length_mm(expected), 16);
		reads(buf.text, LENGTH_MM, expected);
	}
	arena_free(arena);
}

static void test_prints_in_the_plans_unit(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct strbuf buf = strbuf_in(arena);
	length_add_mm(&buf, 3822.75, 1);
	assert_string_equal(buf.text, "3822.8");
	assert_string_equal(length_text(arena, 3822.7, false), "3823 mm");
	assert_string_equal(length_text(arena, 3822.7, true), "12'-6 1/2\"");
	assert_string_equal(length_text(arena, -0.2, false), "0 mm");
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_reads_every_form),
		cmocka_unit_test(test_bare_decimals_are_in_the_unit),
		cmocka_unit_test(test_64ths_are_exact),
		cmocka_unit_test(test_refuses),
		cmocka_unit_test(test_prints_feet_and_inches),
		cmocka_unit_test(test_printed_lengths_are_read_back),
		cmocka_unit_test(test_prints_in_the_plans_unit),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

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

static bool is_grey(struct colour c)
{
	return c.red == c.green && c.green == c.blue;
}

static bool is_same_colour(struct colour a, struct colour b)
{
	return a.red == b.red && a.green == b.green && a.blue == b.blue;
}

/* Every colour of a style's pens, hatches, fills and texts. */
struct palette {
	struct colour list[3 * (PEN_COUNT + AREA_COUNT + TEXT_ROLE_COUNT)];
	size_t count;
};

static void add_colour(struct palette *palette, struct colour colour)
{
	for (size_t i = 0; i < palette->count; i++)
		if (is_same_colour(palette->list[i], colour))
			return;
	palette->list[palette->count++] = colour;
}

static struct palette palette_of(const struct style *style, bool has_fills)
{
	struct palette palette = {.count = 0};
	for (int i = 0; i < PEN_COUNT; i++)
		add_colour(&palette, style->pens[i].colour);
	for (int i = 0; i < AREA_COUNT; i++) {
		const struct area_style *area = &style->areas[i];
		if (area->hatch != HATCH_NONE)
			add_colour(&palette, area->colour);
		if (area->has_fill && has_fills)
			add_colour(&palette, area->fill);
	}
	for (int i = 0; i < TEXT_ROLE_COUNT; i++)
		add_colour(&palette, style->texts[i].colour);
	return palette;
}

/* One spot colour beside black and its tints. */
static void test_paper_has_one_spot_colour(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("paper", 10, 10);
	struct palette palette = palette_of(&ink.style, true);
	size_t spots = 0;
	for (size_t i = 0; i < palette.count; i++)
		spots += !is_grey(palette.list[i]);
	assert_int_equal(spots, 1);
	ink_release(&ink);
}

/* ---- colours as they are seen ---- */

/* Full protanopia, deuteranopia and tritanopia on linear sRGB; docs/sources.md R-D17. */
static const double VISIONS[4][3][3] = {
	{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
	{{0.152286, 1.052583, -0.204868},
         {0.114503, 0.786281, 0.099216},
         {-0.003882, -0.048116, 1.051998}},
	{{0.367322, 0.860646, -0.227968},
         {0.280085, 0.672501, 0.047413},
         {-0.011820, 0.042940, 0.968881}},
	{{1.255528, -0.076749, -0.178779},
         {-0.078411, 0.930809, 0.147602},
         {0.004733, 0.691367, 0.303900}},
};

static double linear(uint8_t part)
{
	double c = part / 255.0;
	return c <= 0.04045 ? c / 12.92 : pow((c + 0.055) / 1.055, 2.4);
}

static double lab_root(double t)
{
	return t > 216.0 / 24389 ? cbrt(t) : (24389.0 / 27 * t + 16) / 116;
}

/* CIE L*a*b* of a colour as one kind of eye sees it; white point D65. */
static void see(struct colour colour, int vision, double lab[3])
{
	static const double XYZ[3][3] = {{0.4124564, 0.3575761, 0.1804375},
	                                 {0.2126729, 0.7151522, 0.0721750},
	                                 {0.0193339, 0.1191920, 0.9503041}};
	static const double WHITE[3] = {0.95047, 1, 1.08883};
	double rgb[3] = {linear(colour.red), linear(colour.green), linear(colour.blue)};
	double seen[3], root[3];
	for (int i = 0; i < 3; i++) {
		const double *m = VISIONS[vision][i];
		seen[i] = fmin(1, fmax(0, m[0] * rgb[0] + m[1] * rgb[1] + m[2] * rgb[2]));
	}
	for (int i = 0; i < 3; i++)
		root[i] =
			lab_root((XYZ[i][0] * seen[0] + XYZ[i][1] * seen[1] + XYZ[i][2] * seen[2]) /
		                 WHITE[i]);
	lab[0] = 116 * root[1] - 16;
	lab[1] = 500 * (root[0] - root[1]);
	lab[2] = 200 * (root[1] - root[2]);
}

static double seen_apart(struct colour a, struct colour b, int vision)
{
	double x[3], y[3];
	see(a, vision, x);
	see(b, vision, y);
	return sqrt((x[0] - y[0]) * (x[0] - y[0]) + (x[1] - y[1]) * (x[1] - y[1]) +
	            (x[2] - y[2]) * (x[2] - y[2]));
}

static void test_screen_for_every_colour_vision(void **state)
{
	(void)state;
	/* Two colours apart by less are easily taken for one: own choice, R-D18. */
	const double LEAST = 20;
	double white[3];
	see((struct colour){255, 255, 255}, 0, white);
	assert_near(white[0], 100, 0.01);
	struct ink ink = ink_sheet("screen", 10, 10);
	struct palette palette = palette_of(&ink.style, false);
	assert_true(palette.count >= 4);
	add_colour(&palette, ink.style.paper);
	for (int vision = 0; vision < 4; vision++)
		for (size_t i = 0; i < palette.count; i++)
			for (size_t k = 0; k < i; k++)
				assert_true(seen_apart(palette.list[i], palette.list[k], vision) >=
				            LEAST);
	/* Red and green of equal lightness, that some take for one, are seen to be too near. */
	assert_true(seen_apart((struct colour){0xb4, 0x50, 0x28}, (struct colour){0x6e, 0x78, 0x14},
	                       2) < LEAST);
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
		cmocka_unit_test(test_paper_has_one_spot_colour),
		cmocka_unit_test(test_screen_for_every_colour_vision),
		cmocka_unit_test(test_derived_style),
		cmocka_unit_test(test_each_fault_has_its_line),
		cmocka_unit_test(test_missing_roles_are_named),
		cmocka_unit_test(test_unknown_style),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

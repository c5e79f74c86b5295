/* The rules of legibility, measured on the specimen as it is rendered: at 300 dpi, at half of
 * it (a half-size print), in grey. Figures: docs/sources.md R-D12. */
#include <stdlib.h>
#include <string.h>

#include "drawing/hatch.h"
#include "specimen/specimen.h"
#include "support/blobs.h"
#include "support/ink.h"
#include "support/program.h"

static const char *const styles[] = {"paper", "copier", "screen"};
enum { STYLE_COUNT = 3, FULL = 300, HALF = 150, SCANNED_HALF = 100 };

/* The specimen of one style, and how it looks. */
struct print {
	struct ink ink;
	struct specimen specimen;
	struct pixels full, half;
};

static struct print print_make(const char *style)
{
	struct print print = {.ink = ink_sheet(style, 10, 10)};
	struct style *kept = ARENA_NEW(print.ink.arena, struct style);
	*kept = print.ink.style;
	print.specimen = specimen_draw(print.ink.arena, kept, print.ink.text);
	print.ink.list = (struct list *)print.specimen.list;
	print.full = ink_pixels(&print.ink, FULL);
	print.half = ink_pixels(&print.ink, HALF);
	return print;
}

static struct tones swatch(struct print *print, const struct pixels *pixels, int dpi, int area)
{
	return tones_of(print->ink.arena, pixels, dpi,
	                paper_box_grown(print->specimen.areas[area], -0.5));
}

static bool is_hatched(const struct area_style *area)
{
	return area->hatch != HATCH_NONE;
}

static void each_hatch(void (*check)(struct print *, int area))
{
	for (int s = 0; s < STYLE_COUNT; s++) {
		struct print print = print_make(styles[s]);
		int seen = 0;
		for (int area = 0; area < AREA_COUNT; area++)
			if (is_hatched(&print.ink.style.areas[area])) {
				check(&print, area);
				seen++;
			}
		assert_true(seen > 8);
		ink_release(&print.ink);
	}
}

static double clear_of(const struct area_style *a)
{
	double apart = a->hatch == HATCH_PAIRS ? fmin(a->gap, a->pitch - a->gap) : a->pitch;
	return apart - a->width;
}

/* X01, X05: 1.4 mm clear, so that half of it leaves 0.7; lines of 0.25 mm. Marks that grow by
 * 0.5 mm on each side would still not touch. */
static void check_gaps(struct print *print, int area)
{
	const struct area_style *a = &print->ink.style.areas[area];
	struct arena *arena = print->ink.arena;
	struct tones tones = swatch(print, &print->half, HALF, area);
	assert_true(clear_of(a) >= 1.4 - 1e-9);
	assert_true(a->width >= 0.25);
	/* Of crossed lines it is the white between them that must not close. */
	if (a->hatch == HATCH_CROSS)
		tones = tones_turned(arena, tones);
	int marks = tones_blobs(arena, tones);
	struct tones grown =
		a->hatch == HATCH_CROSS
			? tones_turned(arena, tones_grown(arena, tones_turned(arena, tones), 2))
			: tones_grown(arena, tones, 3);
	int left = tones_blobs(arena, grown);
	/* At the edges bits of marks are cut off. */
	if (left < marks * 0.8 || marks < 5)
		fail_msg("%s, %s: %d marks, %d when grown", print->ink.style.name,
		         area_name((enum area)area), marks, left);
}

static void test_gaps(void **state)
{
	(void)state;
	each_hatch(check_gaps);
}

/* X02: clear at least twice the heaviest line, in hatches and in double lines. X07: no hatch
 * closer than 1.27 mm. X10: none so close that it beats with the raster. */
static void check_pitch(struct print *print, int area)
{
	const struct area_style *a = &print->ink.style.areas[area];
	assert_true(clear_of(a) >= 2 * a->width);
	assert_true(a->pitch >= 1.27);
}

static void test_pitches(void **state)
{
	(void)state;
	each_hatch(check_pitch);
	for (int s = 0; s < STYLE_COUNT; s++) {
		struct ink ink = ink_sheet(styles[s], 10, 10);
		for (int i = 0; i < PEN_COUNT; i++) {
			const struct pen_style *pen = &ink.style.pens[i];
			if (pen->core > 0) {
				assert_true(pen->core >= 2 * (pen->width - pen->core) / 2);
				assert_true(pen->core >= 0.7);
			}
		}
		ink_release(&ink);
	}
}

/* X03: nothing smaller than a reader sees at 30 cm. X11: 0.35 mm for outlines that carry a
 * meaning, in `copier` 0.25 mm for all. */
static void test_smallest_marks(void **state)
{
	(void)state;
	static const enum pen outlines[] = {PEN_STRIP, PEN_STRIP_PENDING, PEN_COVER, PEN_OBSTACLE,
	                                    PEN_HOLD,  PEN_TAG,           PEN_SYMBOL};
	for (int s = 0; s < STYLE_COUNT; s++) {
		struct print print = print_make(styles[s]);
		const struct style *style = &print.ink.style;
		for (size_t i = 0; i < sizeof outlines / sizeof *outlines; i++)
			assert_true(style->pens[outlines[i]].width >= 0.35);
		for (int i = 0; i < PEN_COUNT; i++)
			assert_true(style->pens[i].width >= (s == 1 ? 0.25 : 0.13));
		for (int i = 0; i < TEXT_ROLE_COUNT; i++)
			assert_true(style->texts[i].cap >= 2.5);
		int filled = 0;
		for (size_t i = 0; i < print.specimen.list->ops.count; i++) {
			const struct op *op = &print.specimen.list->ops.items[i];
			if (op->kind != OP_FILL || op->role.area != AREA_INK)
				continue;
			double wide = op->box.x1 - op->box.x0, high = op->box.y1 - op->box.y0;
			filled++;
			assert_true(fmin(wide, high) >= 0.3 && fmax(wide, high) >= 0.6);
		}
		assert_true(filled > 5);
		ink_release(&print.ink);
	}
}

/* X08: hatch is solid ink: black, or a colour with 3:1 against the paper (A01), never grey. */
static double light_of(struct colour c)
{
	const uint8_t parts[] = {c.red, c.green, c.blue};
	static const double weights[] = {0.2126, 0.7152, 0.0722};
	double sum = 0;
	for (int i = 0; i < 3; i++) {
		double v = parts[i] / 255.0;
		sum += weights[i] * (v <= 0.03928 ? v / 12.92 : pow((v + 0.055) / 1.055, 2.4));
	}
	return sum;
}

static void check_solid(struct print *print, int area)
{
	struct colour c = print->ink.style.areas[area].colour;
	bool is_grey = c.red == c.green && c.green == c.blue;
	assert_true(!is_grey || c.red == 0);
	assert_true(1.05 / (light_of(c) + 0.05) >= 3);
}

static void test_hatch_is_solid(void **state)
{
	(void)state;
	assert_near(1.05 / (light_of((struct colour){0x76, 0x76, 0x76}) + 0.05), 4.54, 0.005);
	assert_near(1.05 / (light_of((struct colour){0x00, 0x72, 0xb2}) + 0.05), 5.19, 0.005);
	each_hatch(check_solid);
}

/* X10: level rows are a whole number of pixels apart, so that all look alike. */
static void check_raster(struct print *print, int area)
{
	const struct area_style *a = &print->ink.style.areas[area];
	struct tones t = swatch(print, &print->full, FULL, area);
	int last = -1, step = 0;
	if (a->angle_deg % 90 != 0)
		return;
	for (int y = 1; y < t.height; y++) {
		bool is_row = memchr(t.dark + y * t.width, 1, (size_t)t.width) != NULL;
		bool was_row = memchr(t.dark + (y - 1) * t.width, 1, (size_t)t.width) != NULL;
		if (!is_row || was_row)
			continue;
		if (last >= 0 && step > 0)
			assert_int_equal(y - last, step);
		step = last >= 0 ? y - last : 0;
		last = y;
	}
	assert_true(step > 0);
}

static void test_level_rows_meet_the_raster(void **state)
{
	(void)state;
	each_hatch(check_raster);
}

/* X11: on a scan of 200 dpi of a half-size print the strokes of `copier` are all there. */
static void test_scanned_half_size(void **state)
{
	(void)state;
	struct print print = print_make("copier");
	struct pixels scan = ink_pixels(&print.ink, SCANNED_HALF);
	for (int area = 0; area < AREA_COUNT; area++) {
		enum hatch_kind kind = print.ink.style.areas[area].hatch;
		if (kind != HATCH_LINES && kind != HATCH_CROSS)
			continue;
		struct tones a = swatch(&print, &print.full, FULL, area);
		struct tones b = swatch(&print, &scan, SCANNED_HALF, area);
		/* Grey of half a pixel: what is lost is not the strokes but their full width. */
		assert_near(tones_runs(b, SCANNED_HALF, SCAN_LEVEL) /
		                    tones_runs(a, FULL, SCAN_LEVEL),
		            1, 0.12);
	}
	ink_release(&print.ink);
}

/* X12: the tone of a hatch is what its figures say. */
static void check_tone(struct print *print, int area)
{
	const struct area_style *a = &print->ink.style.areas[area];
	double one = a->width / a->pitch, expected = one;
	if (a->hatch == HATCH_CROSS)
		expected = 1 - (1 - one) * (1 - one);
	if (a->hatch == HATCH_DASHES)
		expected = one * a->dash / (a->dash + a->gap);
	if (a->hatch == HATCH_DOTS)
		expected = 3.14159265 * one * one / 4;
	struct paper_box box = paper_box_grown(print->specimen.areas[area], -0.5);
	assert_near(pixels_tone(&print->full, FULL, box) / expected, 1,
	            0.2); /* rows at the edges */
}

static void test_tone_follows_the_figures(void **state)
{
	(void)state;
	each_hatch(check_tone);
}

/* X09, X12: hatches of one plan differ in kind, by 30 degrees, or by 0.08 of their tone; and,
 * X16, printed in grey at half size, in marks, tone or run of the lines by a quarter. */
static bool is_far(double a, double b)
{
	return fmax(a, b) > 1.25 * fmin(a, b) + 1e-9;
}

static bool are_apart(struct print *print, int a, int b)
{
	struct arena *arena = print->ink.arena;
	struct tones x = swatch(print, &print->half, HALF, a),
		     y = swatch(print, &print->half, HALF, b);
	bool is_apart = is_far(tones_blobs(arena, x), tones_blobs(arena, y)) ||
	                is_far(tones_share(x), tones_share(y));
	for (int scan = 0; scan < SCAN_COUNT; scan++)
		is_apart = is_apart || is_far(tones_runs(x, HALF, (enum scan)scan),
		                              tones_runs(y, HALF, (enum scan)scan));
	return is_apart;
}

static void test_hatches_are_told_apart(void **state)
{
	(void)state;
	static const enum area plan[] = {AREA_HOLD,  AREA_STRIP,    AREA_STRIP_PENDING,
	                                 AREA_COVER, AREA_OBSTACLE, AREA_NOT_TILED};
	static const enum area section[] = {AREA_CONCRETE, AREA_MORTAR, AREA_TILE_SECTION,
	                                    AREA_BACKER, AREA_OBSTACLE};
	for (int s = 0; s < STYLE_COUNT; s++) {
		struct print print = print_make(styles[s]);
		for (size_t i = 0; i < sizeof plan / sizeof *plan; i++)
			for (size_t k = 0; k < i; k++)
				assert_true(are_apart(&print, plan[i], plan[k]));
		for (size_t i = 0; i < sizeof section / sizeof *section; i++)
			for (size_t k = 0; k < i; k++)
				assert_true(are_apart(&print, section[i], section[k]));
		assert_false(are_apart(&print, AREA_HOLD, AREA_HOLD));
		ink_release(&print.ink);
	}
}

/* X04 and the table of lines: two lines of a plan differ in how they are broken, in being
 * double, or by 0.3 mm of width: never by colour alone. */
static double longest_dash(const struct pen_style *pen)
{
	double longest = 0;
	for (int i = 0; i < pen->dash_count; i += 2)
		longest = fmax(longest, pen->dash[i]);
	return longest;
}

static bool are_unlike(const struct pen_style *a, const struct pen_style *b)
{
	if (a->dash_count != b->dash_count || (a->core > 0) != (b->core > 0) ||
	    fabs(a->width - b->width) >= 0.3 - 1e-9)
		return true;
	return a->dash_count > 0 && fmax(longest_dash(a), longest_dash(b)) >=
	                                    1.6 * fmin(longest_dash(a), longest_dash(b));
}

static void test_lines_are_told_apart(void **state)
{
	(void)state;
	/* As they stand together on a sheet; areas have their hatch too. */
	static const enum pen found[] = {PEN_WALL,  PEN_WALL_OPEN,     PEN_SLAB_JOINT,
	                                 PEN_CRACK, PEN_CRACK_PENDING, PEN_HOLD,
	                                 PEN_MATCH};
	static const enum pen built[] = {PEN_WALL,          PEN_WALL_OPEN,       PEN_CRACK_FINE,
	                                 PEN_SOFT_JOINT,    PEN_JOINT_PENDING,   PEN_MOVEMENT_JOINT,
	                                 PEN_CARRIED_JOINT, PEN_PERIMETER_JOINT, PEN_CONTROL,
	                                 PEN_MATCH};
	for (int s = 0; s < STYLE_COUNT; s++) {
		struct ink ink = ink_sheet(styles[s], 10, 10);
		const struct pen_style *pens = ink.style.pens;
		for (size_t i = 0; i < sizeof found / sizeof *found; i++)
			for (size_t k = 0; k < i; k++)
				if (!are_unlike(&pens[found[i]], &pens[found[k]]))
					fail_msg("%s: %s is like %s", styles[s], pen_name(found[i]),
					         pen_name(found[k]));
		for (size_t i = 0; i < sizeof built / sizeof *built; i++)
			for (size_t k = 0; k < i; k++)
				if (!are_unlike(&pens[built[i]], &pens[built[k]]) &&
				    !(built[i] == PEN_SOFT_JOINT && built[k] == PEN_WALL && s != 1))
					fail_msg("%s: %s is like %s", styles[s], pen_name(built[i]),
					         pen_name(built[k]));
		ink_release(&ink);
	}
}

/* X14: a material has one phase all over the sheet: cut in two regions it looks the same. */
static void test_one_phase(void **state)
{
	(void)state;
	for (int area = 0; area < AREA_COUNT; area++) {
		struct ink one = ink_sheet("paper", 100, 60), two = ink_sheet("paper", 100, 60);
		const struct paper_box whole = {10, 10, 90, 50}, left = {10, 10, 47.3, 50},
				       right = {47.3, 10, 90, 50};
		enum hatch_kind kind = one.style.areas[area].hatch;
		if (kind == HATCH_LINES || kind == HATCH_CROSS || kind == HATCH_DASHES) {
			list_area(one.list, LAYER_SHEET, (enum area)area, NULL,
			          paper_path_box(one.arena, whole));
			list_area(two.list, LAYER_SHEET, (enum area)area, NULL,
			          paper_path_box(two.arena, left));
			list_area(two.list, LAYER_SHEET, (enum area)area, NULL,
			          paper_path_box(two.arena, right));
			list_finish(one.list, (struct paper_box){0, 0, 100, 60});
			list_finish(two.list, (struct paper_box){0, 0, 100, 60});
			struct pixels a = ink_pixels(&one, FULL), b = ink_pixels(&two, FULL);
			int differs = 0;
			for (int i = 0; i < a.width * a.height; i++)
				differs += (a.grey[i] < 128) != (b.grey[i] < 128);
			/* A pixel or two where strokes meet end to end. */
			assert_true(differs < a.width * a.height / 1000);
		}
		ink_release(&one);
		ink_release(&two);
	}
}

/* X15: half a capital height of white round a text in a hatch. */
static void test_white_round_text(void **state)
{
	(void)state;
	for (int s = 0; s < STYLE_COUNT; s++) {
		struct ink ink = ink_sheet(styles[s], 100, 60);
		double cap = ink.style.texts[TEXT_TAG].cap;
		list_area(ink.list, LAYER_HOLDS, AREA_HOLD, NULL,
		          paper_path_box(ink.arena, (struct paper_box){5, 5, 95, 55}));
		struct paper_box text = list_text(ink.list, LAYER_LABELS, TEXT_TAG, NULL,
		                                  paper_at(50, 32), ALIGN_MIDDLE, "HHHHH");
		list_finish(ink.list, (struct paper_box){0, 0, 100, 60});
		struct pixels pixels = ink_pixels(&ink, FULL);
		/* The bars of the capitals alone have ink, nothing else in the box round them. */
		struct paper_box round = paper_box_grown(text, 0.5 * cap - 0.15);
		round.y0 = 32 - cap - 0.5 * cap + 0.15;
		round.y1 = 32 + 0.5 * cap - 0.15;
		struct tones tones = tones_of(ink.arena, &pixels, FULL, round);
		assert_int_equal(tones_blobs(ink.arena, tones), 5);
		/* And right beyond there is hatch again. */
		tones = tones_of(ink.arena, &pixels, FULL, paper_box_grown(round, 1.5));
		assert_true(tones_blobs(ink.arena, tones) > 5);
		ink_release(&ink);
	}
}

/* X06: at two thirds, as patent offices reduce, every stroke is still there, and a text in a
 * hatch still reads: nothing but its capitals in its white. */
static void check_two_thirds(struct print *print, int area)
{
	enum { TWO_THIRDS = 200 };
	struct pixels reduced = ink_pixels(&print->ink, TWO_THIRDS);
	struct tones full = swatch(print, &print->full, FULL, area);
	struct tones less = swatch(print, &reduced, TWO_THIRDS, area);
	double marks = tones_blobs(print->ink.arena, full);
	enum hatch_kind kind = print->ink.style.areas[area].hatch;
	if (kind == HATCH_CROSS)
		marks = tones_blobs(print->ink.arena, tones_turned(print->ink.arena, full));
	if (kind == HATCH_CROSS)
		less = tones_turned(print->ink.arena, less);
	/* At the edges bits of marks come and go. */
	assert_near(tones_blobs(print->ink.arena, less) / marks, 1, 0.15);
}

static void test_reduced_to_two_thirds(void **state)
{
	(void)state;
	each_hatch(check_two_thirds);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_gaps),
		cmocka_unit_test(test_pitches),
		cmocka_unit_test(test_smallest_marks),
		cmocka_unit_test(test_hatch_is_solid),
		cmocka_unit_test(test_level_rows_meet_the_raster),
		cmocka_unit_test(test_scanned_half_size),
		cmocka_unit_test(test_tone_follows_the_figures),
		cmocka_unit_test(test_hatches_are_told_apart),
		cmocka_unit_test(test_lines_are_told_apart),
		cmocka_unit_test(test_one_phase),
		cmocka_unit_test(test_white_round_text),
		cmocka_unit_test(test_reduced_to_two_thirds),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "support/ink.h"
#include "support/program.h"

/* A bit of everything, with links that lead somewhere and one that does not. */
static struct ink scene(void)
{
	struct ink ink = ink_sheet("paper", 420, 297);
	struct arena *arena = ink.arena;
	struct list *list = ink.list;
	struct paper_path box = paper_path_box(arena, (struct paper_box){100, 100, 160, 140});
	list_stroke(list, LAYER_SLAB, PEN_WALL, "R1", box);
	list_area(list, LAYER_HOLDS, AREA_HOLD, "K<1>.hold", box);
	list_area(list, LAYER_CUTS, AREA_CUT_TILE, "A", box);
	list_stroke(list, LAYER_JOINTS, PEN_CARRIED_JOINT, "J1",
	            paper_path_segment(arena, paper_at(50, 50), paper_at(50, 200)));
	list_stroke(list, LAYER_NOTES, PEN_SYMBOL, NULL,
	            paper_path_circle(arena, paper_at(60, 60), 9));
	list_text(list, LAYER_NOTES, TEXT_BODY, "R1", paper_at(200, 50), ALIGN_START,
	          "Grout & seal <now>: año 12'-6 1/2\"");
	list_text_at(list, LAYER_NOTES, TEXT_STRONG, NULL, paper_at(30, 200),
	             (struct text_place){.is_upright = true}, "upright words");
	list_anchor(list, paper_at(200, 50), "note.1");
	list_link(list, (struct paper_box){200, 200, 230, 210}, "note.1");
	list_link(list, (struct paper_box){200, 220, 230, 230}, "two");
	list_link(list, (struct paper_box){200, 240, 230, 250}, "not-in-the-set");
	list_link(list, (struct paper_box){200, 260, 230, 270}, "R1");
	list_finish(list, (struct paper_box){0, 0, 420, 297});
	return ink;
}

static struct bytes draw_pdf(struct ink *ink)
{
	struct page pages[2] = {ink_page(ink), ink_page(ink)};
	pages[1].name = "two";
	pages[1].title = "Two's sheet";
	const struct view view = {.scale = 50};
	pages[1].view = &view;
	const struct document document = {"A floor", "Shop drawings", "jurystick", "2026-03-09"};
	struct bytes pdf;
	assert_int_equal(canvas_pdf(ink->arena, &document, pages, 2, &ink->diags, &pdf), STATUS_OK);
	return pdf;
}

static struct bytes draw_png(struct ink *ink)
{
	struct page page = ink_page(ink);
	struct bytes png;
	assert_int_equal(canvas_png(ink->arena, &page, 100, &ink->diags, &png), STATUS_OK);
	return png;
}

static struct bytes draw_svg(struct ink *ink)
{
	struct page page = ink_page(ink);
	return canvas_svg(ink->arena, &page);
}

static struct bytes draw_trace(struct ink *ink)
{
	struct page page = ink_page(ink);
	return canvas_trace(ink->arena, &page);
}

/* Twice in a process, the second time in another second: the same bytes. */
static void test_same_bytes(void **state)
{
	(void)state;
	struct bytes (*const draw[])(struct ink *) = {draw_pdf, draw_png, draw_svg, draw_trace};
	enum { FORMATS = sizeof draw / sizeof *draw };
	struct ink first = scene();
	struct bytes before[FORMATS];
	for (int i = 0; i < FORMATS; i++)
		before[i] = draw[i](&first);
	sleep(1);
	setenv("TZ", "Pacific/Kiritimati", 1);
	struct ink second = scene();
	for (int i = 0; i < FORMATS; i++) {
		struct bytes after = draw[i](&second);
		assert_int_equal(before[i].length, after.length);
		assert_memory_equal(before[i].data, after.data, after.length);
	}
	ink_release(&first);
	ink_release(&second);
}

/* Output of a command that reads the bytes from its standard input file. */
static char *read_back(struct ink *ink, struct bytes bytes, const char *command)
{
	char name[] = P_tmpdir "/test_canvas.XXXXXX";
	int fd = mkstemp(name);
	assert_true(fd >= 0 && write(fd, bytes.data, bytes.length) == (ssize_t)bytes.length);
	close(fd);
	FILE *pipe = popen(arena_printf(ink->arena, command, name), "r");
	assert_non_null(pipe);
	struct strbuf out = strbuf_in(ink->arena);
	char chunk[4096];
	for (size_t n; (n = fread(chunk, 1, sizeof chunk, pipe)) > 0;)
		strbuf_add_bytes(&out, chunk, n);
	strbuf_printf(&out, "[exit %d]", pclose(pipe));
	unlink(name);
	return out.text;
}

#define assert_has(text, part)                                               \
	do {                                                                 \
		if (!strstr((text), (part)))                                 \
			print_message("no \"%s\" in: %s\n", (part), (text)); \
		assert_non_null(strstr((text), (part)));                     \
	} while (0)

static void test_pdf_reads_back(void **state)
{
	(void)state;
	struct ink ink = scene();
	struct bytes pdf = draw_pdf(&ink);
	char *check = read_back(&ink, pdf, "qpdf --check %s 2>&1");
	assert_has(check, "No syntax or stream encoding errors found");
	assert_has(check, "[exit 0]");
	assert_null(strstr(check, "WARNING"));
	char *words = read_back(&ink, pdf, "pdftotext -f 2 -l 2 %s - 2>&1");
	assert_has(words, "Grout & seal <now>: año 12'-6 1/2\"");
	assert_has(words, "upright words");
	char *info = read_back(&ink, pdf, "pdfinfo -isodates %s 2>&1");
	assert_has(info, "A floor");
	assert_has(info, "Shop drawings");
	assert_has(info, "2026-03-09T00:00:00Z");
	assert_has(info, "Pages:           2");
	assert_has(info, "1190.55 x 841.89 pts (A3)");
	assert_null(strstr(info, "Error"));
	char *fonts = read_back(&ink, pdf, "pdffonts %s 2>&1");
	assert_has(fonts, "yes yes yes"); /* embedded, subset, with Unicode */
	ink_release(&ink);
}

static int times(const char *text, const char *part)
{
	int count = 0;
	for (; (text = strstr(text, part)); text++)
		count++;
	return count;
}

static void test_pdf_links_and_outline(void **state)
{
	(void)state;
	struct ink ink = scene();
	char *plain = read_back(&ink, draw_pdf(&ink), "qpdf --qdf --object-streams=disable %s -");
	/* On both pages one to the anchor and one to the element, on the first one to the second;
	 * none to the sheet that it stands on, or to one not there. */
	assert_int_equal(times(plain, "/Subtype /Link"), 5);
	assert_has(plain, "/Lang (en)");
	assert_null(strstr(plain, "not-in-the-set"));
	assert_has(plain, "/Title (Two's sheet)");
	assert_has(plain, "/PageLabels");
	/* Where it can be pressed: 200..230 mm across, 200..210 mm down, in points. */
	assert_has(plain, "566.9");
	assert_has(plain, "274.9"); /* 297 - 200 mm */
	ink_release(&ink);
}

static void test_svg_reads_back(void **state)
{
	(void)state;
	struct ink ink = scene();
	struct bytes svg = draw_svg(&ink);
	assert_has(read_back(&ink, svg, "xmllint --noout %s 2>&1"), "[exit 0]");
	const char *text = svg.data;
	assert_has(text, "width=\"420mm\" height=\"297mm\" viewBox=\"0 0 42000 29700\"");
	assert_has(text, "role=\"img\"");
	assert_has(text, "<title id=\"title\">Sheet one</title>");
	assert_has(text, "<g id=\"slab\">");
	assert_has(text, "<g data-id=\"K&lt;1&gt;.hold\">");
	assert_has(text, ">Grout &amp; seal &lt;now&gt;: año 12'-6 1/2&quot;</text>");
	assert_int_equal(times(text, "<g id=\""), 5);
	ink_release(&ink);
}

/* The SVG in librsvg and the PNG of our own are one picture: fewer than 1 pixel in 500
 * differ between dark and light (edges of strokes and signs). */
static void test_svg_and_png_agree(void **state)
{
	(void)state;
	struct ink ink = scene();
	struct pixels own = pixels_read(ink.arena, draw_png(&ink));
	char name[] = P_tmpdir "/test_canvas_png.XXXXXX";
	close(mkstemp(name));
	char *said = read_back(&ink, draw_svg(&ink),
	                       arena_printf(ink.arena,
	                                    "rsvg-convert -d 100 -p 100 -w %d -h %d %%s -o %s 2>&1",
	                                    own.width, own.height, name));
	assert_has(said, "[exit 0]");
	struct strbuf png = strbuf_in(ink.arena);
	char chunk[4096];
	FILE *file = fopen(name, "rb");
	assert_non_null(file);
	for (size_t n; (n = fread(chunk, 1, sizeof chunk, file)) > 0;)
		strbuf_add_bytes(&png, chunk, n);
	fclose(file);
	unlink(name);
	struct pixels other = pixels_read(ink.arena, strbuf_bytes(&png));
	int differ = 0, dark = 0;
	for (int i = 0; i < own.width * own.height; i++) {
		differ += abs(own.grey[i] - other.grey[i]) > 96;
		dark += own.grey[i] < 128;
	}
	assert_true(dark > 3000);
	assert_true(differ < own.width * own.height / 500);
	ink_release(&ink);
}

static void test_png_says_its_size(void **state)
{
	(void)state;
	struct ink ink = scene();
	struct bytes png = draw_png(&ink);
	/* pHYs: 3937 pixels a metre both ways is 100 dpi. */
	static const unsigned char phys[] = {'p',  'H', 'Y', 's',  0,    0, 0x0F,
	                                     0x61, 0,   0,   0x0F, 0x61, 1};
	bool is_found = false;
	for (size_t i = 0; i + sizeof phys < png.length && !is_found; i++)
		is_found = memcmp((const char *)png.data + i, phys, sizeof phys) == 0;
	assert_true(is_found);
	struct pixels pixels = pixels_read(ink.arena, png);
	assert_int_equal(pixels.width, 1654);
	assert_int_equal(pixels.height, 1169);
	ink_release(&ink);
}

static void test_trace(void **state)
{
	(void)state;
	struct ink ink = scene();
	const char *trace = draw_trace(&ink).data;
	assert_has(trace, "sheet one 420.000,297.000 \"Sheet one\"\n");
	assert_has(trace, "slab R1 stroke wall closed 100.000,100.000 160.000,100.000");
	assert_has(trace, "notes - text strong upright");
	ink_release(&ink);
}

static void test_empty_sheet(void **state)
{
	(void)state;
	struct ink ink = ink_sheet("paper", 100, 100);
	list_finish(ink.list, (struct paper_box){0, 0, 100, 100});
	assert_has(read_back(&ink, draw_pdf(&ink), "qpdf --check %s 2>&1"), "[exit 0]");
	assert_has(read_back(&ink, draw_svg(&ink), "xmllint --noout %s 2>&1"), "[exit 0]");
	assert_true(draw_png(&ink).length > 0);
	ink_release(&ink);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_same_bytes),
		cmocka_unit_test(test_pdf_reads_back),
		cmocka_unit_test(test_pdf_links_and_outline),
		cmocka_unit_test(test_svg_reads_back),
		cmocka_unit_test(test_svg_and_png_agree),
		cmocka_unit_test(test_png_says_its_size),
		cmocka_unit_test(test_trace),
		cmocka_unit_test(test_empty_sheet),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

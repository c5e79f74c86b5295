#include "support/ink.h"

#include <png.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void must(bool is_true, const char *what)
{
	if (is_true)
		return;
	fprintf(stderr, "ink: %s\n", what);
	abort();
}

struct ink ink_sheet(const char *style, double width, double height)
{
	struct ink ink = {.arena = arena_new()};
	ink.diags = diag_list_in(ink.arena, "test");
	must(text_engine_embedded(ink.arena, &ink.text) == STATUS_OK, "no font");
	must(style_embedded(ink.arena, style, 0, &ink.diags, &ink.style) == STATUS_OK, "no style");
	/* The style is copied into the arena: the struct ink may move. */
	struct style *kept = ARENA_NEW(ink.arena, struct style);
	*kept = ink.style;
	ink.list = list_new(ink.arena, kept, ink.text, width, height);
	return ink;
}

void ink_release(struct ink *ink)
{
	arena_free(ink->arena);
}

struct page ink_page(const struct ink *ink)
{
	return (struct page){.name = "one",
	                     .title = "Sheet one",
	                     .about = "A test.",
	                     .language = "en",
	                     .list = ink->list};
}

struct pixels pixels_read(struct arena *arena, struct bytes png)
{
	png_image image = {.version = PNG_IMAGE_VERSION};
	must(png_image_begin_read_from_memory(&image, png.data, png.length) != 0, image.message);
	image.format = PNG_FORMAT_GRAY;
	struct pixels p = {(int)image.width, (int)image.height,
	                   arena_alloc(arena, PNG_IMAGE_SIZE(image))};
	must(png_image_finish_read(&image, NULL, p.grey, 0, NULL) != 0, image.message);
	return p;
}

struct pixels ink_pixels(struct ink *ink, int dpi)
{
	struct page page = ink_page(ink);
	struct bytes png;
	must(canvas_png(ink->arena, &page, dpi, &ink->diags, &png) == STATUS_OK, "no PNG");
	return pixels_read(ink->arena, png);
}

static bool is_dark(const struct pixels *p, int x, int y)
{
	return p->grey[y * p->width + x] < 128;
}

struct pixel_box pixels_dark(const struct pixels *p)
{
	struct pixel_box b = {p->width, p->height, 0, 0};
	for (int y = 0; y < p->height; y++)
		for (int x = 0; x < p->width; x++) {
			if (!is_dark(p, x, y))
				continue;
			b.x0 = x < b.x0 ? x : b.x0;
			b.y0 = y < b.y0 ? y : b.y0;
			b.x1 = x + 1 > b.x1 ? x + 1 : b.x1;
			b.y1 = y + 1 > b.y1 ? y + 1 : b.y1;
		}
	return b;
}

int pixels_runs(const struct pixels *p, int y, int x0, int x1)
{
	int runs = 0;
	for (int x = x0; x < x1; x++)
		runs += is_dark(p, x, y) && (x == x0 || !is_dark(p, x - 1, y));
	return runs;
}

double chance(uint32_t *seed)
{
	*seed = *seed * 1664525u + 1013904223u;
	return (*seed >> 8) / (double)(1 << 24);
}

double pixels_tone(const struct pixels *pixels, int dpi, struct paper_box box)
{
	const double per_mm = dpi / 25.4;
	double sum = 0, count = 0;
	int darkest = 255;
	for (int y = (int)(box.y0 * per_mm); y < (int)(box.y1 * per_mm); y++)
		for (int x = (int)(box.x0 * per_mm); x < (int)(box.x1 * per_mm); x++, count++) {
			int grey = pixels->grey[y * pixels->width + x];
			sum += 255 - grey;
			darkest = grey < darkest ? grey : darkest;
		}
	return sum / count / (255 - darkest);
}

/* A sheet as PNG, through libpng because Cairo's own writer keeps no resolution. */
#include <png.h>
#include <setjmp.h>
#include <stdlib.h>

#include "drawing/canvas.h"
#include "drawing/canvas_cairo.h"

/* zlib level 3 without filters: half the time of the defaults at the same size for line
 * drawings (measured). */
enum { COMPRESSION = 3 };

static const double MM_PER_INCH = 25.4;

struct raster {
	const unsigned char *pixels; /* Cairo's RGB24: four bytes, blue first on this order */
	int width, height, stride;
	bool is_grey;
};

static uint32_t pixel_at(const struct raster *r, int x, int y)
{
	const uint32_t *row = (const void *)(r->pixels + (size_t)y * (size_t)r->stride);
	return row[x] & 0xFFFFFF;
}

static bool has_colour(const struct raster *r)
{
	for (int y = 0; y < r->height; y++)
		for (int x = 0; x < r->width; x++) {
			uint32_t p = pixel_at(r, x, y);
			if ((p & 255) != (p >> 8 & 255) || (p & 255) != p >> 16)
				return true;
		}
	return false;
}

static void fill_row(const struct raster *r, int y, unsigned char *row)
{
	for (int x = 0; x < r->width; x++) {
		uint32_t p = pixel_at(r, x, y);
		if (!r->is_grey) {
			*row++ = (unsigned char)(p >> 16);
			*row++ = (unsigned char)(p >> 8 & 255);
		}
		*row++ = (unsigned char)(p & 255);
	}
}

static void collect(png_structp png, png_bytep data, size_t length)
{
	strbuf_add_bytes(png_get_io_ptr(png), data, length);
}

static void flush(png_structp png)
{
	(void)png;
}

static void stop(png_structp png, png_const_charp message)
{
	diag_error(png_get_error_ptr(png), 0, "drawing failed: %s", message);
	longjmp(png_jmpbuf(png), 1);
}

static void ignore(png_structp png, png_const_charp message)
{
	(void)png, (void)message;
}

static void write_rows(png_structp png, png_infop info, const struct raster *r, int dpi,
                       unsigned char *row)
{
	png_set_compression_level(png, COMPRESSION);
	png_set_filter(png, 0, PNG_FILTER_NONE);
	png_set_IHDR(png, info, (png_uint_32)r->width, (png_uint_32)r->height, 8,
	             r->is_grey ? PNG_COLOR_TYPE_GRAY : PNG_COLOR_TYPE_RGB, PNG_INTERLACE_NONE,
	             PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
	png_uint_32 per_metre = (png_uint_32)lround(dpi * 1000 / MM_PER_INCH);
	png_set_pHYs(png, info, per_metre, per_metre, PNG_RESOLUTION_METER);
	png_write_info(png, info);
	for (int y = 0; y < r->height; y++) {
		fill_row(r, y, row);
		png_write_row(png, row);
	}
	png_write_end(png, info);
}

static enum status write_png(struct arena *arena, const struct raster *r, int dpi,
                             struct diag_list *diags, struct strbuf *out)
{
	png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, diags, stop, ignore);
	png_infop info = png ? png_create_info_struct(png) : NULL;
	unsigned char *row = ARENA_ARRAY(arena, unsigned char, (size_t)r->width * 3);
	if (!info || setjmp(png_jmpbuf(png))) {
		png_destroy_write_struct(&png, &info);
		return STATUS_LIBRARY;
	}
	png_set_write_fn(png, out, collect, flush);
	write_rows(png, info, r, dpi, row);
	png_destroy_write_struct(&png, &info);
	return STATUS_OK;
}

static enum status write_surface(struct arena *arena, cairo_surface_t *surface, int dpi,
                                 struct diag_list *diags, struct bytes *out_bytes)
{
	struct raster raster = {cairo_image_surface_get_data(surface),
	                        cairo_image_surface_get_width(surface),
	                        cairo_image_surface_get_height(surface),
	                        cairo_image_surface_get_stride(surface), false};
	raster.is_grey = !has_colour(&raster);
	struct strbuf png = strbuf_in(arena);
	enum status status = write_png(arena, &raster, dpi, diags, &png);
	*out_bytes = strbuf_bytes(&png);
	return status;
}

enum status canvas_png(struct arena *arena, const struct page *page, int dpi,
                       struct diag_list *diags, struct bytes *out_bytes)
{
	double scale = dpi / MM_PER_INCH;
	cairo_surface_t *surface =
		cairo_image_surface_create(CAIRO_FORMAT_RGB24,
	                                   (int)lround(page->list->width * scale),
	                                   (int)lround(page->list->height * scale));
	cairo_t *cr = cairo_create(surface);
	cairo_scale(cr, scale, scale);
	cairo_draw_paper(cr, page->list);
	cairo_draw_list(cr, page->list);
	cairo_status_t drawn = cairo_status(cr);
	cairo_destroy(cr);
	cairo_surface_flush(surface);
	enum status status = cairo_check(drawn, diags);
	if (!status)
		status = cairo_check(cairo_surface_status(surface), diags);
	if (!status)
		status = write_surface(arena, surface, dpi, diags, out_bytes);
	cairo_surface_destroy(surface);
	return status;
}

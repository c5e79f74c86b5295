#include "support/bare_cairo.h"

#include <cairo-pdf.h>
#include <stdlib.h>

#include "text/face_ft.h"

static const double POINTS_PER_MM = 72 / 25.4;

static void path(cairo_t *cr, struct paper_path p)
{
	for (size_t i = 0; i < p.count; i++) {
		const struct paper_line *line = &p.lines[i];
		bool curved = line->kind == PAPER_CURVE || line->kind == PAPER_RING;
		for (size_t k = 0; k < line->count; k += curved && k > 0 ? 3 : 1) {
			const struct paper_point *at = &line->points[k];
			if (k == 0)
				cairo_move_to(cr, at->x, at->y);
			else if (curved)
				cairo_curve_to(cr, at[0].x, at[0].y, at[1].x, at[1].y, at[2].x,
				               at[2].y);
			else
				cairo_line_to(cr, at->x, at->y);
		}
		if (line->kind == PAPER_CLOSED || line->kind == PAPER_RING)
			cairo_close_path(cr);
	}
}

static void bare_text(cairo_t *cr, const struct list *list, const struct op *op)
{
	const struct text_run *run = op->run;
	double scale = text_scale(list->text, run->weight, op->cap);
	cairo_glyph_t *glyphs = cairo_glyph_allocate((int)run->glyph_count + 1);
	for (size_t i = 0; i < run->glyph_count; i++)
		glyphs[i] =
			(cairo_glyph_t){run->glyphs[i].index,
		                        op->at.x + (op->is_upright ? 0 : run->glyphs[i].x * scale),
		                        op->at.y - (op->is_upright ? run->glyphs[i].x * scale : 0)};
	double size = op->cap * text_em(list->text, run->weight);
	cairo_set_font_face(cr, text_engine_face(list->text, run->weight)->drawer);
	cairo_set_font_matrix(cr, op->is_upright ? &(cairo_matrix_t){0, -size, size, 0, 0, 0}
	                                         : &(cairo_matrix_t){size, 0, 0, size, 0, 0});
	cairo_show_glyphs(cr, glyphs, (int)run->glyph_count);
	cairo_glyph_free(glyphs);
}

static void bare_op(cairo_t *cr, const struct list *list, const struct op *op)
{
	if (op->kind == OP_TEXT) {
		bare_text(cr, list, op);
		return;
	}
	path(cr, op->path);
	if (op->kind == OP_FILL) {
		cairo_fill(cr);
		return;
	}
	if (op->kind == OP_STROKE) {
		const struct pen_style *pen = &list->style->pens[op->role.pen];
		cairo_set_line_width(cr, pen->width);
		cairo_set_dash(cr, pen->dash, pen->dash_count, 0);
	} else {
		cairo_set_line_width(cr, list->style->areas[op->role.area].width);
		cairo_set_dash(cr, NULL, 0, 0);
	}
	cairo_stroke(cr);
}

static cairo_status_t collect(void *strbuf, const unsigned char *data, unsigned length)
{
	strbuf_add_bytes(strbuf, data, length);
	return CAIRO_STATUS_SUCCESS;
}

size_t bare_cairo(const struct page *pages, size_t count)
{
	struct arena *arena = arena_new();
	struct strbuf out = strbuf_in(arena);
	cairo_surface_t *surface = cairo_pdf_surface_create_for_stream(collect, &out, 1, 1);
	cairo_t *cr = cairo_create(surface);
	for (size_t i = 0; i < count; i++) {
		const struct list *list = pages[i].list;
		cairo_pdf_surface_set_size(surface, list->width * POINTS_PER_MM,
		                           list->height * POINTS_PER_MM);
		cairo_save(cr);
		cairo_scale(cr, POINTS_PER_MM, POINTS_PER_MM);
		/* Its cost would grow with the square of the ops without a page drawn first. */
		cairo_set_source_rgb(cr, 1, 1, 1);
		cairo_rectangle(cr, 0, 0, list->width, list->height);
		cairo_fill(cr);
		cairo_set_source_rgb(cr, 0, 0, 0);
		for (size_t k = 0; k < list->ops.count; k++)
			bare_op(cr, list, &list->ops.items[k]);
		cairo_restore(cr);
		cairo_show_page(cr);
	}
	if (cairo_status(cr) != CAIRO_STATUS_SUCCESS)
		abort();
	cairo_destroy(cr);
	cairo_surface_finish(surface);
	cairo_surface_destroy(surface);
	size_t length = out.length;
	arena_free(arena);
	return length;
}

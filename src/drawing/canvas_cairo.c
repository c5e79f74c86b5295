#include "drawing/canvas_cairo.h"

#include <stdlib.h>

#include "text/face_ft.h"
#include FT_ADVANCES_H

cairo_status_t cairo_collect(void *strbuf, const unsigned char *data, unsigned length)
{
	strbuf_add_bytes(strbuf, data, length);
	return CAIRO_STATUS_SUCCESS;
}

enum status cairo_check(cairo_status_t status, struct diag_list *diags)
{
	if (status == CAIRO_STATUS_SUCCESS)
		return STATUS_OK;
	diag_error(diags, 0, "drawing failed: %s", cairo_status_to_string(status));
	return STATUS_LIBRARY;
}

static void set_colour(cairo_t *cr, struct colour c)
{
	cairo_set_source_rgb(cr, c.red / 255.0, c.green / 255.0, c.blue / 255.0);
}

void cairo_draw_paper(cairo_t *cr, const struct list *list)
{
	set_colour(cr, list->style->paper);
	cairo_rectangle(cr, 0, 0, list->width, list->height);
	cairo_fill(cr);
}

static void add_line(cairo_t *cr, struct paper_line line)
{
	const struct paper_point *p = line.points;
	if (line.count == 0)
		return;
	cairo_move_to(cr, p[0].x, p[0].y);
	if (line.kind == PAPER_OPEN || line.kind == PAPER_CLOSED)
		for (size_t i = 1; i < line.count; i++)
			cairo_line_to(cr, p[i].x, p[i].y);
	else
		for (size_t i = 1; i + 2 < line.count; i += 3)
			cairo_curve_to(cr, p[i].x, p[i].y, p[i + 1].x, p[i + 1].y, p[i + 2].x,
			               p[i + 2].y);
	if (line.kind == PAPER_CLOSED || line.kind == PAPER_RING)
		cairo_close_path(cr);
}

static void add_path(cairo_t *cr, struct paper_path path)
{
	for (size_t i = 0; i < path.count; i++)
		add_line(cr, path.lines[i]);
}

static void draw_stroke(cairo_t *cr, const struct list *list, const struct op *op)
{
	const struct pen_style *pen = &list->style->pens[op->role.pen];
	add_path(cr, op->path);
	set_colour(cr, pen->colour);
	cairo_set_line_width(cr, pen->width);
	cairo_set_dash(cr, pen->dash, pen->dash_count, 0);
	cairo_set_line_cap(cr, pen->is_round ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
	cairo_set_line_join(cr, pen->is_round ? CAIRO_LINE_JOIN_ROUND : CAIRO_LINE_JOIN_MITER);
	if (pen->core > 0) {
		cairo_stroke_preserve(cr);
		set_colour(cr, list->style->paper);
		cairo_set_line_width(cr, pen->core);
	}
	cairo_stroke(cr);
}

static void draw_fill(cairo_t *cr, const struct list *list, const struct op *op)
{
	add_path(cr, op->path);
	set_colour(cr, list->style->areas[op->role.area].fill);
	cairo_set_fill_rule(cr, CAIRO_FILL_RULE_EVEN_ODD);
	cairo_fill(cr);
}

static void draw_hatch(cairo_t *cr, const struct list *list, const struct op *op)
{
	const struct area_style *area = &list->style->areas[op->role.area];
	add_path(cr, op->path);
	set_colour(cr, area->colour);
	cairo_set_line_width(cr, area->width);
	cairo_set_dash(cr, NULL, 0, 0);
	cairo_set_line_cap(cr,
	                   area->hatch == HATCH_DOTS ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
	cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
	cairo_stroke(cr);
}

/* A PDF's reader steps from glyph to glyph by widths in whole thousandths of an em, and Cairo
 * 1.16 cuts them off: what that leaves out of a glyph's step, in font units. Elsewhere nothing. */
static double lost_step(cairo_t *cr, const struct face *face, unsigned glyph)
{
	static const int PARTS = 1000;
	FT_Fixed advance;
	if (cairo_surface_get_type(cairo_get_target(cr)) != CAIRO_SURFACE_TYPE_PDF ||
	    FT_Get_Advance(face->outline, glyph, FT_LOAD_NO_SCALE, &advance))
		return 0;
	return (double)(advance * PARTS % face->upem) / PARTS;
}

/* Clusters tie the glyphs to their bytes of text, so that the words can be found and
 * copied. Each glyph that stands for no bytes of its own joins the one before. A blank goes
 * after the text: read aloud, it does not run into the next. */
static void show_run(cairo_t *cr, const struct list *list, const struct text_run *run, double scale)
{
	const struct face *face = text_engine_face(list->text, run->weight);
	const struct text_run *blank = text_shape(list->text, run->weight, " ");
	size_t count = run->glyph_count;
	cairo_glyph_t *glyphs = cairo_glyph_allocate((int)count + 1);
	cairo_text_cluster_t *clusters = cairo_text_cluster_allocate((int)count + 1);
	int cluster_count = 0, length = 0;
	double lost = 0;
	for (size_t i = 0; i < count; i++) {
		const struct text_glyph *g = &run->glyphs[i];
		glyphs[i] = (cairo_glyph_t){g->index, (g->x + lost) * scale, -g->y * scale};
		lost += lost_step(cr, face, g->index);
		if (g->length > 0)
			clusters[cluster_count++] = (cairo_text_cluster_t){(int)g->length, 0};
		if (cluster_count > 0)
			clusters[cluster_count - 1].num_glyphs++;
		length += (int)g->length;
	}
	glyphs[count] = (cairo_glyph_t){blank->glyphs[0].index, (run->advance + lost) * scale, 0};
	clusters[cluster_count++] = (cairo_text_cluster_t){1, 1};
	cairo_show_text_glyphs(cr, arena_printf(list->arena, "%.*s ", length, run->text),
	                       length + 1, glyphs, (int)count + 1, clusters, cluster_count,
	                       (cairo_text_cluster_flags_t)0);
	cairo_glyph_free(glyphs);
	cairo_text_cluster_free(clusters);
}

static void draw_text(cairo_t *cr, const struct list *list, const struct op *op)
{
	const struct face *face = text_engine_face(list->text, op->run->weight);
	double scale = text_scale(list->text, op->run->weight, op->cap);
	if (op->run->glyph_count == 0)
		return;
	cairo_save(cr);
	set_colour(cr, list->style->texts[op->role.text].colour);
	cairo_set_font_face(cr, face->drawer);
	cairo_set_font_size(cr, scale * face->upem);
	if (op->is_upright)
		cairo_transform(cr, &(cairo_matrix_t){0, -1, 1, 0, op->at.x, op->at.y});
	else
		cairo_translate(cr, op->at.x, op->at.y);
	show_run(cr, list, op->run, scale);
	cairo_restore(cr);
}

void cairo_set_text_options(cairo_t *cr)
{
	cairo_font_options_t *options = cairo_font_options_create();
	cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
	cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
	cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
	cairo_set_font_options(cr, options);
	cairo_font_options_destroy(options);
}

void cairo_draw_op(cairo_t *cr, const struct list *list, const struct op *op)
{
	switch (op->kind) {
	case OP_STROKE:
		draw_stroke(cr, list, op);
		break;
	case OP_FILL:
		draw_fill(cr, list, op);
		break;
	case OP_HATCH:
		draw_hatch(cr, list, op);
		break;
	case OP_TEXT:
		draw_text(cr, list, op);
		break;
	case OP_LINK:
		break; /* the PDF writer's */
	case OP_ANCHOR:
		break;
	}
}

void cairo_draw_list(cairo_t *cr, const struct list *list)
{
	cairo_set_text_options(cr);
	for (size_t i = 0; i < list->ops.count; i++)
		cairo_draw_op(cr, list, &list->ops.items[i]);
}

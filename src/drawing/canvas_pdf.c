/* The PDF of a set: one file, a page a sheet. */
#include <cairo-pdf.h>
#include <stdlib.h>
#include <string.h>

#include "drawing/canvas.h"
#include "drawing/canvas_cairo.h"

static const double POINTS_PER_MM = 72 / 25.4;

static bool has_target(const struct page *pages, size_t count, const char *target)
{
	for (size_t i = 0; i < count; i++) {
		if (strcmp(pages[i].name, target) == 0)
			return true;
		const struct list *list = pages[i].list;
		for (size_t j = 0; j < list->ops.count; j++)
			if (list->ops.items[j].kind == OP_ANCHOR &&
			    strcmp(list->ops.items[j].text, target) == 0)
				return true;
	}
	return false;
}

/* As Cairo's tag attributes want a string. */
static const char *quoted(struct arena *arena, const char *text)
{
	struct strbuf out = strbuf_in(arena);
	for (; *text; text++) {
		if (*text == '\'' || *text == '\\')
			strbuf_add_char(&out, '\\');
		strbuf_add_char(&out, *text);
	}
	return out.text ? out.text : "";
}

/* Tags are placed in points from the upper left of the page, whatever the context's own
 * units. Written without "%f", whose sign for the point is the locale's. */
static const char *points(struct arena *arena, double mm)
{
	long thousandths = lround(mm * POINTS_PER_MM * 1000);
	const char *sign = thousandths < 0 ? "-" : "";
	thousandths = labs(thousandths);
	return arena_printf(arena, "%s%ld.%03ld", sign, thousandths / 1000, thousandths % 1000);
}

static void add_destination(cairo_t *cr, struct arena *arena, const char *name,
                            struct paper_point at)
{
	cairo_tag_begin(cr, CAIRO_TAG_DEST,
	                arena_printf(arena, "name='%s' x=%s y=%s", quoted(arena, name),
	                             points(arena, at.x), points(arena, at.y)));
	cairo_tag_end(cr, CAIRO_TAG_DEST);
}

static void add_link(cairo_t *cr, struct arena *arena, const struct op *op)
{
	struct paper_box box = op->box;
	cairo_tag_begin(cr, CAIRO_TAG_LINK,
	                arena_printf(arena, "dest='%s' rect=[%s %s %s %s]", quoted(arena, op->text),
	                             points(arena, box.x0), points(arena, box.y0),
	                             points(arena, box.x1 - box.x0),
	                             points(arena, box.y1 - box.y0)));
	cairo_tag_end(cr, CAIRO_TAG_LINK);
}

static void add_tags(cairo_t *cr, struct arena *arena, const struct page *pages, size_t count,
                     const struct page *page)
{
	add_destination(cr, arena, page->name, paper_at(0, 0));
	const struct list *list = page->list;
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *op = &list->ops.items[i];
		if (op->kind == OP_ANCHOR)
			add_destination(cr, arena, op->text, op->at);
		/* A link to a sheet that was not asked for leads nowhere and is left out. */
		if (op->kind == OP_LINK && has_target(pages, count, op->text))
			add_link(cr, arena, op);
	}
}

static void add_page(cairo_surface_t *surface, cairo_t *cr, struct arena *arena,
                     const struct page *pages, size_t count, size_t index)
{
	const struct page *page = &pages[index];
	cairo_pdf_surface_set_size(surface, page->list->width * POINTS_PER_MM,
	                           page->list->height * POINTS_PER_MM);
	cairo_pdf_surface_set_page_label(surface, page->name);
	cairo_pdf_surface_add_outline(surface, CAIRO_PDF_OUTLINE_ROOT, page->title,
	                              arena_printf(arena, "page=%zu pos=[0.0 0.0]", index + 1),
	                              CAIRO_PDF_OUTLINE_FLAG_OPEN);
	cairo_save(cr);
	cairo_scale(cr, POINTS_PER_MM, POINTS_PER_MM);
	cairo_draw_paper(cr, page->list);
	/* Without a structure around them, links leave a damaged cross reference (Cairo 1.16). */
	cairo_tag_begin(cr, "Document", NULL);
	add_tags(cr, arena, pages, count, page);
	cairo_draw_list(cr, page->list);
	cairo_tag_end(cr, "Document");
	cairo_restore(cr);
	cairo_show_page(cr);
}

static void set_metadata(cairo_surface_t *surface, struct arena *arena,
                         const struct document *document)
{
	const struct {
		cairo_pdf_metadata_t key;
		const char *text;
	} entries[] = {
		{CAIRO_PDF_METADATA_TITLE, document->title},
		{CAIRO_PDF_METADATA_SUBJECT, document->subject},
		{CAIRO_PDF_METADATA_CREATOR, document->creator},
	};
	for (size_t i = 0; i < sizeof entries / sizeof *entries; i++)
		if (entries[i].text)
			cairo_pdf_surface_set_metadata(surface, entries[i].key, entries[i].text);
	const char *date = document->date ? document->date : "2000-01-01";
	cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE,
	                               arena_printf(arena, "%sT00:00:00+00:00", date));
}

/* Cairo 1.16 writes a date it was given as (20000101000000+00'00), without the D: that the
 * syntax asks for. The same place holds (D:20000101000000Z) and blanks. */
static void mend_date(struct strbuf *pdf)
{
	static const char key[] = "/CreationDate (", zone[] = "+00'00)";
	enum { KEY = sizeof key - 1, DIGITS = 14, ZONE = sizeof zone - 1 };
	for (size_t i = 0; i + KEY + DIGITS + ZONE <= pdf->length; i++) {
		char *digits = pdf->text + i + KEY;
		if (memcmp(pdf->text + i, key, KEY) != 0 ||
		    memcmp(digits + DIGITS, zone, ZONE) != 0)
			continue;
		memmove(digits + 2, digits, DIGITS);
		memcpy(digits, "D:", 2);
		memcpy(digits + 2 + DIGITS, "Z)   ", ZONE - 2);
		return;
	}
}

enum status canvas_pdf(struct arena *arena, const struct document *document,
                       const struct page *pages, size_t count, struct diag_list *diags,
                       struct bytes *out_bytes)
{
	struct strbuf pdf = strbuf_in(arena);
	cairo_surface_t *surface = cairo_pdf_surface_create_for_stream(cairo_collect, &pdf, 1, 1);
	cairo_t *cr = cairo_create(surface);
	set_metadata(surface, arena, document);
	for (size_t i = 0; i < count; i++)
		add_page(surface, cr, arena, pages, count, i);
	cairo_status_t drawn = cairo_status(cr);
	cairo_destroy(cr);
	cairo_surface_finish(surface); /* only now is the surface's own status worth anything */
	cairo_status_t finished = cairo_surface_status(surface);
	cairo_surface_destroy(surface);
	mend_date(&pdf);
	*out_bytes = strbuf_bytes(&pdf);
	return cairo_check(drawn ? drawn : finished, diags);
}

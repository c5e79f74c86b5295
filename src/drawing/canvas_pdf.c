/* The PDF of a set: one file, a page a sheet. */
#include <cairo-pdf.h>
#include <stdlib.h>
#include <string.h>

#include "drawing/canvas.h"
#include "drawing/canvas_cairo.h"
#include "drawing/pdf_mend.h"

static const double POINTS_PER_MM = 72 / 25.4;

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

/* ---- where links lead: sheets, anchors, and elements that a link names ---- */

struct target {
	const char *name;
	size_t page;
	struct paper_point at;
};

struct targets {
	struct arena *arena;
	const struct page *pages;
	size_t page_count;
	ARRAY_OF(struct target) list;
};

static const struct target *find_target(const struct targets *t, const char *name)
{
	for (size_t i = 0; i < t->list.count; i++)
		if (strcmp(t->list.items[i].name, name) == 0)
			return &t->list.items[i];
	return NULL;
}

static void add_target(struct targets *t, const char *name, size_t page, struct paper_point at)
{
	if (!find_target(t, name))
		*array_push(t->arena, &t->list) = (struct target){name, page, at};
}

/* An element lies where the first view of the floor that has a tag of it has the tag. */
static void add_element(struct targets *t, const char *element)
{
	for (size_t i = 0; i < t->page_count; i++) {
		const struct list *list = t->pages[i].list;
		for (size_t k = 0; t->pages[i].view && k < list->ops.count; k++) {
			const struct op *op = &list->ops.items[k];
			if (op->kind != OP_TEXT || !op->element ||
			    strcmp(op->element, element) != 0)
				continue;
			add_target(t, element, i, op->at);
			return;
		}
	}
}

static struct targets targets_of(struct arena *arena, const struct page *pages, size_t count)
{
	struct targets t = {arena, pages, count, {0}};
	for (size_t i = 0; i < count; i++)
		add_target(&t, pages[i].name, i, paper_at(0, 0));
	for (int links = 0; links <= 1; links++)
		for (size_t i = 0; i < count; i++)
			for (size_t k = 0; k < pages[i].list->ops.count; k++) {
				const struct op *op = &pages[i].list->ops.items[k];
				if (op->kind == OP_ANCHOR && !links)
					add_target(&t, op->text, i, op->at);
				if (op->kind == OP_LINK && links && !find_target(&t, op->text))
					add_element(&t, op->text);
			}
	return t;
}

static void add_destination(cairo_t *cr, struct arena *arena, const struct target *target)
{
	cairo_tag_begin(cr, CAIRO_TAG_DEST,
	                arena_printf(arena, "name='%s' x=%s y=%s", quoted(arena, target->name),
	                             points(arena, target->at.x), points(arena, target->at.y)));
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

static void add_tags(cairo_t *cr, const struct targets *targets, size_t page)
{
	const struct list *list = targets->pages[page].list;
	for (size_t i = 0; i < targets->list.count; i++)
		if (targets->list.items[i].page == page)
			add_destination(cr, targets->arena, &targets->list.items[i]);
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *op = &list->ops.items[i];
		const struct target *target =
			op->kind == OP_LINK ? find_target(targets, op->text) : NULL;
		/* A link to a sheet that was not asked for leads nowhere and is left out, and so
		 * is one to the sheet that it stands on. */
		if (target && (target->page != page || target->at.y > 0))
			add_link(cr, targets->arena, op);
	}
}

/* ---- structure, for those who have the sheets read to them: the title, each paragraph of notes
 * and each row of a table, and what a layer says besides as one figure. A tag on every number of
 * a drawing would weigh more than the drawing. Cairo 1.16 marks what has no tags inside. ---- */

static const char FIGURE[] = "Figure";

/* NULL: lines between notes, which say nothing. */
static const char *tag_of(const struct op *op)
{
	if (op->kind == OP_TEXT && op->role.text == TEXT_TITLE)
		return "H1";
	if (op->layer != LAYER_NOTES)
		return FIGURE;
	return op->kind == OP_TEXT ? "P" : NULL;
}

/* Lines of a paragraph begin at one x, its mark and the cells of a row stand on one baseline. */
static bool goes_on(const struct op *before, const struct op *op)
{
	if (before->layer != op->layer || tag_of(before) != tag_of(op))
		return false;
	return op->layer != LAYER_NOTES || before->at.x == op->at.x || before->at.y == op->at.y;
}

static const char *told_of(struct arena *arena, const struct page *page, enum layer layer)
{
	return page->layers ? arena_printf(arena, "%s: %s", page->title, page->layers[layer])
	                    : page->title;
}

static void draw_ops(cairo_t *cr, struct arena *arena, const struct page *page,
                     struct pdf_figures *figures)
{
	const struct list *list = page->list;
	const struct op *before = NULL;
	const char *open = NULL;
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *op = &list->ops.items[i];
		if (op->kind == OP_LINK || op->kind == OP_ANCHOR)
			continue;
		if (open && !goes_on(before, op)) {
			cairo_tag_end(cr, open);
			open = NULL;
		}
		if (!open && (open = tag_of(op)) != NULL) {
			cairo_tag_begin(cr, open, NULL);
			if (strcmp(open, FIGURE) == 0)
				*array_push(arena, &figures->told) =
					told_of(arena, page, op->layer);
		}
		cairo_draw_op(cr, list, op);
		before = op;
	}
	if (open)
		cairo_tag_end(cr, open);
}

static void add_page(cairo_surface_t *surface, cairo_t *cr, const struct targets *targets,
                     size_t index, struct pdf_figures *figures)
{
	const struct page *page = &targets->pages[index];
	cairo_pdf_surface_set_size(surface, page->list->width * POINTS_PER_MM,
	                           page->list->height * POINTS_PER_MM);
	cairo_pdf_surface_set_page_label(surface, page->name);
	cairo_pdf_surface_add_outline(surface, CAIRO_PDF_OUTLINE_ROOT, page->title,
	                              arena_printf(targets->arena, "page=%zu pos=[0.0 0.0]",
	                                           index + 1),
	                              CAIRO_PDF_OUTLINE_FLAG_OPEN);
	cairo_save(cr);
	cairo_scale(cr, POINTS_PER_MM, POINTS_PER_MM);
	cairo_draw_paper(cr, page->list);
	/* The set is one document, each sheet a part of it. It begins only now: what is drawn over
	 * the whole page takes away the tags before it. And without a structure around them, links
	 * leave a damaged cross reference (Cairo 1.16). */
	if (index == 0)
		cairo_tag_begin(cr, "Document", NULL);
	cairo_tag_begin(cr, "Sect", NULL);
	add_tags(cr, targets, index);
	cairo_set_text_options(cr);
	draw_ops(cr, targets->arena, page, figures);
	cairo_tag_end(cr, "Sect");
	if (index + 1 == targets->page_count)
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

enum status canvas_pdf(struct arena *arena, const struct document *document,
                       const struct page *pages, size_t count, struct diag_list *diags,
                       struct bytes *out_bytes)
{
	struct strbuf pdf = strbuf_in(arena);
	cairo_surface_t *surface = cairo_pdf_surface_create_for_stream(cairo_collect, &pdf, 1, 1);
	cairo_t *cr = cairo_create(surface);
	set_metadata(surface, arena, document);
	struct targets targets = targets_of(arena, pages, count);
	struct pdf_figures figures = {0};
	for (size_t i = 0; i < count; i++)
		add_page(surface, cr, &targets, i, &figures);
	cairo_status_t drawn = cairo_status(cr);
	cairo_destroy(cr);
	cairo_surface_finish(surface); /* only now is the surface's own status worth anything */
	cairo_status_t finished = cairo_surface_status(surface);
	cairo_surface_destroy(surface);
	struct strbuf mended = pdf_mended(&pdf, count > 0 ? pages[0].language : "en", &figures);
	*out_bytes = strbuf_bytes(&mended);
	return cairo_check(drawn ? drawn : finished, diags);
}

/* canvas.h - finished lists replayed to the forms a person or a test reads.
 * Units: paper mm. Owns: bytes live in the arena given; nothing is written to a file
 * (cli/publish.h does that). Fails: STATUS_LIBRARY where a foreign library reports a
 * fault; its message is in `diags`.
 * Invariants: the same pages give the same bytes, at any time and in any process. */
#ifndef DRAWING_CANVAS_H
#define DRAWING_CANVAS_H
#include "base/diag.h"
#include "base/strbuf.h"
#include "drawing/list.h"
#include "drawing/view.h"

struct page {
	const char *name;     /* of the sheet, as links and file names have it: `install` */
	const char *title;    /* for a person: "Install - Kitchen" */
	const char *about;    /* a sentence or two that says what is seen */
	const char *language; /* `en`, `es` */
	/* What each layer shows, by enum layer, for those who do not see it. */
	const char *const *layers;
	/* Before every SVG id, where several pages share one file; or NULL. */
	const char *id_prefix;
	const struct list *list;
	const struct view *view; /* of the floor on it; NULL: it shows none */
};

struct document {
	const char *title, *subject, *creator;
	const char *date; /* of the plan, YYYY-MM-DD; NULL: 2000-01-01. Never the clock. */
};

/* All pages in one PDF: outline entry and page label a sheet, links, metadata. */
CHECK_USED enum status canvas_pdf(struct arena *, const struct document *, const struct page *,
                                  size_t count, struct diag_list *, struct bytes *out_bytes);
/* One page as SVG at true size, a named group a layer (id: the layer's name, and where ids have
 * a prefix `data-layer` without it), plan ids as `data-id`. Text is drawn as outlines of our own
 * font, so that it looks the same in every viewer (librsvg takes no embedded font, browsers no
 * missing one), with the words over it as invisible <text> that can be searched, selected and
 * read aloud. */
struct bytes canvas_svg(struct arena *, const struct page *);
/* One page as PNG; `dpi` is written in it. */
CHECK_USED enum status canvas_png(struct arena *, const struct page *, int dpi, struct diag_list *,
                                  struct bytes *out_bytes);
/* One page as text, an op a line, for comparison in tests. */
struct bytes canvas_trace(struct arena *, const struct page *);

#endif

/* canvas_cairo.h - a list replayed to a Cairo context; shared by the PDF and PNG writers.
 * Units: the context's own are paper mm. */
#ifndef DRAWING_CANVAS_CAIRO_H
#define DRAWING_CANVAS_CAIRO_H
#include <cairo.h>

#include "base/diag.h"
#include "drawing/list.h"

/* Fills the page with the paper's colour. To be done first: without it Cairo's cost grows with
 * the square of the ops, and it would erase tags recorded before it. */
void cairo_draw_paper(cairo_t *, const struct list *);
/* Every op, in its order. */
void cairo_draw_list(cairo_t *, const struct list *);
/* The same op by op; text as it is measured, without hints, is asked for first. */
void cairo_set_text_options(cairo_t *);
void cairo_draw_op(cairo_t *, const struct list *, const struct op *);
/* STATUS_LIBRARY with the library's words in `diags`, unless it is a success. */
CHECK_USED enum status cairo_check(cairo_status_t, struct diag_list *);
/* Appends to the strbuf given as closure. */
cairo_status_t cairo_collect(void *strbuf, const unsigned char *data, unsigned length);

#endif

/* bare_cairo.h - lists replayed to a PDF with nothing but what draws them: every path, every
 * glyph, the width of each pen. What our own writer does beside that is measured against it. */
#ifndef SUPPORT_BARE_CAIRO_H
#define SUPPORT_BARE_CAIRO_H
#include "drawing/canvas.h"

/* Bytes of the PDF. */
size_t bare_cairo(const struct page *pages, size_t count);

#endif

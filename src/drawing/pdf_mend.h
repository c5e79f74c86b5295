/* pdf_mend.h - what Cairo 1.16 leaves undone in a PDF, put right in its bytes.
 * Owns: the text's own arena. A file that is not as Cairo writes it stays as it is.
 * Source: ISO 32000-1 7.9.2 (text), 7.9.4 (dates), 7.5.4 (table of places), 14.9.2 (language),
 * 14.9.3 (alternative text), 12.2 (title in the window's bar). */
#ifndef DRAWING_PDF_MEND_H
#define DRAWING_PDF_MEND_H
#include "base/array.h"
#include "base/strbuf.h"

/* What each figure shows, in the order in which they were begun. */
struct pdf_figures {
	ARRAY_OF(const char *) told;
};

/* A date as it should be written; its language, and that its title is shown, not its name; an
 * alternative text for each figure. */
struct strbuf pdf_mended(const struct strbuf *pdf, const char *language,
                         const struct pdf_figures *);

#endif

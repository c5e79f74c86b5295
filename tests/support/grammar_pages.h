/* grammar_pages.h - what is written from the grammar's table: the schema and the tables of
 * the reference page.
 * Owns: the text goes to the buffer given. */
#ifndef SUPPORT_GRAMMAR_PAGES_H
#define SUPPORT_GRAMMAR_PAGES_H
#include "base/strbuf.h"

/* docs/floor.xsd: XML Schema. */
void grammar_write_schema(struct strbuf *);
/* docs/floor-format.md from its line `<!-- tables -->` on. */
void grammar_write_tables(struct strbuf *);

#endif

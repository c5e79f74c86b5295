/* tag_scan.h - lines of tags, attributes and text in an XML text.
 * The parser tells values, not places; this walks the same bytes beside it. It also finds
 * what must not reach the parser: a DOCTYPE, and a tag long enough to choke it.
 * Owns: nothing; the bytes are borrowed. */
#ifndef PLAN_TAG_SCAN_H
#define PLAN_TAG_SCAN_H
#include <stdbool.h>
#include <stddef.h>

struct tag_scan {
	const char *at, *end;
	int line;
	bool in_tag; /* between a start tag's `<` and its `>` */
};

struct tag_scan tag_scan_start(const char *bytes, size_t length);
/* Goes to the next start tag: `line` is that of its `<`. False: there is none. */
bool tag_scan_next(struct tag_scan *);
/* Inside a start tag: goes past its next attribute and tells its line; 0 at the tag's end. */
int tag_scan_attribute(struct tag_scan *);
/* From a start tag's end, or from where an element ended: goes past the element's end. */
void tag_scan_leave(struct tag_scan *);
/* Line of the next text that is not blank. */
int tag_scan_text(struct tag_scan);
/* Line of the attribute of the next start tag that has the name of one before it; 0: none. */
int tag_scan_repeated(struct tag_scan);

/* Line of the first start tag longer than `most` bytes, of one with more than `most`
 * attributes, of a DOCTYPE; 0: none. */
int tag_scan_find_long(const char *bytes, size_t length, size_t most);
int tag_scan_find_crowded(const char *bytes, size_t length, size_t most);
int tag_scan_find_doctype(const char *bytes, size_t length);

#endif

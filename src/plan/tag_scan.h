/* tag_scan.h - lines of start tags and attributes in an XML text.
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
};

struct tag_scan tag_scan_start(const char *bytes, size_t length);
/* Goes to the next start tag: `line` is that of its `<`. False: there is none. */
bool tag_scan_next(struct tag_scan *);
/* Inside a start tag: goes to its next attribute and tells its line; 0 at the tag's end. */
int tag_scan_attribute(struct tag_scan *);

/* Line of the first tag longer than `most` bytes, or of a DOCTYPE; 0: none. */
int tag_scan_find_long(const char *bytes, size_t length, size_t most);
int tag_scan_find_doctype(const char *bytes, size_t length);

#endif

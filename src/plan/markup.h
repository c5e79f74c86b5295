/* markup.h - an XML text as a tree of elements with the line of each element and attribute,
 * and nothing of what they mean.
 * Owns: the tree lives in the arena given. Fails: STATUS_INPUT on text that is not
 * well-formed, a DOCTYPE, another encoding than UTF-8, or a limit passed; what is wrong is
 * reported once, with its line. No entity is ever loaded or expanded.
 * Source of the limits: docs/floor-format.md#limits. */
#ifndef PLAN_MARKUP_H
#define PLAN_MARKUP_H
#include "base/diag.h"
#include "base/status.h"

enum {
	MARKUP_MOST_BYTES = 16 * 1024 * 1024,
	MARKUP_MOST_TAG_BYTES = 64 * 1024,
	MARKUP_MOST_ATTRIBUTES = 64, /* of a tag; the parser compares each with each */
	MARKUP_MOST_DEPTH = 16,
	MARKUP_MOST_ELEMENTS = 1000000,
};

struct markup_attribute {
	const char *name, *value;
	int line;
};

struct markup {
	const char *name;
	int line; /* of the `<` of its start tag */
	struct markup_attribute *attributes;
	size_t attribute_count;
	struct markup *parent, *first_child, *last_child, *next;
	int text_line; /* where it holds text that is not blank; 0: nowhere */
};

/* NULL: the element has no such attribute. */
const struct markup_attribute *markup_find(const struct markup *, const char *name);

enum status markup_parse(struct arena *, const char *bytes, size_t length, struct diag_list *,
                         struct markup **out_root) CHECK_USED;

#endif

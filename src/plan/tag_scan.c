#include "plan/tag_scan.h"

#include <string.h>

struct tag_scan tag_scan_start(const char *bytes, size_t length)
{
	return (struct tag_scan){bytes, bytes + length, 1, false};
}

static bool is_past(const struct tag_scan *scan)
{
	return scan->at >= scan->end;
}

static void step(struct tag_scan *scan)
{
	scan->line += *scan->at == '\n';
	scan->at++;
}

static bool is_at(const struct tag_scan *scan, const char *word)
{
	size_t length = strlen(word);
	return (size_t)(scan->end - scan->at) >= length && memcmp(scan->at, word, length) == 0;
}

static void skip_word(struct tag_scan *scan, const char *word)
{
	for (size_t i = strlen(word); i && !is_past(scan); i--)
		step(scan);
}

static void skip_past(struct tag_scan *scan, const char *word)
{
	while (!is_past(scan) && !is_at(scan, word))
		step(scan);
	skip_word(scan, word);
}

/* Over a comment, a CDATA section, a processing instruction; false: none of them is here. */
static bool skip_other(struct tag_scan *scan)
{
	static const char *const others[][2] = {{"<!--", "-->"},
	                                        {"<![CDATA[", "]]>"},
	                                        {"<?", "?>"}};
	for (size_t i = 0; i < sizeof others / sizeof *others; i++)
		if (is_at(scan, others[i][0])) {
			skip_word(scan, others[i][0]);
			skip_past(scan, others[i][1]);
			return true;
		}
	return false;
}

static bool is_blank(char c)
{
	return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

bool tag_scan_next(struct tag_scan *scan)
{
	while (!is_past(scan)) {
		if (skip_other(scan))
			continue;
		if (is_at(scan, "</") || is_at(scan, "<!"))
			skip_past(scan, ">");
		else if (*scan->at != '<')
			step(scan);
		else
			break;
	}
	scan->in_tag = !is_past(scan);
	return scan->in_tag;
}

/* ---- inside a start tag ---- */

static void skip_name(struct tag_scan *scan)
{
	while (!is_past(scan) && !is_blank(*scan->at) && !strchr("=/>", *scan->at))
		step(scan);
}

static void skip_blanks(struct tag_scan *scan)
{
	while (!is_past(scan) && is_blank(*scan->at))
		step(scan);
}

/* From a name over `=` to behind the closing quote. */
static void skip_value(struct tag_scan *scan)
{
	while (!is_past(scan) && !strchr("\"'>", *scan->at))
		step(scan);
	if (is_past(scan) || *scan->at == '>')
		return;
	char quote = *scan->at;
	step(scan);
	while (!is_past(scan) && *scan->at != quote)
		step(scan);
	if (!is_past(scan))
		step(scan);
}

/* To the name of the next attribute; false at the tag's end. */
static bool go_to_attribute(struct tag_scan *scan)
{
	if (!is_past(scan) && *scan->at == '<') {
		step(scan);
		skip_name(scan);
	}
	skip_blanks(scan);
	return !is_past(scan) && *scan->at != '/' && *scan->at != '>';
}

int tag_scan_attribute(struct tag_scan *scan)
{
	if (!go_to_attribute(scan))
		return 0;
	int line = scan->line;
	skip_name(scan);
	skip_value(scan);
	return line;
}

static bool has_name(struct tag_scan other, const char *name, size_t length)
{
	const char *start = other.at;
	skip_name(&other);
	return (size_t)(other.at - start) == length && memcmp(start, name, length) == 0;
}

int tag_scan_repeated(struct tag_scan scan)
{
	if (!tag_scan_next(&scan))
		return 0;
	struct tag_scan tag = scan;
	while (go_to_attribute(&scan)) {
		struct tag_scan name = scan;
		skip_name(&name);
		for (struct tag_scan other = tag; go_to_attribute(&other) && other.at < scan.at;
		     tag_scan_attribute(&other))
			if (has_name(other, scan.at, (size_t)(name.at - scan.at)))
				return scan.line;
		tag_scan_attribute(&scan);
	}
	return 0;
}

/* ---- outside of it ---- */

void tag_scan_leave(struct tag_scan *scan)
{
	bool is_empty = scan->in_tag && is_at(scan, "/>");
	scan->in_tag = false;
	while (!is_empty && !is_past(scan) && !is_at(scan, "</"))
		if (!skip_other(scan))
			step(scan);
	skip_past(scan, ">");
}

int tag_scan_text(struct tag_scan scan)
{
	if (scan.in_tag)
		skip_past(&scan, ">");
	while (!is_past(&scan) && (is_blank(*scan.at) || *scan.at == '<'))
		if (is_at(&scan, "<![CDATA["))
			skip_word(&scan, "<![CDATA[");
		else if (!skip_other(&scan))
			step(&scan);
	return scan.line;
}

/* ---- what must not reach the parser ---- */

int tag_scan_find_long(const char *bytes, size_t length, size_t most)
{
	struct tag_scan scan = tag_scan_start(bytes, length);
	while (tag_scan_next(&scan)) {
		const char *start = scan.at;
		int line = scan.line;
		do
			if ((size_t)(scan.at - start) > most)
				return line;
		while (tag_scan_attribute(&scan));
		if ((size_t)(scan.at - start) > most)
			return line;
	}
	return 0;
}

int tag_scan_find_crowded(const char *bytes, size_t length, size_t most)
{
	struct tag_scan scan = tag_scan_start(bytes, length);
	while (tag_scan_next(&scan)) {
		int line = scan.line;
		size_t count = 0;
		while (tag_scan_attribute(&scan))
			if (++count > most)
				return line;
	}
	return 0;
}

int tag_scan_find_doctype(const char *bytes, size_t length)
{
	struct tag_scan scan = tag_scan_start(bytes, length);
	while (!is_past(&scan)) {
		if (is_at(&scan, "<!DOCTYPE"))
			return scan.line;
		if (skip_other(&scan))
			continue;
		if (*scan.at == '<')
			return 0; /* the root element: no DOCTYPE can follow */
		step(&scan);
	}
	return 0;
}

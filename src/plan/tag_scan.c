#include "plan/tag_scan.h"

#include <string.h>

struct tag_scan tag_scan_start(const char *bytes, size_t length)
{
	return (struct tag_scan){bytes, bytes + length, 1};
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

static void skip_past(struct tag_scan *scan, const char *word)
{
	while (scan->at < scan->end && !is_at(scan, word))
		step(scan);
	for (size_t i = strlen(word); i && scan->at < scan->end; i--)
		step(scan);
}

static bool is_blank(char c)
{
	return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

bool tag_scan_next(struct tag_scan *scan)
{
	while (scan->at < scan->end) {
		if (*scan->at != '<')
			step(scan);
		else if (is_at(scan, "<!--"))
			skip_past(scan, "-->");
		else if (is_at(scan, "<![CDATA["))
			skip_past(scan, "]]>");
		else if (is_at(scan, "<?"))
			skip_past(scan, "?>");
		else if (is_at(scan, "</") || is_at(scan, "<!"))
			skip_past(scan, ">");
		else
			break;
	}
	return scan->at < scan->end;
}

static void skip_name(struct tag_scan *scan)
{
	while (scan->at < scan->end && !is_blank(*scan->at) && !strchr("=/>", *scan->at))
		step(scan);
}

static void skip_blanks(struct tag_scan *scan)
{
	while (scan->at < scan->end && is_blank(*scan->at))
		step(scan);
}

/* From a name over `=` to behind the closing quote. */
static void skip_value(struct tag_scan *scan)
{
	while (scan->at < scan->end && *scan->at != '"' && *scan->at != '\'' && *scan->at != '>')
		step(scan);
	if (scan->at == scan->end || *scan->at == '>')
		return;
	char quote = *scan->at;
	step(scan);
	while (scan->at < scan->end && *scan->at != quote)
		step(scan);
	if (scan->at < scan->end)
		step(scan);
}

int tag_scan_attribute(struct tag_scan *scan)
{
	if (scan->at < scan->end && *scan->at == '<') {
		step(scan);
		skip_name(scan);
	}
	skip_blanks(scan);
	if (scan->at == scan->end || *scan->at == '/' || *scan->at == '>')
		return 0;
	int line = scan->line;
	skip_name(scan);
	skip_value(scan);
	return line;
}

int tag_scan_find_long(const char *bytes, size_t length, size_t most)
{
	struct tag_scan scan = tag_scan_start(bytes, length);
	while (tag_scan_next(&scan)) {
		const char *start = scan.at;
		int line = scan.line;
		while (tag_scan_attribute(&scan))
			if ((size_t)(scan.at - start) > most)
				return line;
		if ((size_t)(scan.at - start) > most)
			return line;
		if (scan.at == start)
			step(&scan);
	}
	return 0;
}

int tag_scan_find_doctype(const char *bytes, size_t length)
{
	struct tag_scan scan = tag_scan_start(bytes, length);
	while (scan.at < scan.end) {
		if (is_at(&scan, "<!DOCTYPE"))
			return scan.line;
		if (is_at(&scan, "<!--"))
			skip_past(&scan, "-->");
		else if (is_at(&scan, "<?"))
			skip_past(&scan, "?>");
		else if (*scan.at == '<')
			return 0; /* the root element: no DOCTYPE can follow */
		else
			step(&scan);
	}
	return 0;
}

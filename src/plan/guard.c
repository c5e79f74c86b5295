#include "plan/guard.h"

#include <string.h>
#include <strings.h>

#include "plan/markup.h"
#include "plan/tag_scan.h"

/* ---- encoding ---- */

/* Bytes of the UTF-8 character at `at`; 0: it is none. Ranges: RFC 3629, section 4. */
static size_t character_length(const unsigned char *at, size_t left)
{
	static const struct {
		unsigned char first_low, first_high, second_low, second_high;
		size_t length;
	} forms[] = {
		{0x01, 0x7f, 0x00, 0x00, 1}, {0xc2, 0xdf, 0x80, 0xbf, 2},
		{0xe0, 0xe0, 0xa0, 0xbf, 3}, {0xe1, 0xec, 0x80, 0xbf, 3},
		{0xed, 0xed, 0x80, 0x9f, 3}, {0xee, 0xef, 0x80, 0xbf, 3},
		{0xf0, 0xf0, 0x90, 0xbf, 4}, {0xf1, 0xf3, 0x80, 0xbf, 4},
		{0xf4, 0xf4, 0x80, 0x8f, 4},
	};
	for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
		if (*at < forms[i].first_low || *at > forms[i].first_high || left < forms[i].length)
			continue;
		bool is_good = forms[i].length == 1 ||
		               (at[1] >= forms[i].second_low && at[1] <= forms[i].second_high);
		for (size_t k = 2; k < forms[i].length; k++)
			is_good = is_good && at[k] >= 0x80 && at[k] <= 0xbf;
		return is_good ? forms[i].length : 0;
	}
	return 0;
}

/* Line of the first byte that is not of a UTF-8 character; 0: none. */
static int find_foreign(const char *bytes, size_t length)
{
	int line = 1;
	for (size_t at = 0, step; at < length; at += step) {
		step = character_length((const unsigned char *)bytes + at, length - at);
		if (step == 0)
			return line;
		line += bytes[at] == '\n';
	}
	return 0;
}

/* Line of the first control character that no XML text may hold; 0: none. */
static int find_control(const char *bytes, size_t length)
{
	int line = 1;
	for (size_t at = 0; at < length; at++) {
		unsigned char byte = (unsigned char)bytes[at];
		if (byte < 0x20 && byte != '\t' && byte != '\n' && byte != '\r')
			return line;
		line += byte == '\n';
	}
	return 0;
}

/* The XML declaration may name an encoding that would be believed over the bytes. */
static bool declares_another(const char *bytes, size_t length)
{
	static const char named[] = "encoding", utf8[] = "UTF-8";
	size_t at = 0;
	while (at < length && bytes[at] != '>')
		at++;
	if (length < 5 || memcmp(bytes, "<?xml", 5) != 0)
		return false;
	for (size_t i = 5; i + sizeof named < at; i++) {
		if (memcmp(bytes + i, named, sizeof named - 1) != 0)
			continue;
		i += sizeof named - 1;
		while (i < at && strchr(" \t\r\n=\"'", bytes[i]))
			i++;
		return at - i < sizeof utf8 || strncasecmp(bytes + i, utf8, sizeof utf8 - 1) != 0 ||
		       !strchr("\"'", bytes[i + sizeof utf8 - 1]);
	}
	return false;
}

/* ---- all of it ---- */

static bool refuse(struct diag_list *diags, int line, const char *text)
{
	diag_error(diags, line, "%s", text);
	return false;
}

bool guard_admits(const char *bytes, size_t length, struct diag_list *diags)
{
	static const char mark[] = "\xef\xbb\xbf";
	int line;
	if (length > MARKUP_MOST_BYTES)
		return refuse(diags, 0, "the plan is larger than 16 MiB; expected at most that");
	if ((line = find_control(bytes, length)) != 0)
		return refuse(diags, line, "a control character; expected text");
	if ((line = find_foreign(bytes, length)) != 0)
		return refuse(diags, line, "a byte that is not UTF-8; expected a file in UTF-8");
	if (length >= 3 && memcmp(bytes, mark, 3) == 0) {
		bytes += 3;
		length -= 3;
	}
	if (declares_another(bytes, length))
		return refuse(diags, 1, "another encoding is declared; expected UTF-8");
	if ((line = tag_scan_find_doctype(bytes, length)) != 0)
		return refuse(diags, line, "a DOCTYPE; expected none in a floor description");
	if ((line = tag_scan_find_long(bytes, length, MARKUP_MOST_TAG_BYTES)) != 0)
		return refuse(diags, line, "a tag longer than 64 kB; expected at most that");
	if ((line = tag_scan_find_crowded(bytes, length, MARKUP_MOST_ATTRIBUTES)) != 0)
		return refuse(diags, line,
		              "a tag with more than 64 attributes; expected at most that");
	return true;
}

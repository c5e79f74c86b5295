#include "sheets/paper_size.h"

#include <string.h>

#include "base/strbuf.h"

static const struct paper_size SIZES[] = {
	{"letter", 279.4, 215.9, 84, 84, 40, "8 1/2 x 11 in"},
	{"tabloid", 431.8, 279.4, 128, 108, 40, "11 x 17 in"},
	{"ansi-c", 558.8, 431.8, 124, 110, 52, "17 x 22 in"},
	{"ansi-d", 863.6, 558.8, 140, 120, 60, "22 x 34 in"},
	{"arch-d", 914.4, 609.6, 140, 120, 60, "24 x 36 in"},
	{"a4", 297, 210, 84, 84, 40, "A4, 210 x 297 mm"},
	{"a3", 420, 297, 130, 108, 46, "A3, 297 x 420 mm"},
	{"a2", 594, 420, 124, 110, 52, "A2, 420 x 594 mm"},
	{"a1", 841, 594, 140, 120, 60, "A1, 594 x 841 mm"},
	{"a0", 1189, 841, 170, 140, 60, "A0, 841 x 1189 mm"},
};

enum { SIZE_COUNT = sizeof SIZES / sizeof SIZES[0] };

const struct paper_size *paper_size_find(const char *name)
{
	for (size_t i = 0; i < SIZE_COUNT; i++)
		if (strcmp(SIZES[i].name, name) == 0)
			return &SIZES[i];
	return NULL;
}

const char *paper_size_names(struct arena *arena)
{
	struct strbuf text = strbuf_in(arena);
	for (size_t i = 0; i < SIZE_COUNT; i++)
		strbuf_printf(&text, "%s%s", i ? " " : "", SIZES[i].name);
	return text.text;
}

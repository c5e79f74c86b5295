#include "rules/lines.h"

#include <string.h>

#define BLANKS " \t\r"

struct lines lines_of(struct arena *arena, const char *text)
{
	return (struct lines){.arena = arena, .rest = text};
}

static char *trimmed(struct arena *arena, const char *text, size_t length)
{
	size_t skip = 0;
	while (skip < length && strchr(BLANKS, text[skip]) != NULL)
		skip++;
	while (length > skip && strchr(BLANKS, text[length - 1]) != NULL)
		length--;
	return arena_strndup(arena, text + skip, length - skip);
}

bool lines_next(struct lines *lines)
{
	while (*lines->rest != '\0') {
		const char *start = lines->rest;
		size_t length = strcspn(start, "\n");
		lines->rest = start + length + (start[length] == '\n');
		lines->number++;
		if (*start == '#')
			continue;
		lines->text = trimmed(lines->arena, start, length);
		lines->is_set_in = *start == ' ' || *start == '\t';
		if (*lines->text != '\0')
			return true;
	}
	return false;
}

void lines_pass_faults(const struct diag_list *table, struct diag_list *run)
{
	for (size_t i = 0; i < table->diags.count; i++)
		diag_error(run, 0, "%s:%d: %s", table->file, table->diags.items[i].line,
		           table->diags.items[i].text);
}

char *lines_word(char **text)
{
	char *word = *text + strspn(*text, BLANKS);
	char *end = word + strcspn(word, BLANKS);
	*text = end + strspn(end, BLANKS);
	*end = '\0';
	return word;
}

#include "base/diag.h"

#include <stdarg.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

struct diag_list diag_list_in(struct arena *arena, const char *file)
{
	return (struct diag_list){.arena = arena, .file = file};
}

static bool is_known(const struct diag_list *list, int line, const char *text);

void diag_error(struct diag_list *list, int line, const char *format, ...)
{
	va_list args;
	va_start(args, format);
	const char *text = arena_vprintf(list->arena, format, args);
	va_end(args);
	if (!is_known(list, line, text))
		*array_push(list->arena, &list->diags) = (struct diag){.line = line, .text = text};
}

static bool is_known(const struct diag_list *list, int line, const char *text)
{
	/* Repeats come close together; looking a few back keeps a broken file of a
	 * million elements linear. */
	enum { LOOK_BACK = 16 };
	size_t count = list->diags.count;
	for (size_t back = 1; back <= LOOK_BACK && back <= count; back++) {
		const struct diag *d = &list->diags.items[count - back];
		if (d->line == line && strcmp(d->text, text) == 0)
			return true;
	}
	return false;
}

struct order {
	const struct diag *diag;
	size_t place;
};

static int by_line(const void *a, const void *b)
{
	const struct order *x = a, *y = b;
	if (x->diag->line != y->diag->line)
		return x->diag->line < y->diag->line ? -1 : 1;
	return x->place < y->place ? -1 : x->place > y->place;
}

void diag_print(const struct diag_list *list, FILE *out)
{
	size_t count = list->diags.count;
	struct order *orders = ARENA_ARRAY(list->arena, struct order, count);
	for (size_t i = 0; i < count; i++)
		orders[i] = (struct order){.diag = &list->diags.items[i], .place = i};
	if (count)
		qsort(orders, count, sizeof *orders, by_line);
	for (size_t i = 0; i < count; i++) {
		const struct diag *d = orders[i].diag;
		if (d->line)
			fprintf(out, "%s:%d: error: %s\n", list->file, d->line, d->text);
		else
			fprintf(out, "%s: error: %s\n", list->file, d->text);
	}
}

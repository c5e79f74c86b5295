#include "support/tables.h"

#include <string.h>

struct tables tables;

int tables_start(void **state)
{
	(void)state;
	tables.arena = arena_new();
	struct diag_list diags = diag_list_in(tables.arena, "tables");
	tables.us = rules_load(tables.arena, "us", true, &diags);
	tables.en = words_load(tables.arena, "en", &diags);
	return tables.us == NULL || tables.en == NULL;
}

int tables_end(void **state)
{
	(void)state;
	arena_free(tables.arena);
	return 0;
}

const struct count_row *tables_row(const struct count *count, const char *what, const char *where)
{
	for (size_t i = 0; i < count->row_count; i++)
		if (strcmp(count->rows[i].what, what) == 0 &&
		    strcmp(count->rows[i].where, where) == 0)
			return &count->rows[i];
	return NULL;
}

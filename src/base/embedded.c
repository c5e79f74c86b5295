#include "base/embedded.h"

#include <string.h>

#include "base/embedded_table.h"

const struct embedded *embedded_at(size_t index)
{
	return index < embedded_table_count ? &embedded_table[index] : NULL;
}

const struct embedded *embedded_find(const char *name)
{
	for (size_t i = 0; i < embedded_table_count; i++)
		if (strcmp(embedded_table[i].name, name) == 0)
			return &embedded_table[i];
	return NULL;
}

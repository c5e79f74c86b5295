#include "count/kinds.h"

const char *count_kind_name(enum count_kind kind)
{
	static const char *const names[] = {
#define KIND(id, name) name,
		COUNT_KINDS(KIND)
#undef KIND
	};
	return names[kind];
}

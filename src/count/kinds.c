#include "count/kinds.h"

const char *count_kind_name(enum count_kind kind)
{
	static const char *const names[] = {
#define KIND(id, name, source) name,
		COUNT_KINDS(KIND)
#undef KIND
	};
	return names[kind];
}

const char *count_kind_source(enum count_kind kind)
{
	static const char *const sources[] = {
#define KIND(id, name, source) source,
		COUNT_KINDS(KIND)
#undef KIND
	};
	return sources[kind];
}

enum count_scheme count_kind_scheme(enum count_kind kind)
{
	switch (kind) {
	case COUNT_FULL_AREA:
	case COUNT_FULL_FILM:
	case COUNT_FULL_PAIL:
	case COUNT_FULL_ROLL:
	case COUNT_FULL_LABOUR:
	case COUNT_PRICE_FULL:
		return COUNT_FULL_INSTEAD;
	case COUNT_PARTIAL_STRIP:
	case COUNT_PARTIAL_LENGTH:
	case COUNT_PARTIAL_FILM:
	case COUNT_PARTIAL_PAIL:
	case COUNT_PARTIAL_ROLL:
	case COUNT_PARTIAL_LABOUR:
	case COUNT_PRICE_PARTIAL:
		return COUNT_STRIPS_INSTEAD;
	default:
		return COUNT_AS_DRAWN;
	}
}

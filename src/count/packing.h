/* packing.h - lengths into bins of one length: the fewest that a good search finds, and the
 * number below which no packing goes.
 * First fit with the longest first, and bins filled as full as they go one after the other;
 * the better of both. Source: docs/sources.md#quantities.
 * Units: whole steps of any kind. Owns: arena. No length is longer than the bin. */
#ifndef COUNT_PACKING_H
#define COUNT_PACKING_H
#include <stddef.h>
#include <stdint.h>

#include "base/arena.h"

struct packing {
	size_t bins, bound;
};

struct packing packing_of(struct arena *, const int64_t *sizes, size_t count, int64_t bin);

#endif

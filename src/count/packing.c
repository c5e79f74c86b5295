#include "count/packing.h"

#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

/* Longest first. */
static int by_size(const void *a, const void *b)
{
	int64_t x = *(const int64_t *)a, y = *(const int64_t *)b;
	return x > y ? -1 : x < y;
}

static int64_t at_least_none(int64_t n)
{
	return n > 0 ? n : 0;
}

/* Bins for what is longer than half a bin, and for what does not fit beside it; `least` and
 * longer are looked at. Source: the second lower bound of textbooks on packing, memory. */
static int64_t bound_from(const int64_t *sizes, size_t count, int64_t bin, int64_t least)
{
	int64_t alone = 0, half = 0, half_sum = 0, rest = 0;
	for (size_t i = 0; i < count; i++) {
		if (sizes[i] > bin - least) {
			alone++;
		} else if (2 * sizes[i] > bin) {
			half++;
			half_sum += sizes[i];
		} else if (sizes[i] >= least) {
			rest += sizes[i];
		}
	}
	int64_t over = at_least_none(rest - (half * bin - half_sum));
	return alone + half + (over + bin - 1) / bin;
}

static size_t bound_of(const int64_t *sizes, size_t count, int64_t bin)
{
	int64_t most = bound_from(sizes, count, bin, 0);
	for (size_t i = 0; i < count; i++) {
		if (2 * sizes[i] > bin || (i > 0 && sizes[i] == sizes[i - 1]))
			continue;
		int64_t bound = bound_from(sizes, count, bin, sizes[i]);
		most = bound > most ? bound : most;
	}
	return (size_t)most;
}

static size_t first_fit(struct arena *arena, const int64_t *sizes, size_t count, int64_t bin)
{
	int64_t *left = ARENA_ARRAY(arena, int64_t, count);
	size_t bins = 0;
	for (size_t i = 0; i < count; i++) {
		size_t b = 0;
		while (b < bins && left[b] < sizes[i])
			b++;
		if (b == bins)
			left[bins++] = bin;
		left[b] -= sizes[i];
	}
	return bins;
}

/* One bin on its way to be filled as full as it goes, among what is not packed yet. */
struct filling {
	const int64_t *sizes;
	size_t count;
	const bool *is_packed;
	bool *chosen, *best;
	int64_t best_left;
	long steps; /* the search ends with them: the same on every machine */
};

static void fill(struct filling *f, size_t from, int64_t left)
{
	if (left < f->best_left) {
		f->best_left = left;
		memcpy(f->best, f->chosen, f->count * sizeof *f->best);
	}
	for (size_t i = from; i < f->count && f->best_left > 0 && f->steps > 0; i++) {
		if (f->is_packed[i] || f->sizes[i] > left ||
		    (i > from && f->sizes[i] == f->sizes[i - 1] && !f->is_packed[i - 1]))
			continue;
		f->steps--;
		f->chosen[i] = true;
		fill(f, i + 1, left - f->sizes[i]);
		f->chosen[i] = false;
	}
}

/* Each bin takes the longest that is left and what leaves the least of it over. */
static size_t fullest_first(struct arena *arena, const int64_t *sizes, size_t count, int64_t bin)
{
	enum { STEPS = 20000 };
	bool *is_packed = ARENA_ARRAY(arena, bool, count);
	bool *chosen = ARENA_ARRAY(arena, bool, count), *best = ARENA_ARRAY(arena, bool, count);
	size_t bins = 0;
	for (size_t first = 0; first < count; first++) {
		if (is_packed[first])
			continue;
		struct filling f = {sizes, count, is_packed, chosen, best, bin + 1, STEPS};
		chosen[first] = true;
		fill(&f, first + 1, bin - sizes[first]);
		chosen[first] = false;
		for (size_t i = 0; i < count; i++)
			is_packed[i] = is_packed[i] || best[i];
		bins++;
	}
	return bins;
}

struct packing packing_of(struct arena *arena, const int64_t *sizes, size_t count, int64_t bin)
{
	if (count == 0)
		return (struct packing){0, 0};
	int64_t *sorted = ARENA_ARRAY(arena, int64_t, count);
	memcpy(sorted, sizes, count * sizeof *sorted);
	qsort(sorted, count, sizeof *sorted, by_size);
	struct packing packing = {first_fit(arena, sorted, count, bin),
	                          bound_of(sorted, count, bin)};
	if (packing.bins > packing.bound) {
		size_t other = fullest_first(arena, sorted, count, bin);
		packing.bins = other < packing.bins ? other : packing.bins;
	}
	return packing;
}

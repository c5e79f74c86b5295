#include "layout/perimeter.h"

#include <string.h>

#include "base/array.h"
#include "geometry/segment.h"
#include "geometry/tolerance.h"
#include "layout/origin.h"

struct listing {
	struct arena *arena;
	const struct field *field;
	ARRAY_OF(struct perimeter_run) runs;
};

static bool keeps_gap(const struct field_border *border)
{
	return !border->is_carried && border->gap > 0;
}

static bool follows(const struct field *field, size_t first, size_t next)
{
	return point_distance(field->borders[first].to, field->borders[next].from) < TOLERANCE_SAME;
}

/* First border after the ring that starts at `first`. */
static size_t end_of_ring(const struct field *field, size_t first)
{
	size_t end = first + 1;
	while (end < field->border_count && follows(field, end - 1, end))
		end++;
	return end;
}

static bool is_one_run(const struct field *field, size_t a, size_t b)
{
	const struct field_border *x = &field->borders[a], *y = &field->borders[b];
	return keeps_gap(x) && keeps_gap(y) && strcmp(x->of, y->of) == 0;
}

static const char *id_of(const struct listing *listing, const char *of)
{
	size_t before = 0;
	for (size_t r = 0; r < listing->runs.count; r++)
		before += strcmp(listing->runs.items[r].of, of) == 0;
	const char *origin = origin_of_border(listing->arena, listing->field, of);
	if (before == 0)
		return arena_printf(listing->arena, "%s.perimeter", origin);
	return arena_printf(listing->arena, "%s.perimeter.%zu", origin, before + 1);
}

static void add_run(struct listing *listing, size_t first, size_t end, size_t start, size_t count)
{
	struct perimeter_run run = {.of = listing->field->borders[start].of, .border_count = count};
	run.id = id_of(listing, run.of);
	run.borders = ARENA_ARRAY(listing->arena, size_t, count);
	run.is_closed = count == end - first;
	for (size_t k = 0; k < count; k++)
		run.borders[k] = first + (start - first + k) % (end - first);
	*array_push(listing->arena, &listing->runs) = run;
}

static void add_ring(struct listing *listing, size_t first, size_t end)
{
	const struct field *field = listing->field;
	size_t sides = end - first, start = first;
	/* Begin where a run begins, so that none is cut in two by the ring's own start. */
	while (start < end && is_one_run(field, start > first ? start - 1 : end - 1, start))
		start++;
	if (start == end)
		start = first;
	for (size_t done = 0, count; done < sides; done += count) {
		size_t at = first + (start - first + done) % sides;
		for (count = 1; done + count < sides; count++) {
			size_t next = first + (start - first + done + count) % sides;
			if (!is_one_run(field, at, next))
				break;
		}
		if (keeps_gap(&field->borders[at]))
			add_run(listing, first, end, at, count);
	}
}

struct perimeter_run *perimeter_runs(struct arena *arena, const struct field *field,
                                     size_t *out_count)
{
	struct listing listing = {.arena = arena, .field = field};
	for (size_t first = 0, end; first < field->border_count; first = end) {
		end = end_of_ring(field, first);
		add_ring(&listing, first, end);
	}
	*out_count = listing.runs.count;
	return listing.runs.items;
}

static const char *carried_at(const struct field *field, const struct field_border *border)
{
	const char *id = NULL;
	double least = INFINITY;
	struct point middle = point_between(border->from, border->to, 0.5);
	for (size_t c = 0; c < field->carried_count; c++) {
		const struct field_carried *carried = &field->carried[c];
		double distance =
			segment_distance((struct segment){carried->from, carried->to}, middle);
		if (strcmp(carried->of, border->of) == 0 && distance < least - TOLERANCE_SAME) {
			least = distance;
			id = carried->id;
		}
	}
	return id;
}

const char *perimeter_joint_at(const struct field *field, const struct perimeter_run *runs,
                               size_t run_count, size_t border)
{
	if (border >= field->border_count)
		return NULL;
	if (field->borders[border].is_carried)
		return carried_at(field, &field->borders[border]);
	for (size_t r = 0; r < run_count; r++)
		for (size_t k = 0; k < runs[r].border_count; k++)
			if (runs[r].borders[k] == border)
				return runs[r].id;
	return NULL;
}

size_t perimeter_nearest(const struct field *field, struct point p)
{
	size_t nearest = field->border_count;
	double least = INFINITY;
	for (size_t b = 0; b < field->border_count; b++) {
		struct segment side = {field->borders[b].from, field->borders[b].to};
		double distance = segment_distance(side, p);
		if (distance < least - TOLERANCE_SAME) {
			least = distance;
			nearest = b;
		}
	}
	return nearest;
}

#include "layout/chords.h"

#include <stdlib.h>

#include "base/array.h"
#include "geometry/tolerance.h"

/* An edge as it is swept: `run` is the coordinate along the runs, `level` the one across. */
struct swept_edge {
	double run[2], level[2]; /* level[0] < level[1] */
};

struct sweep {
	struct arena *arena;
	ARRAY_OF(struct swept_edge) edges;
	ARRAY_OF(double) levels;
	ARRAY_OF(struct chord_windows) windows;
};

static void add_edge(struct sweep *sweep, struct point from, struct point to, bool along_u)
{
	double run[] = {along_u ? from.x : from.y, along_u ? to.x : to.y};
	double level[] = {along_u ? from.y : from.x, along_u ? to.y : to.x};
	*array_push(sweep->arena, &sweep->levels) = level[0];
	if (fabs(level[0] - level[1]) <= TOLERANCE_SAME)
		return;
	int low = level[0] < level[1] ? 0 : 1;
	*array_push(sweep->arena, &sweep->edges) =
		(struct swept_edge){{run[low], run[!low]}, {level[low], level[!low]}};
}

static void add_ring(struct sweep *sweep, struct ring ring, bool along_u)
{
	for (size_t i = 0; i < ring.count; i++)
		add_edge(sweep, ring.points[i], ring.points[(i + 1) % ring.count], along_u);
}

static double run_at(const struct swept_edge *edge, double level)
{
	double share = (level - edge->level[0]) / (edge->level[1] - edge->level[0]);
	return edge->run[0] + share * (edge->run[1] - edge->run[0]);
}

static int by_value(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return x < y ? -1 : x > y;
}

static int by_low(const void *a, const void *b)
{
	const struct chord_windows *x = a, *y = b;
	if (x->low != y->low)
		return x->low < y->low ? -1 : 1;
	return x->high < y->high ? -1 : x->high > y->high;
}

/* One side of a band of levels without a corner: its edges, left to right. */
struct crossing {
	double middle, low, high; /* run at the band's middle, bottom and top */
};

static int by_middle(const void *a, const void *b)
{
	return by_value(&((const struct crossing *)a)->middle,
	                &((const struct crossing *)b)->middle);
}

/* A chord whose ends move evenly between two levels. Where it is long enough at one level
 * only, the windows begin where it reaches the limit. */
static void add_windows(struct sweep *sweep, const struct crossing *left,
                        const struct crossing *right, double limit)
{
	double over[] = {right->low - left->low - limit, right->high - left->high - limit};
	if (over[0] <= TOLERANCE_SAME && over[1] <= TOLERANCE_SAME)
		return;
	double from = 0, to = 1;
	if (over[0] < 0)
		from = over[0] / (over[0] - over[1]);
	if (over[1] < 0)
		to = over[0] / (over[0] - over[1]);
	double shares[] = {from, to}, low = INFINITY, high = -INFINITY;
	for (int i = 0; i < 2; i++) {
		low = fmin(low, left->low + shares[i] * (left->high - left->low));
		high = fmax(high, right->low + shares[i] * (right->high - right->low) - limit);
	}
	*array_push(sweep->arena, &sweep->windows) = (struct chord_windows){low, high};
}

static void sweep_band(struct sweep *sweep, double bottom, double top, double limit)
{
	struct arena *arena = sweep->arena;
	struct crossing *crossings = ARENA_ARRAY(arena, struct crossing, sweep->edges.count);
	size_t count = 0;
	double middle = (bottom + top) / 2;
	for (size_t i = 0; i < sweep->edges.count; i++) {
		const struct swept_edge *edge = &sweep->edges.items[i];
		if (edge->level[0] < middle && middle < edge->level[1])
			crossings[count++] =
				(struct crossing){run_at(edge, middle), run_at(edge, bottom),
			                          run_at(edge, top)};
	}
	if (count)
		qsort(crossings, count, sizeof *crossings, by_middle);
	for (size_t i = 0; i + 1 < count; i += 2)
		add_windows(sweep, &crossings[i], &crossings[i + 1], limit);
}

static struct chords merged(struct sweep *sweep)
{
	struct chord_windows *windows = sweep->windows.items;
	size_t kept = 0;
	if (sweep->windows.count)
		qsort(windows, sweep->windows.count, sizeof *windows, by_low);
	for (size_t i = 0; i < sweep->windows.count; i++) {
		if (kept && windows[i].low <= windows[kept - 1].high + TOLERANCE_SAME)
			windows[kept - 1].high = fmax(windows[kept - 1].high, windows[i].high);
		else
			windows[kept++] = windows[i];
	}
	return (struct chords){windows, kept};
}

struct chords chords_over(struct arena *arena, const struct polygon *polygon, bool along_u,
                          double limit)
{
	struct sweep sweep = {.arena = arena};
	add_ring(&sweep, polygon->outline, along_u);
	for (size_t h = 0; h < polygon->hole_count; h++)
		add_ring(&sweep, polygon->holes[h], along_u);
	double *levels = sweep.levels.items;
	qsort(levels, sweep.levels.count, sizeof *levels, by_value);
	for (size_t i = 0; i + 1 < sweep.levels.count; i++)
		if (levels[i + 1] - levels[i] > TOLERANCE_SAME)
			sweep_band(&sweep, levels[i], levels[i + 1], limit);
	return merged(&sweep);
}

bool chords_next_window(const struct chords *chords, double place, double *out_start)
{
	for (size_t i = 0; i < chords->count; i++) {
		if (chords->windows[i].high <= place + TOLERANCE_SAME)
			continue;
		*out_start = fmax(chords->windows[i].low, place);
		return true;
	}
	return false;
}

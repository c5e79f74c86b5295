#include "pattern/lanes.h"

#include <stdlib.h>

#include "base/array.h"
#include "geometry/tolerance.h"

/* A period of more cells than this shows a wall about every cut there is, wherever it lies:
 * own choice, fixed by tests/unit/test_lanes.c. */
enum { MOST_CELLS = 256 };
/* Steps tried to find the way back to the same line. */
enum { MOST_STEPS = 64 };

struct reading {
	struct arena *arena;
	const struct module *module;
	bool along_u;
	struct lanes *lanes;
	ARRAY_OF(struct ring) cells; /* all that begin in one period, turned */
};

/* x along the axis, y across it. */
static struct point turned(const struct reading *r, struct point p)
{
	return r->along_u ? p : (struct point){p.y, p.x};
}

/* The least whole step of the lattice along x (or along y); 0: none within MOST_STEPS. */
static double least_step(struct point a, struct point b)
{
	double least = 0;
	for (int i = 0; i <= MOST_STEPS; i++)
		for (int j = -MOST_STEPS; j <= MOST_STEPS; j++) {
			double along = fabs(i * a.x + j * b.x), off = fabs(i * a.y + j * b.y);
			if (off < TOLERANCE_SAME && along > TOLERANCE_SAME &&
			    (least == 0 || along < least - TOLERANCE_SAME))
				least = along;
		}
	return least;
}

static int by_value(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return x < y ? -1 : x > y;
}

/* Into [0, period); a hair below it is 0. */
static double wrapped(double value, double period)
{
	double rest = value - floor(value / period + TOLERANCE_SAME / period) * period;
	return fmax(rest, 0);
}

/* Sorts, and drops those that are the same as the one before. */
static size_t sort_apart(double *values, size_t count)
{
	size_t kept = 0;
	qsort(values, count, sizeof *values, by_value);
	for (size_t i = 0; i < count; i++)
		if (kept == 0 || values[i] - values[kept - 1] > 2 * TOLERANCE_SAME)
			values[kept++] = values[i];
	return kept;
}

/* ---- the cells of one period ---- */

static struct ring turned_cell(const struct reading *r, size_t face, struct point step)
{
	struct ring cell = r->module->faces[face].cell;
	struct ring ring = {ARENA_ARRAY(r->arena, struct point, cell.count), cell.count};
	for (size_t k = 0; k < cell.count; k++)
		ring.points[k] = turned(r, point_add(cell.points[k], step));
	return ring;
}

static bool is_in_period(const struct lanes *lanes, struct point p)
{
	return p.x >= -TOLERANCE_SAME && p.x < lanes->period - TOLERANCE_SAME &&
	       p.y >= -TOLERANCE_SAME && p.y < lanes->across - TOLERANCE_SAME;
}

/* Copies of a face whose first corner lies in the period, wherever on it that is: each
 * once. */
static void add_cells(struct reading *r, size_t face)
{
	const struct module *m = r->module;
	struct point corner = m->faces[face].cell.points[0];
	double area = point_cross(m->a, m->b), i0 = INFINITY, i1 = -INFINITY, j0 = INFINITY,
	       j1 = -INFINITY;
	for (int k = 0; k < 4; k++) {
		struct point end = {k & 1 ? r->lanes->period : 0, k & 2 ? r->lanes->across : 0};
		struct point way = point_sub(turned(r, end), corner);
		double i = point_cross(way, m->b) / area, j = point_cross(m->a, way) / area;
		i0 = fmin(i0, i), i1 = fmax(i1, i), j0 = fmin(j0, j), j1 = fmax(j1, j);
	}
	for (int j = (int)floor(j0); j <= (int)ceil(j1); j++)
		for (int i = (int)floor(i0); i <= (int)ceil(i1); i++) {
			struct point step = module_step(m, i, j);
			if (is_in_period(r->lanes, turned(r, point_add(corner, step))))
				*array_push(r->arena, &r->cells) = turned_cell(r, face, step);
		}
}

/* ---- lanes ---- */

/* Where the lanes end: at the corners of all cells. */
static double *lane_ends(struct reading *r, size_t *out_count)
{
	ARRAY_OF(double) ends = {0};
	for (size_t c = 0; c < r->cells.count; c++)
		for (size_t k = 0; k < r->cells.items[c].count; k++)
			*array_push(r->arena, &ends) =
				wrapped(r->cells.items[c].points[k].y, r->lanes->across);
	*out_count = sort_apart(ends.items, ends.count);
	return ends.items;
}

/* What of a convex ring lies on the line at y; false: nothing. */
static bool stretch_at(struct ring ring, double y, struct lane_cell *out, bool *is_slanted)
{
	*out = (struct lane_cell){INFINITY, -INFINITY};
	for (size_t k = 0; k < ring.count; k++) {
		struct point a = ring.points[k], b = ring.points[(k + 1) % ring.count];
		if ((a.y < y) == (b.y < y))
			continue;
		double x = point_between(a, b, (y - a.y) / (b.y - a.y)).x;
		*is_slanted = *is_slanted || fabs(b.x - a.x) > TOLERANCE_SAME;
		out->from = fmin(out->from, x);
		out->to = fmax(out->to, x);
	}
	return out->from < out->to;
}

static int by_start(const void *a, const void *b)
{
	return by_value(&((const struct lane_cell *)a)->from, &((const struct lane_cell *)b)->from);
}

static void fill_lane(struct reading *r, struct lane *lane)
{
	const struct lanes *lanes = r->lanes;
	double middle = (lane->from + lane->to) / 2;
	lane->cells = ARENA_ARRAY(r->arena, struct lane_cell, r->cells.count);
	for (size_t c = 0; c < r->cells.count; c++) {
		struct ring ring = r->cells.items[c];
		double low = ring_box(ring).y0;
		/* The copy that begins at most one period below the line. */
		double y = low + wrapped(middle - low, lanes->across);
		struct lane_cell cell;
		if (!stretch_at(ring, y, &cell, &lane->is_slanted))
			continue;
		double from = wrapped(cell.from, lanes->period);
		lane->cells[lane->cell_count++] =
			(struct lane_cell){from, from + cell.to - cell.from};
	}
	qsort(lane->cells, lane->cell_count, sizeof *lane->cells, by_start);
}

static void add_lanes(struct reading *r)
{
	struct lanes *lanes = r->lanes;
	size_t count;
	const double *ends = lane_ends(r, &count);
	lanes->lanes = ARENA_ARRAY(r->arena, struct lane, count);
	lanes->lane_count = count;
	for (size_t k = 0; k < count; k++) {
		lanes->lanes[k].from = ends[k];
		lanes->lanes[k].to = k + 1 < count ? ends[k + 1] : ends[0] + lanes->across;
		fill_lane(r, &lanes->lanes[k]);
	}
}

/* ---- borders ---- */

static bool begins_in(const struct lane *lane, double at)
{
	for (size_t c = 0; c < lane->cell_count; c++)
		if (fabs(lane->cells[c].from - at) <= 2 * TOLERANCE_SAME)
			return true;
	return false;
}

static bool is_straight(const struct lanes *lanes, double at)
{
	for (size_t k = 0; k < lanes->lane_count; k++)
		if (lanes->lanes[k].is_slanted || !begins_in(&lanes->lanes[k], at))
			return false;
	return true;
}

static void find_borders(struct arena *arena, struct lanes *lanes)
{
	ARRAY_OF(double) borders = {0};
	for (size_t k = 0; k < lanes->lane_count; k++)
		for (size_t c = 0; c < lanes->lanes[k].cell_count; c++)
			*array_push(arena, &borders) = lanes->lanes[k].cells[c].from;
	lanes->borders = borders.items;
	lanes->border_count = sort_apart(borders.items, borders.count);
	lanes->straights = ARENA_ARRAY(arena, double, lanes->border_count);
	for (size_t b = 0; b < lanes->border_count; b++)
		if (is_straight(lanes, lanes->borders[b]))
			lanes->straights[lanes->straight_count++] = lanes->borders[b];
}

const struct lanes *lanes_from_module(struct arena *arena, const struct module *module,
                                      bool along_u)
{
	struct reading r = {.arena = arena, .module = module, .along_u = along_u};
	struct point a = turned(&r, module->a), b = turned(&r, module->b);
	r.lanes = ARENA_NEW(arena, struct lanes);
	r.lanes->period = least_step(a, b);
	r.lanes->across = least_step((struct point){a.y, a.x}, (struct point){b.y, b.x});
	double periods = r.lanes->period * r.lanes->across / point_cross(module->a, module->b);
	double cells = periods * (double)module->face_count;
	if (r.lanes->period <= 0 || r.lanes->across <= 0 || cells > MOST_CELLS)
		return r.lanes;
	for (size_t f = 0; f < module->face_count; f++)
		add_cells(&r, f);
	add_lanes(&r);
	find_borders(arena, r.lanes);
	return r.lanes;
}

const struct lane_cell *lane_cell_at(const struct lanes *lanes, const struct lane *lane, double at,
                                     bool from_above, double *out_offset)
{
	double place = wrapped(at, lanes->period);
	for (size_t c = 0; c < lane->cell_count; c++) {
		const struct lane_cell *cell = &lane->cells[c];
		double offset = wrapped(place - cell->from, lanes->period);
		double extent = cell->to - cell->from;
		if (from_above && offset < TOLERANCE_SAME)
			offset += lanes->period;
		if (offset < extent || (from_above && offset <= extent + TOLERANCE_SAME)) {
			*out_offset = fmin(offset, extent);
			return cell;
		}
	}
	*out_offset = 0;
	return &lane->cells[0];
}

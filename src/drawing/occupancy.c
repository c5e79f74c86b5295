#include "drawing/occupancy.h"

#include "base/array.h"

/* About the size of a short label. */
static const double CELL = 8;
/* Off any sheet. */
static const double FAR = 1e9;
/* A line along a cell's border counts as in both cells. */
static const double CELL_SLACK = 1e-6;

struct mark {
	struct paper_point a, b;
	struct mark_weight weight;
	double length;
	struct paper_box box;
};

struct cell {
	ARRAY_OF(struct mark) marks;
	ARRAY_OF(struct paper_box) blocks;
};

struct occupancy {
	struct arena *arena;
	int columns, rows;
	struct cell *cells;
};

/* Cells that a box touches; those off the sheet count as its border cells. */
struct span {
	int x0, x1, y0, y1;
};

static double lesser(double a, double b)
{
	return a < b ? a : b;
}

static double greater(double a, double b)
{
	return a > b ? a : b;
}

static int clamp(double value, int count)
{
	double cell = floor(value / CELL);
	return cell < 0 ? 0 : cell >= count ? count - 1 : (int)cell;
}

static struct span span_of(const struct occupancy *o, struct paper_box b)
{
	return (struct span){clamp(b.x0, o->columns), clamp(b.x1, o->columns), clamp(b.y0, o->rows),
	                     clamp(b.y1, o->rows)};
}

static struct span span_of_line(const struct occupancy *o, struct paper_point a,
                                struct paper_point b)
{
	return span_of(o, paper_box_with(paper_box_with(paper_box_empty(), a), b));
}

/* The ground of a cell; cells at the border reach on for ever. */
static struct paper_box cell_box(const struct occupancy *o, int x, int y)
{
	return (struct paper_box){x == 0 ? -FAR : x * CELL, y == 0 ? -FAR : y * CELL,
	                          x == o->columns - 1 ? FAR : (x + 1) * CELL,
	                          y == o->rows - 1 ? FAR : (y + 1) * CELL};
}

/* A long slanted line meets few of the cells of its box: of a row those from x0 to x1. */
static struct span row_of_line(const struct occupancy *o, int y, struct paper_point a,
                               struct paper_point b)
{
	double top = y == 0 ? -FAR : y * CELL - CELL_SLACK, from = 0, to = 1;
	double under = y == o->rows - 1 ? FAR : (y + 1) * CELL + CELL_SLACK;
	double down = b.y - a.y;
	if (down != 0) {
		double one = (top - a.y) / down, other = (under - a.y) / down;
		from = greater(0, lesser(one, other));
		to = lesser(1, greater(one, other));
	}
	double x0 = a.x + (b.x - a.x) * from, x1 = a.x + (b.x - a.x) * to;
	return (struct span){clamp(lesser(x0, x1) - CELL_SLACK, o->columns),
	                     clamp(greater(x0, x1) + CELL_SLACK, o->columns), y, y};
}

static struct cell *cell_at(const struct occupancy *o, int x, int y)
{
	return &o->cells[y * o->columns + x];
}

struct occupancy *occupancy_new(struct arena *arena, double width, double height)
{
	struct occupancy *o = ARENA_NEW(arena, struct occupancy);
	o->arena = arena;
	o->columns = (int)ceil(fmax(width, CELL) / CELL);
	o->rows = (int)ceil(fmax(height, CELL) / CELL);
	o->cells = ARENA_ARRAY(arena, struct cell, (size_t)o->columns * (size_t)o->rows);
	return o;
}

static struct mark mark_of(struct paper_point a, struct paper_point b, struct mark_weight weight)
{
	struct paper_box box = paper_box_with(paper_box_with(paper_box_empty(), a), b);
	return (struct mark){a, b, weight, paper_distance(a, b), box};
}

/* Most marks of a cell are seen to be elsewhere at a glance. */
static bool is_off(const struct mark *m, struct paper_box box)
{
	return m->box.x0 > box.x1 || m->box.x1 < box.x0 || m->box.y0 > box.y1 || m->box.y1 < box.y0;
}

void occupancy_add(struct occupancy *o, struct paper_point a, struct paper_point b,
                   struct mark_weight weight)
{
	struct span s = span_of_line(o, a, b);
	struct paper_point d = paper_sub(b, a);
	double t0, t1;
	for (int y = s.y0; y <= s.y1; y++) {
		struct span row = row_of_line(o, y, a, b);
		for (int x = row.x0; x <= row.x1; x++)
			if (paper_box_clip(cell_box(o, x, y), a, b, &t0, &t1))
				*array_push(o->arena, &cell_at(o, x, y)->marks) =
					mark_of(paper_step(a, d, t0), paper_step(a, d, t1), weight);
	}
}

void occupancy_block(struct occupancy *o, struct paper_box box)
{
	struct span s = span_of(o, box);
	for (int y = s.y0; y <= s.y1; y++)
		for (int x = s.x0; x <= s.x1; x++)
			*array_push(o->arena, &cell_at(o, x, y)->blocks) = box;
}

bool occupancy_is_blocked(const struct occupancy *o, struct paper_box box)
{
	struct span s = span_of(o, box);
	for (int y = s.y0; y <= s.y1; y++)
		for (int x = s.x0; x <= s.x1; x++) {
			const struct cell *cell = cell_at(o, x, y);
			for (size_t i = 0; i < cell->blocks.count; i++)
				if (paper_box_meets(cell->blocks.items[i], box))
					return true;
		}
	return false;
}

bool occupancy_blocks_line(const struct occupancy *o, struct paper_point a, struct paper_point b)
{
	struct span s = span_of_line(o, a, b);
	double t0, t1;
	for (int y = s.y0; y <= s.y1; y++) {
		struct span row = row_of_line(o, y, a, b);
		for (int x = row.x0; x <= row.x1; x++) {
			const struct cell *cell = cell_at(o, x, y);
			for (size_t i = 0; i < cell->blocks.count; i++)
				if (paper_box_clip(cell->blocks.items[i], a, b, &t0, &t1))
					return true;
		}
	}
	return false;
}

/* Length of a mark inside a box that it is not wholly beside; most marks are level or upright. */
static double length_inside(const struct mark *m, struct paper_box box)
{
	double t0, t1;
	if (m->box.y0 == m->box.y1)
		return lesser(m->box.x1, box.x1) - greater(m->box.x0, box.x0);
	if (m->box.x0 == m->box.x1)
		return lesser(m->box.y1, box.y1) - greater(m->box.y0, box.y0);
	return paper_box_clip(box, m->a, m->b, &t0, &t1) ? (t1 - t0) * m->length : 0;
}

/* Of all marks inside the box, as far as the sum is not above `most`. */
static double sum_inside(const struct occupancy *o, struct paper_box box, bool is_cover,
                         double most)
{
	struct span s = span_of(o, box);
	double sum = 0;
	for (int y = s.y0; y <= s.y1; y++)
		for (int x = s.x0; x <= s.x1 && sum <= most; x++) {
			const struct cell *cell = cell_at(o, x, y);
			for (size_t i = 0; i < cell->marks.count; i++) {
				const struct mark *m = &cell->marks.items[i];
				double weight = is_cover ? m->weight.cover : m->weight.cross;
				if (!is_off(m, box))
					sum += weight * length_inside(m, box);
			}
		}
	return sum;
}

double occupancy_cover(const struct occupancy *o, struct paper_box box, double most)
{
	return sum_inside(o, box, true, most);
}

double occupancy_near(const struct occupancy *o, struct paper_point at, double reach)
{
	struct paper_box box = {at.x - reach, at.y - reach, at.x + reach, at.y + reach};
	return sum_inside(o, box, false, INFINITY);
}

static double side(struct paper_point a, struct paper_point b, struct paper_point p)
{
	return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

bool occupancy_is_crossing(struct paper_point a, struct paper_point b, struct paper_point c,
                           struct paper_point d)
{
	/* Half open at c-d, so that a cut mark is not crossed twice at its seam. */
	return (side(a, b, c) > 0) != (side(a, b, d) > 0) &&
	       (side(c, d, a) > 0) != (side(c, d, b) > 0);
}

double occupancy_cross(const struct occupancy *o, struct paper_point a, struct paper_point b)
{
	struct paper_box box = paper_box_with(paper_box_with(paper_box_empty(), a), b);
	struct span s = span_of(o, box);
	double sum = 0;
	for (int y = s.y0; y <= s.y1; y++) {
		struct span row = row_of_line(o, y, a, b);
		for (int x = row.x0; x <= row.x1; x++) {
			const struct cell *cell = cell_at(o, x, y);
			for (size_t i = 0; i < cell->marks.count; i++) {
				const struct mark *m = &cell->marks.items[i];
				if (!is_off(m, box) && occupancy_is_crossing(a, b, m->a, m->b))
					sum += m->weight.cross;
			}
		}
	}
	return sum;
}

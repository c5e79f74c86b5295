#include "drawing/hatch.h"

#include <stdlib.h>
#include <string.h>

#include "base/array.h"

/* A dot is a stroke this long with round ends. */
static const double DOT_LENGTH = 0.01;
/* A wave's height above its middle, and its period, in pitches of its rows. */
static const double WAVE_HEIGHT = 0.18, WAVE_PERIOD = 1.5;

/* cos of 0, 15, ... 345 degrees; no trigonometry of the machine's library. */
#define C15 0.96592582628906829
#define C30 0.86602540378443865
#define C45 0.70710678118654752
#define C75 0.25881904510252076
static const double cosines[24] = {1,    C15,  C30,  C45,  0.5, C75,  0,    -C75,
                                   -0.5, -C45, -C30, -C15, -1,  -C15, -C30, -C45,
                                   -0.5, -C75, 0,    C75,  0.5, C45,  C30,  C15};

/* Along the rows (u) and across (v); y is down on paper, angles are anticlockwise. */
struct rows {
	struct arena *arena;
	double cos, sin;
	struct paper_path area;
	ARRAY_OF(struct paper_line) out;
};

struct crossing {
	long row;
	double u;
};

struct interval {
	long row;
	double u0, u1;
};

struct intervals {
	struct interval *items;
	size_t count, room;
};

static struct paper_point to_rows(const struct rows *r, struct paper_point p)
{
	return (struct paper_point){r->cos * p.x - r->sin * p.y, r->sin * p.x + r->cos * p.y};
}

static struct paper_point to_paper(const struct rows *r, double u, double v)
{
	return (struct paper_point){r->cos * u + r->sin * v, r->cos * v - r->sin * u};
}

static int compare_crossings(const void *a, const void *b)
{
	const struct crossing *x = a, *y = b;
	if (x->row != y->row)
		return x->row < y->row ? -1 : 1;
	return (x->u > y->u) - (x->u < y->u);
}

/* Where the rows v = row * pitch + shift lie in the area. */
static struct intervals cut_rows(struct rows *r, double pitch, double shift)
{
	ARRAY_OF(struct crossing) crossings = {0};
	for (size_t i = 0; i < r->area.count; i++) {
		struct paper_line line = r->area.lines[i];
		for (size_t j = 0; j < line.count; j++) {
			struct paper_point a = to_rows(r, line.points[j]);
			struct paper_point b = to_rows(r, line.points[(j + 1) % line.count]);
			double low = fmin(a.y, b.y), high = fmax(a.y, b.y);
			/* Half open, so that a row through a corner counts once. */
			for (long row = (long)ceil((low - shift) / pitch);
			     (double)row * pitch + shift < high; row++) {
				double v = (double)row * pitch + shift;
				double u = a.x + (b.x - a.x) * (v - a.y) / (b.y - a.y);
				*array_push(r->arena, &crossings) = (struct crossing){row, u};
			}
		}
	}
	struct intervals in = {0};
	if (crossings.count > 0)
		qsort(crossings.items, crossings.count, sizeof *crossings.items, compare_crossings);
	for (size_t i = 0; i + 1 < crossings.count; i += 2) {
		struct crossing *pair = &crossings.items[i];
		*array_push(r->arena, &in) = (struct interval){pair->row, pair[0].u, pair[1].u};
	}
	return in;
}

/* What two sets of intervals, both in order, have in common row by row. */
static struct intervals both(struct rows *r, struct intervals a, struct intervals b)
{
	struct intervals common = {0};
	for (size_t i = 0, j = 0; i < a.count && j < b.count;) {
		struct interval x = a.items[i], y = b.items[j];
		if (x.row == y.row && fmax(x.u0, y.u0) < fmin(x.u1, y.u1))
			*array_push(r->arena, &common) =
				(struct interval){x.row, fmax(x.u0, y.u0), fmin(x.u1, y.u1)};
		if (x.row < y.row || (x.row == y.row && x.u1 < y.u1))
			i++;
		else
			j++;
	}
	return common;
}

/* Rows whose whole band of `half` on each side is inside. */
static struct intervals cut_bands(struct rows *r, double pitch, double half)
{
	struct intervals middle = cut_rows(r, pitch, 0);
	struct intervals upper = cut_rows(r, pitch, half);
	struct intervals lower = cut_rows(r, pitch, -half);
	return both(r, middle, both(r, upper, lower));
}

static void add_stroke(struct rows *r, double u0, double u1, double v)
{
	struct paper_point ends[] = {to_paper(r, u0, v), to_paper(r, u1, v)};
	*array_push(r->arena, &r->out) = *paper_path_line(r->arena, ends, 2, PAPER_OPEN).lines;
}

static void add_lines(struct rows *r, double pitch, double shift)
{
	struct intervals in = cut_rows(r, pitch, shift);
	for (size_t i = 0; i < in.count; i++)
		add_stroke(r, in.items[i].u0, in.items[i].u1,
		           (double)in.items[i].row * pitch + shift);
}

static void turn(struct rows *r, int angle_deg)
{
	int step = ((angle_deg / 15) % 24 + 24) % 24;
	r->cos = cosines[step];
	r->sin = cosines[(step + 18) % 24];
}

static void draw_lines(struct rows *r, const struct area_style *style)
{
	turn(r, style->angle_deg);
	add_lines(r, style->pitch, 0);
}

static void draw_cross(struct rows *r, const struct area_style *style)
{
	draw_lines(r, style);
	turn(r, style->angle_deg + 90);
	add_lines(r, style->pitch, 0);
}

static void draw_pairs(struct rows *r, const struct area_style *style)
{
	turn(r, style->angle_deg);
	add_lines(r, style->pitch, 0);
	add_lines(r, style->pitch, style->gap);
}

/* Every other row is stepped by half a period. */
static double row_phase(long row, double period)
{
	return row % 2 ? period / 2 : 0;
}

static void draw_dashes(struct rows *r, const struct area_style *style)
{
	turn(r, style->angle_deg);
	double period = style->dash + style->gap;
	struct intervals in = cut_rows(r, style->pitch, 0);
	for (size_t i = 0; i < in.count; i++) {
		struct interval x = in.items[i];
		double phase = row_phase(x.row, period);
		for (double k = floor((x.u0 - phase) / period); k * period + phase < x.u1; k++) {
			double from = fmax(k * period + phase, x.u0);
			double to = fmin(k * period + phase + style->dash, x.u1);
			if (from < to)
				add_stroke(r, from, to, (double)x.row * style->pitch);
		}
	}
}

static void draw_dots(struct rows *r, const struct area_style *style)
{
	turn(r, style->angle_deg);
	double radius = style->width / 2;
	struct intervals in = cut_bands(r, style->pitch, radius);
	for (size_t i = 0; i < in.count; i++) {
		struct interval x = in.items[i];
		double phase = row_phase(x.row, style->pitch);
		for (double k = ceil((x.u0 + radius - phase) / style->pitch);
		     k * style->pitch + phase + radius <= x.u1; k++)
			add_stroke(r, k * style->pitch + phase,
			           k * style->pitch + phase + DOT_LENGTH,
			           (double)x.row * style->pitch);
	}
}

/* An eighth of a period apart, a sine. */
static double wave_at(double k)
{
	static const double eighths[8] = {0, C45, 1, C45, 0, -C45, -1, -C45};
	return eighths[(((long)k % 8) + 8) % 8];
}

static void add_wave(struct rows *r, const struct area_style *style, struct interval x)
{
	double step = style->pitch * WAVE_PERIOD / 8, height = style->pitch * WAVE_HEIGHT;
	double first = ceil(x.u0 / step), last = floor(x.u1 / step);
	if (last - first < 1)
		return;
	struct paper_line line = {ARENA_ARRAY(r->arena, struct paper_point,
	                                      (size_t)(last - first) + 1),
	                          0, PAPER_OPEN};
	for (double k = first; k <= last; k++)
		line.points[line.count++] =
			to_paper(r, k * step, (double)x.row * style->pitch + height * wave_at(k));
	*array_push(r->arena, &r->out) = line;
}

static void draw_waves(struct rows *r, const struct area_style *style)
{
	turn(r, style->angle_deg);
	struct intervals in = cut_bands(r, style->pitch, style->pitch * WAVE_HEIGHT);
	for (size_t i = 0; i < in.count; i++)
		add_wave(r, style, in.items[i]);
}

struct paper_path hatch_cut(struct arena *arena, const struct area_style *style,
                            struct paper_path area)
{
	static void (*const draw[HATCH_KIND_COUNT])(struct rows *, const struct area_style *) = {
		[HATCH_LINES] = draw_lines,   [HATCH_CROSS] = draw_cross,
		[HATCH_DASHES] = draw_dashes, [HATCH_DOTS] = draw_dots,
		[HATCH_WAVES] = draw_waves,   [HATCH_PAIRS] = draw_pairs,
	};
	struct rows rows = {.arena = arena, .area = paper_path_flat(arena, area)};
	if (style->hatch != HATCH_NONE)
		draw[style->hatch](&rows, style);
	return (struct paper_path){rows.out.items, rows.out.count};
}

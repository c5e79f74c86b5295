#include "drawing/paper.h"

#include <string.h>

#include "base/array.h"

/* Handle length of a cubic quarter circle, as a share of the radius: 4/3 (sqrt 2 - 1). */
static const double QUARTER = 0.55228474983079340;

enum { FLAT_PIECES = 8 };

/* Narrows t0..t1 to where p + t d <= limit. */
static bool clip_side(double p, double d, double limit, double *t0, double *t1)
{
	double t = 0;
	if (d == 0)
		return p <= limit;
	t = (limit - p) / d;
	if (d > 0)
		*t1 = fmin(*t1, t);
	else
		*t0 = fmax(*t0, t);
	return *t0 < *t1;
}

bool paper_box_clip(struct paper_box box, struct paper_point a, struct paper_point b,
                    double *out_t0, double *out_t1)
{
	struct paper_point d = paper_sub(b, a);
	*out_t0 = 0;
	*out_t1 = 1;
	return clip_side(a.x, d.x, box.x1, out_t0, out_t1) &&
	       clip_side(-a.x, -d.x, -box.x0, out_t0, out_t1) &&
	       clip_side(a.y, d.y, box.y1, out_t0, out_t1) &&
	       clip_side(-a.y, -d.y, -box.y0, out_t0, out_t1);
}

static struct paper_path one_line(struct arena *arena, size_t count, enum paper_line_kind kind)
{
	struct paper_line *line = ARENA_NEW(arena, struct paper_line);
	*line = (struct paper_line){ARENA_ARRAY(arena, struct paper_point, count), count, kind};
	return (struct paper_path){line, 1};
}

struct paper_path paper_path_line(struct arena *arena, const struct paper_point *points,
                                  size_t count, enum paper_line_kind kind)
{
	struct paper_path path = one_line(arena, count, kind);
	if (count > 0)
		memcpy(path.lines->points, points, count * sizeof *points);
	return path;
}

struct paper_path paper_path_copy(struct arena *arena, struct paper_path path)
{
	struct paper_path copy = {ARENA_ARRAY(arena, struct paper_line, path.count), path.count};
	for (size_t i = 0; i < path.count; i++)
		copy.lines[i] = *paper_path_line(arena, path.lines[i].points, path.lines[i].count,
		                                 path.lines[i].kind)
		                         .lines;
	return copy;
}

struct paper_path paper_path_segment(struct arena *arena, struct paper_point a,
                                     struct paper_point b)
{
	return paper_path_line(arena, (struct paper_point[]){a, b}, 2, PAPER_OPEN);
}

struct paper_path paper_path_box(struct arena *arena, struct paper_box b)
{
	struct paper_point corners[] = {{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}};
	return paper_path_line(arena, corners, 4, PAPER_CLOSED);
}

/* Three points of a quarter circle from where `points` has come to, about `centre`, from
 * direction `from` to direction `to`. */
static void add_quarter(struct paper_point *points, struct paper_point centre, double radius,
                        struct paper_point from, struct paper_point to)
{
	struct paper_point start = paper_step(centre, from, radius);
	struct paper_point end = paper_step(centre, to, radius);
	points[0] = paper_step(start, to, radius * QUARTER);
	points[1] = paper_step(end, from, radius * QUARTER);
	points[2] = end;
}

static const struct paper_point quarters[5] = {{1, 0}, {0, 1}, {-1, 0}, {0, -1}, {1, 0}};

struct paper_path paper_path_circle(struct arena *arena, struct paper_point centre, double radius)
{
	struct paper_path path = one_line(arena, 13, PAPER_RING);
	struct paper_point *points = path.lines->points;
	points[0] = paper_step(centre, quarters[0], radius);
	for (int i = 0; i < 4; i++)
		add_quarter(points + 1 + 3 * i, centre, radius, quarters[i], quarters[i + 1]);
	return path;
}

struct paper_path paper_path_round(struct arena *arena, struct paper_box b, double radius)
{
	struct paper_box in = paper_box_grown(b, -radius);
	struct paper_point centres[] = {{in.x1, in.y1},
	                                {in.x0, in.y1},
	                                {in.x0, in.y0},
	                                {in.x1, in.y0}};
	struct paper_path path = one_line(arena, 25, PAPER_RING);
	struct paper_point *points = path.lines->points;
	points[0] = paper_step(centres[0], quarters[0], radius);
	for (int i = 0; i < 4; i++) {
		struct paper_point *corner = points + 1 + 6 * i;
		add_quarter(corner, centres[i], radius, quarters[i], quarters[i + 1]);
		struct paper_point next = paper_step(centres[(i + 1) % 4], quarters[i + 1], radius);
		corner[3] = corner[2]; /* a straight side, written as a curve */
		corner[4] = corner[5] = next;
	}
	return path;
}

struct paper_path paper_path_join(struct arena *arena, struct paper_path a, struct paper_path b)
{
	struct paper_path both = {ARENA_ARRAY(arena, struct paper_line, a.count + b.count),
	                          a.count + b.count};
	if (a.count > 0)
		memcpy(both.lines, a.lines, a.count * sizeof *a.lines);
	if (b.count > 0)
		memcpy(both.lines + a.count, b.lines, b.count * sizeof *b.lines);
	return both;
}

struct paper_box paper_path_box_of(struct paper_path path)
{
	struct paper_box box = paper_box_empty();
	for (size_t i = 0; i < path.count; i++)
		for (size_t j = 0; j < path.lines[i].count; j++)
			box = paper_box_with(box, path.lines[i].points[j]);
	return box;
}

static struct paper_point on_curve(const struct paper_point *p, double t)
{
	double s = 1 - t;
	double w[4] = {s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t};
	struct paper_point sum = {0, 0};
	for (int i = 0; i < 4; i++)
		sum = paper_step(sum, p[i], w[i]);
	return sum;
}

static struct paper_line flat_line(struct arena *arena, struct paper_line line)
{
	if (line.kind == PAPER_OPEN || line.kind == PAPER_CLOSED || line.count < 4)
		return line;
	size_t pieces = (line.count - 1) / 3;
	struct paper_line flat = {ARENA_ARRAY(arena, struct paper_point, pieces * FLAT_PIECES + 1),
	                          0, line.kind == PAPER_RING ? PAPER_CLOSED : PAPER_OPEN};
	flat.points[flat.count++] = line.points[0];
	for (size_t i = 0; i < pieces; i++)
		for (int j = 1; j <= FLAT_PIECES; j++)
			flat.points[flat.count++] =
				on_curve(line.points + 3 * i, j / (double)FLAT_PIECES);
	flat.count -= line.kind == PAPER_RING;
	return flat;
}

struct paper_path paper_path_flat(struct arena *arena, struct paper_path path)
{
	struct paper_path flat = {ARENA_ARRAY(arena, struct paper_line, path.count), path.count};
	for (size_t i = 0; i < path.count; i++)
		flat.lines[i] = flat_line(arena, path.lines[i]);
	return flat;
}

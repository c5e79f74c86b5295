#include "sheets/tile_lines.h"

#include <math.h>
#include <stdlib.h>

/* Floor mm. */
static const double SAME = 0.001;

/* A stretch of a joint's centre line that lies along one axis. */
struct stretch {
	long long at; /* place across, in thousandths of a mm: joints on one line agree */
	double across, from, to;
};

struct stretches {
	ARRAY_OF(struct stretch) list;
	double step; /* the least from one joint to the next; 0: no joint yet */
};

static void note_step(struct stretches *s, double step)
{
	s->step = s->step > 0 ? fmin(s->step, step) : step;
}

static void add_stretch(struct arena *arena, struct stretches *s, double across, double from,
                        double to)
{
	*array_push(arena, &s->list) = (struct stretch){llround(across * 1000), across, from, to};
}

static int compare(const void *a, const void *b)
{
	const struct stretch *p = a, *q = b;
	if (p->at != q->at)
		return p->at < q->at ? -1 : 1;
	if (p->from < q->from || p->from > q->from)
		return p->from < q->from ? -1 : 1;
	return (p->to > q->to) - (p->to < q->to);
}

/* Joins stretches that touch or overlap; what is left comes first. */
static void join(struct stretches *s)
{
	if (s->list.count == 0)
		return;
	qsort(s->list.items, s->list.count, sizeof *s->list.items, compare);
	size_t last = 0;
	for (size_t i = 1; i < s->list.count; i++) {
		struct stretch *left = &s->list.items[last], *next = &s->list.items[i];
		if (next->at == left->at && next->from <= left->to + 0.01)
			left->to = fmax(left->to, next->to);
		else
			s->list.items[++last] = *next;
	}
	s->list.count = last + 1;
}

/* Joints nearer to each other than `least` would close to black: of those that follow one
 * another so near the first is drawn. */
static void thin(struct stretches *s, double least)
{
	size_t kept = 0;
	double last = -INFINITY;
	if (s->step <= 0 || s->step >= least)
		return;
	for (size_t i = 0; i < s->list.count; i++) {
		double across = s->list.items[i].across;
		if (across > last && across < last + least - SAME)
			continue;
		last = across;
		s->list.items[kept++] = s->list.items[i];
	}
	s->list.count = kept;
}

struct line_array {
	ARRAY_OF(struct line) lines;
};

static void add_line(struct arena *arena, struct line_array *lines, struct point a, struct point b)
{
	struct point *points = ARENA_ARRAY(arena, struct point, 2);
	points[0] = a;
	points[1] = b;
	*array_push(arena, &lines->lines) = (struct line){points, 2};
}

static void add_box(struct arena *arena, struct box box, struct stretches *along,
                    struct stretches *across)
{
	note_step(along, box.y1 - box.y0);
	note_step(across, box.x1 - box.x0);
	add_stretch(arena, along, box.y0, box.x0, box.x1);
	add_stretch(arena, along, box.y1, box.x0, box.x1);
	add_stretch(arena, across, box.x0, box.y0, box.y1);
	add_stretch(arena, across, box.x1, box.y0, box.y1);
}

/* A run of rectangles that touch end to end: both long sides, and the joints across. */
static void add_course(struct arena *arena, struct box cell, int last, struct stretches *along,
                       struct stretches *across)
{
	double step = cell.x1 - cell.x0, x1 = cell.x1 + step * last;
	note_step(along, cell.y1 - cell.y0);
	note_step(across, step);
	add_stretch(arena, along, cell.y0, cell.x0, x1);
	add_stretch(arena, along, cell.y1, cell.x0, x1);
	for (int i = 0; i <= last + 1; i++)
		add_stretch(arena, across, cell.x0 + step * i, cell.y0, cell.y1);
}

/* A run of rectangles, whichever way the next one lies. */
static void add_boxes(struct arena *arena, struct box cell, struct tile_run run,
                      const struct module *module, struct stretches *along,
                      struct stretches *across)
{
	int last = run.last - run.first;
	struct point a = module->a;
	if (fabs(a.y) < 1e-9 && fabs(a.x - (cell.x1 - cell.x0)) < 1e-9) {
		add_course(arena, cell, last, along, across);
		return;
	}
	for (int i = 0; i <= last; i++) {
		struct box box = {cell.x0 + i * a.x, cell.y0 + i * a.y, cell.x1 + i * a.x,
		                  cell.y1 + i * a.y};
		add_box(arena, box, along, across);
	}
}

/* Any other face: the cells of the run one by one, each as a closed line. */
static void add_cells(struct arena *arena, const struct tiling *tiling, const struct panel *panel,
                      struct tile_run run, struct line_array *lines)
{
	for (int i = run.first; i <= run.last; i++) {
		struct address at = {run.face, i, run.j};
		struct ring cell = module_cell_at(arena, tiling->module, at, panel->position);
		struct point *points = ARENA_ARRAY(arena, struct point, cell.count + 1);
		for (size_t k = 0; k <= cell.count; k++)
			points[k] = cell.points[k % cell.count];
		*array_push(arena, &lines->lines) = (struct line){points, cell.count + 1};
	}
}

static bool is_box(struct ring ring)
{
	struct box box = ring_box(ring);
	return ring.count == 4 &&
	       fabs(ring_area(ring) - (box.x1 - box.x0) * (box.y1 - box.y0)) < 1e-3;
}

static bool is_wide(struct ring cell, double least)
{
	struct box box = ring_box(cell);
	return fmin(box.x1 - box.x0, box.y1 - box.y0) >= least;
}

/* The runs of whole tiles, then each cut tile as a run of one. */
static struct tile_run run_at(const struct panel *panel, size_t i)
{
	if (i < panel->run_count)
		return panel->runs[i];
	struct address at = panel->pieces[i - panel->run_count].at;
	return (struct tile_run){at.face, at.j, at.i, at.i};
}

struct line *tile_lines(struct arena *arena, const struct tiling *tiling, const struct panel *panel,
                        double least, size_t *out_count)
{
	struct stretches along = {0}, across = {0};
	struct line_array lines = {0};
	for (size_t i = 0; i < panel->run_count + panel->piece_count; i++) {
		struct tile_run run = run_at(panel, i);
		struct address first = {run.face, run.first, run.j};
		struct ring cell = module_cell_at(arena, tiling->module, first, panel->position);
		if (is_box(cell))
			add_boxes(arena, ring_box(cell), run, tiling->module, &along, &across);
		else if (is_wide(cell, least))
			add_cells(arena, tiling, panel, run, &lines);
	}
	join(&along);
	join(&across);
	thin(&along, least);
	thin(&across, least);
	for (size_t i = 0; i < along.list.count; i++) {
		struct stretch s = along.list.items[i];
		add_line(arena, &lines, (struct point){s.from, s.across},
		         (struct point){s.to, s.across});
	}
	for (size_t i = 0; i < across.list.count; i++) {
		struct stretch s = across.list.items[i];
		add_line(arena, &lines, (struct point){s.across, s.from},
		         (struct point){s.across, s.to});
	}
	*out_count = lines.lines.count;
	return lines.lines.items;
}

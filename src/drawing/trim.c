#include "drawing/trim.h"

#include <string.h>

/* Clear on each side of a text in capital heights; NEVER: the line runs on. */
#define NEVER (-1.0)
static const double HATCH_CLEAR = 0.5;

static double pen_clear(enum pen pen)
{
	switch (pen) {
	case PEN_TILE:
	case PEN_CUT:
	case PEN_STRIP_SEAM:
		return 0.3;
	case PEN_DIMENSION: /* the text's own line runs one gap under it */
		return 0.1;
	default:
		return NEVER;
	}
}

struct trimmer {
	struct arena *arena;
	const struct paper_box *boxes;
	size_t count;
	ARRAY_OF(struct paper_line) out;
	ARRAY_OF(struct paper_point) run; /* the piece being walked */
};

static void end_piece(struct trimmer *t)
{
	if (t->run.count > 1)
		*array_push(t->arena, &t->out) =
			*paper_path_line(t->arena, t->run.items, t->run.count, PAPER_OPEN).lines;
	t->run.count = 0;
}

static void add_stretch(struct trimmer *t, struct paper_point a, struct paper_point b)
{
	if (t->run.count == 0)
		*array_push(t->arena, &t->run) = a;
	*array_push(t->arena, &t->run) = b;
}

/* Where, from t0 on, the segment first enters a box, and where it leaves that box. */
static bool next_hit(const struct trimmer *t, struct paper_point a, struct paper_point b, double t0,
                     double *enter, double *leave)
{
	bool is_hit = false;
	double e, l;
	for (size_t i = 0; i < t->count; i++)
		if (paper_box_clip(t->boxes[i], a, b, &e, &l) && l > t0 &&
		    (!is_hit || e < *enter)) {
			*enter = e;
			*leave = l;
			is_hit = true;
		}
	return is_hit;
}

static void trim_segment(struct trimmer *t, struct paper_point a, struct paper_point b)
{
	struct paper_point d = paper_sub(b, a);
	double from = 0, enter = 0, leave = 0;
	while (next_hit(t, a, b, from, &enter, &leave)) {
		if (enter > from)
			add_stretch(t, paper_step(a, d, from), paper_step(a, d, enter));
		end_piece(t);
		from = leave;
	}
	if (from < 1)
		add_stretch(t, paper_step(a, d, from), b);
}

static bool is_hit(const struct trimmer *t, struct paper_line line)
{
	struct paper_box box = paper_box_empty();
	for (size_t i = 0; i < line.count; i++)
		box = paper_box_with(box, line.points[i]);
	box = paper_box_grown(box, 1e-6); /* a level line's box has no inside to meet */
	for (size_t i = 0; i < t->count; i++)
		if (paper_box_meets(t->boxes[i], box))
			return true;
	return false;
}

static void trim_line(struct trimmer *t, struct paper_line line)
{
	bool is_curved = line.kind == PAPER_CURVE || line.kind == PAPER_RING;
	if (is_curved || !is_hit(t, line)) {
		*array_push(t->arena, &t->out) = line;
		return;
	}
	size_t last = line.kind == PAPER_CLOSED ? line.count : line.count - 1;
	for (size_t i = 0; i < last; i++)
		trim_segment(t, line.points[i], line.points[(i + 1) % line.count]);
	end_piece(t);
}

/* Boxes of the texts on the plan itself, grown by `clear` capitals, near `around`. */
static struct trimmer trimmer_for(const struct list *list, struct paper_box around, double clear)
{
	ARRAY_OF(struct paper_box) boxes = {0};
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *op = &list->ops.items[i];
		if (op->kind != OP_TEXT || op->layer == LAYER_SHEET)
			continue;
		struct paper_box box = paper_box_grown(op->box, clear * op->cap);
		if (paper_box_meets(box, around))
			*array_push(list->arena, &boxes) = box;
	}
	return (struct trimmer){.arena = list->arena, .boxes = boxes.items, .count = boxes.count};
}

static void trim_op(const struct list *list, struct op *op, double clear)
{
	struct trimmer t = trimmer_for(list, paper_box_grown(op->box, 1e-6), clear);
	if (t.count == 0)
		return;
	for (size_t i = 0; i < op->path.count; i++)
		if (op->path.lines[i].count > 0)
			trim_line(&t, op->path.lines[i]);
	op->path = (struct paper_path){t.out.items, t.out.count};
}

void trim_under_text(struct list *list)
{
	for (size_t i = 0; i < list->ops.count; i++) {
		struct op *op = &list->ops.items[i];
		double clear = op->kind == OP_HATCH    ? HATCH_CLEAR
		               : op->kind == OP_STROKE ? pen_clear(op->role.pen)
		                                       : NEVER;
		if (clear >= 0)
			trim_op(list, op, clear);
	}
}

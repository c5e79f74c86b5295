#include "drawing/clip.h"

#include "base/array.h"

struct pieces {
	struct arena *arena;
	ARRAY_OF(struct paper_line) out;
	ARRAY_OF(struct paper_point) run; /* the piece being walked */
};

static bool is_inside(struct paper_line line, struct paper_box box)
{
	for (size_t i = 0; i < line.count; i++) {
		struct paper_point p = line.points[i];
		if (p.x < box.x0 || p.x > box.x1 || p.y < box.y0 || p.y > box.y1)
			return false;
	}
	return true;
}

static void end_piece(struct pieces *s)
{
	if (s->run.count > 1)
		*array_push(s->arena, &s->out) =
			*paper_path_line(s->arena, s->run.items, s->run.count, PAPER_OPEN).lines;
	s->run.count = 0;
}

static void walk_segment(struct pieces *s, struct paper_point a, struct paper_point b,
                         struct paper_box box)
{
	struct paper_point d = paper_sub(b, a);
	double from, to;
	if (!paper_box_clip(box, a, b, &from, &to)) {
		end_piece(s);
		return;
	}
	if (from > 0)
		end_piece(s);
	if (s->run.count == 0)
		*array_push(s->arena, &s->run) = from > 0 ? paper_step(a, d, from) : a;
	*array_push(s->arena, &s->run) = to < 1 ? paper_step(a, d, to) : b;
	if (to < 1)
		end_piece(s);
}

static void cut_line(struct pieces *s, struct paper_line line, struct paper_box box)
{
	if (is_inside(line, box)) {
		*array_push(s->arena, &s->out) = line;
		return;
	}
	struct paper_line flat = paper_path_flat(s->arena, (struct paper_path){&line, 1}).lines[0];
	size_t last = flat.kind == PAPER_CLOSED ? flat.count : flat.count - 1;
	for (size_t i = 0; i < last; i++)
		walk_segment(s, flat.points[i], flat.points[(i + 1) % flat.count], box);
	end_piece(s);
}

struct paper_path clip_stroke(struct arena *arena, struct paper_path path, struct paper_box box)
{
	struct pieces s = {.arena = arena};
	for (size_t i = 0; i < path.count; i++)
		if (path.lines[i].count > 0)
			cut_line(&s, path.lines[i], box);
	return (struct paper_path){s.out.items, s.out.count};
}

/* One edge of the box: what has sign * coordinate over the limit is cut away. */
struct edge {
	bool is_x;
	double sign, limit;
};

static double past(struct edge edge, struct paper_point p)
{
	return edge.sign * (edge.is_x ? p.x : p.y) - edge.limit;
}

static struct paper_line cut_ring(struct arena *arena, struct paper_line line, struct edge edge)
{
	ARRAY_OF(struct paper_point) kept = {0};
	for (size_t i = 0; i < line.count; i++) {
		struct paper_point a = line.points[i], b = line.points[(i + 1) % line.count];
		double at = past(edge, a), next = past(edge, b);
		if (at <= 0)
			*array_push(arena, &kept) = a;
		if ((at <= 0) != (next <= 0))
			*array_push(arena, &kept) =
				paper_step(a, paper_sub(b, a), at / (at - next));
	}
	return (struct paper_line){kept.items, kept.count, PAPER_CLOSED};
}

struct paper_path clip_area(struct arena *arena, struct paper_path path, struct paper_box box)
{
	const struct edge edges[] = {{true, 1, box.x1},
	                             {true, -1, -box.x0},
	                             {false, 1, box.y1},
	                             {false, -1, -box.y0}};
	ARRAY_OF(struct paper_line) out = {0};
	for (size_t i = 0; i < path.count; i++) {
		struct paper_line line = path.lines[i];
		if (line.count > 0 && !is_inside(line, box)) {
			line = paper_path_flat(arena, (struct paper_path){&line, 1}).lines[0];
			for (size_t k = 0; k < sizeof edges / sizeof *edges; k++)
				line = cut_ring(arena, line, edges[k]);
		}
		if (line.count > 0)
			*array_push(arena, &out) = line;
	}
	return (struct paper_path){out.items, out.count};
}

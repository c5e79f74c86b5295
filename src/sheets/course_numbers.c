#include "sheets/course_numbers.h"

#include <math.h>

#include "geometry/segment.h"

/* Paper mm, own design: clear of the control line; the least pitch at which every course has
 * its number; from a number to walls and joints. */
static const double BESIDE = 3.8, PITCH_LEAST = 5.4, CLEAR = 3.4;
/* White between two numbers of a level row; where the rows of both lines meet. */
static const double NUMBER_GAP = 2.4, CROSSING = 9;

struct numbering {
	struct sheet *sheet;
	const struct lay_view *v;
	int side; /* of the control line beside which they stand: not that of the first tile */
	const struct control *from, *beside; /* counted from; standing beside */
	double pitch;                        /* floor mm */
	int step;
};

/* False: a wall, an obstacle or a joint that is not grouted is too near for a number. */
static bool is_free(const struct numbering *n, struct point p)
{
	const struct joints *joints = n->v->lay->joints;
	double clear = CLEAR * n->v->view->scale;
	struct point plan = lay_view_plan(n->v, p);
	if (!region_holds(&n->v->ground, plan) || region_distance(&n->v->ground, plan) < clear)
		return false;
	for (size_t i = 0; i < joints->joint_count; i++) {
		struct line line = joints->joints[i].line;
		for (size_t k = 0; k + 1 < line.count; k++)
			if (segment_distance((struct segment){line.points[k], line.points[k + 1]},
			                     p) < clear)
				return false;
	}
	return true;
}

/* On the other side of the line where a joint runs along this one; else nowhere. */
static void draw_number(const struct numbering *n, int number, int way)
{
	struct sheet *sheet = n->sheet;
	double at = way * (number - 0.5) * n->pitch;
	double cap = sheet->draft->style->texts[TEXT_DIMENSION].cap;
	for (int side = n->side, tries = 0; tries < 2; side = -side, tries++) {
		double off = side * BESIDE * n->v->view->scale;
		struct point p =
			n->from->along_u
				? (struct point){n->beside->from.x + off, n->from->from.y + at}
				: (struct point){n->from->from.x + at, n->beside->from.y + off};
		struct paper_point on = lay_view_point(n->v, p);
		if (!is_free(n, p))
			continue;
		list_text(sheet->list, LAYER_NOTES, TEXT_DIMENSION, n->from->id,
		          paper_at(on.x, on.y + cap / 2), ALIGN_MIDDLE,
		          arena_printf(sheet->draft->arena, "%d", number));
		return;
	}
}

static int free_side(const struct lay_view *v, bool along_u)
{
	const struct controls *controls = v->lay->controls;
	for (size_t i = 0; i < controls->first_count; i++)
		if (controls->firsts[i].room == v->room)
			return (along_u ? controls->firsts[i].towards_u
			                : controls->firsts[i].towards_v)
			               ? -1
			               : 1;
	return 1;
}

/* Every course has its number where there is room for it, else every fifth, tenth... */
static int step_of(const struct numbering *n, int most)
{
	static const int steps[] = {1, 5, 10, 50, 100, 500};
	enum { COUNT = sizeof steps / sizeof *steps };
	const char *longest = arena_printf(n->sheet->draft->arena, "%d", most);
	double wide = list_text_width(n->sheet->list, TEXT_DIMENSION, longest) + NUMBER_GAP;
	double least = n->from->along_u ? PITCH_LEAST : fmax(PITCH_LEAST, wide);
	for (int i = 0; i < COUNT; i++)
		if (view_length(n->v->view, n->pitch * steps[i]) >= least)
			return steps[i];
	return most + 1;
}

void course_numbers_draw(struct sheet *sheet, const struct lay_view *v, bool along_u)
{
	const struct module *module = v->lay->module;
	struct numbering n = {.sheet = sheet,
	                      .v = v,
	                      .side = free_side(v, along_u),
	                      .from = lay_view_control(v, along_u),
	                      .beside = lay_view_control(v, !along_u),
	                      .pitch = along_u ? module->course : module->pitch};
	struct box box = region_box(&v->ground);
	if (!n.from || !n.beside || module->offset_count == 0 || n.pitch <= 0)
		return;
	int most = (int)(fmax(box.x1 - box.x0, box.y1 - box.y0) / n.pitch) + 1;
	n.step = step_of(&n, most);
	for (int number = n.step; number <= most; number += n.step) {
		/* At the crossing the numbers of both lines would meet. */
		if (!along_u && view_length(v->view, (number - 0.5) * n.pitch) < CROSSING)
			continue;
		draw_number(&n, number, 1);
		draw_number(&n, number, -1);
	}
}

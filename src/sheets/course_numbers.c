#include "sheets/course_numbers.h"

/* Paper mm, own design: clear of the control line; the least pitch at which every course has
 * its number; from a number to the walls. */
static const double BESIDE = 3.4, PITCH_LEAST = 4.4, CLEAR = 3;
enum { SPARSE = 5 };

struct numbering {
	struct sheet *sheet;
	const struct lay_view *v;
	int side; /* of the control line beside which they stand: not that of the first tile */
	const struct control *from, *beside; /* counted from; standing beside */
	double pitch;                        /* floor mm */
	int step;
};

static void draw_number(const struct numbering *n, int number, int way)
{
	double at = way * (number - 0.5) * n->pitch, off = n->side * BESIDE * n->v->view->scale;
	bool along_u = n->from->along_u;
	struct point p = along_u ? (struct point){n->beside->from.x + off, n->from->from.y + at}
	                         : (struct point){n->from->from.x + at, n->beside->from.y + off};
	double cap = n->sheet->draft->style->texts[TEXT_TABLE].cap;
	struct paper_point on = lay_view_point(n->v, p);
	struct point plan = lay_view_plan(n->v, p);
	if (!region_holds(&n->v->ground, plan) ||
	    view_length(n->v->view, region_distance(&n->v->ground, plan)) < CLEAR)
		return;
	list_text(n->sheet->list, LAYER_NOTES, TEXT_TABLE_HEAD, n->from->id,
	          paper_at(on.x, on.y + cap / 2), ALIGN_MIDDLE,
	          arena_printf(n->sheet->draft->arena, "%d", number));
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
	n.step = view_length(v->view, n.pitch) < PITCH_LEAST ? SPARSE : 1;
	/* At the crossing the numbers of both lines would meet. */
	for (int number = along_u || n.step > 1 ? n.step : 2; number <= most; number += n.step) {
		draw_number(&n, number, 1);
		draw_number(&n, number, -1);
	}
}

#include "sheets/key_plan.h"

#include <math.h>

#include "sheets/floor_plan.h"

/* Paper mm, own design: from the heading to the plan, between a plan and its list, and round a
 * name inside its room. */
static const double CLEAR = 2, BESIDE = 3, ROUND = 0.8;

struct key_plan {
	struct sheet *sheet;
	struct view view;
	bool is_numbered; /* the rooms are: a list beside the plan has their names */
};

static double cap_of(const struct sheet *sheet)
{
	return sheet->draft->style->texts[TEXT_TABLE_HEAD].cap;
}

static const char *numbered(const struct sheet *sheet, size_t room)
{
	const struct draft *draft = sheet->draft;
	return arena_printf(draft->arena, "%zu  %s", room + 1, draft->site->rooms[room].name);
}

/* The name there keeps off the room's walls. */
static bool name_fits(const struct sheet *sheet, const struct view *view,
                      const struct site_room *room)
{
	struct point middle = ring_widest(room->outline);
	double wide = list_text_width(sheet->list, TEXT_TABLE_HEAD, room->name);
	double clear = view->scale * (cap_of(sheet) / 2 + ROUND);
	double half = view->scale * wide / 2;
	for (double x = -half; x <= half; x += fmin(clear, half)) {
		struct point at = {middle.x + x, middle.y};
		if (!ring_holds(room->outline, at) || ring_distance(room->outline, at) < clear)
			return false;
	}
	return true;
}

static bool names_fit(const struct sheet *sheet, const struct view *view)
{
	const struct site *site = sheet->draft->site;
	for (size_t i = 0; i < site->room_count; i++)
		if (!name_fits(sheet, view, &site->rooms[i]))
			return false;
	return true;
}

static void draw_room(const struct key_plan *key, size_t index)
{
	struct sheet *sheet = key->sheet;
	struct arena *arena = sheet->draft->arena;
	const struct site_room *room = &sheet->draft->site->rooms[index];
	list_stroke(sheet->list, LAYER_SLAB, PEN_OBSTACLE, room->id,
	            view_ring(arena, &key->view, room->outline));
	struct paper_point middle = view_point(&key->view, ring_widest(room->outline));
	list_text(sheet->list, LAYER_LABELS, TEXT_TABLE_HEAD, room->id,
	          paper_at(middle.x, middle.y + cap_of(sheet) / 2), ALIGN_MIDDLE,
	          key->is_numbered ? arena_printf(arena, "%zu", index + 1) : room->name);
}

static struct view view_in(const struct draft *draft, struct paper_box box)
{
	struct box window = floor_plan_window(draft->arena, draft->site);
	double scale = fmax((window.x1 - window.x0) / (box.x1 - box.x0),
	                    (window.y1 - window.y0) / (box.y1 - box.y0));
	return view_make(window, 90, scale, box);
}

/* The names beside the plan, in columns as high as it; gives what is left for the plan. */
static struct paper_box draw_list(struct sheet *sheet, struct paper_box box)
{
	const struct site *site = sheet->draft->site;
	double pitch = text_pitch(cap_of(sheet)), widest = 0;
	size_t rows = (size_t)fmax(1, floor((box.y1 - box.y0) / pitch));
	size_t columns = (site->room_count + rows - 1) / rows;
	for (size_t i = 0; i < site->room_count; i++)
		widest = fmax(widest,
		              list_text_width(sheet->list, TEXT_TABLE_HEAD, numbered(sheet, i)));
	double left = box.x1 - (double)columns * (widest + BESIDE);
	for (size_t i = 0; i < site->room_count; i++)
		list_text(sheet->list, LAYER_NOTES, TEXT_TABLE_HEAD, site->rooms[i].id,
		          paper_at(left + BESIDE + (double)(i / rows) * (widest + BESIDE),
		                   box.y0 + (double)(i % rows) * pitch + cap_of(sheet)),
		          ALIGN_START, numbered(sheet, i));
	box.x1 = left;
	return box;
}

void key_plan_draw(struct sheet *sheet, struct paper_box box)
{
	const struct draft *draft = sheet->draft;
	list_text(sheet->list, LAYER_NOTES, TEXT_TABLE_HEAD, NULL,
	          paper_at(box.x0, box.y0 + cap_of(sheet)), ALIGN_START,
	          draft_word(draft, "heading.key-plan"));
	box.y0 += cap_of(sheet) + CLEAR;
	struct key_plan key = {sheet, view_in(draft, box), false};
	if (!names_fit(sheet, &key.view)) {
		key.is_numbered = true;
		key.view = view_in(draft, draw_list(sheet, box));
	}
	for (size_t i = 0; i < draft->site->room_count; i++)
		draw_room(&key, i);
}

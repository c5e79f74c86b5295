#include "sheets/key_plan.h"

#include <math.h>

#include "sheets/floor_plan.h"

/* Paper mm, own design: from the heading to the plan. */
static const double CLEAR = 2;

static void draw_room(struct sheet *sheet, const struct view *view, const struct site_room *room)
{
	struct arena *arena = sheet->draft->arena;
	struct paper_path outline = view_ring(arena, view, room->outline);
	list_stroke(sheet->list, LAYER_SLAB, PEN_OBSTACLE, room->id, outline);
	struct paper_point middle = view_point(view, ring_middle(room->outline));
	double cap = sheet->draft->style->texts[TEXT_TABLE_HEAD].cap;
	list_text(sheet->list, LAYER_LABELS, TEXT_TABLE_HEAD, room->id,
	          paper_at(middle.x, middle.y + cap / 2), ALIGN_MIDDLE, room->name);
}

void key_plan_draw(struct sheet *sheet, struct paper_box box)
{
	const struct draft *draft = sheet->draft;
	const struct site *site = draft->site;
	double cap = draft->style->texts[TEXT_TABLE_HEAD].cap;
	list_text(sheet->list, LAYER_NOTES, TEXT_TABLE_HEAD, NULL, paper_at(box.x0, box.y0 + cap),
	          ALIGN_START, draft_word(draft, "heading.key-plan"));
	box.y0 += cap + CLEAR;
	struct box window = floor_plan_window(draft->arena, site);
	double scale = fmax((window.x1 - window.x0) / (box.x1 - box.x0),
	                    (window.y1 - window.y0) / (box.y1 - box.y0));
	struct view view = view_make(window, 90, scale, box);
	for (size_t i = 0; i < site->room_count; i++)
		draw_room(sheet, &view, &site->rooms[i]);
}

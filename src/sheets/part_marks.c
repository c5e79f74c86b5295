#include "sheets/part_marks.h"

#include "sheets/lay_view.h"
#include "sheets/parts.h"

/* Paper mm, own design: a match line runs on past the part; its text's clear distance; the
 * key plan in the text column. */
static const double BEYOND = 3, CLEAR = 1.6, KEY_HIGH = 34, KEY_INSET = 4, KEY_GAP = 2;
/* Where along a match line its text may stand: shares of its length, best first. */
static const double STANDS[] = {0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85};
enum { STAND_COUNT = sizeof STANDS / sizeof *STANDS, ROWS = 2, TEXT_PRIORITY = 500 };

/* Its two ends on the floor, west to east or south to north. */
static void line_ends(const struct part *part, enum side side, struct point *a, struct point *b)
{
	struct box c = part->core, w = part->window;
	if (side_is_level(side)) {
		double y = side == SIDE_TOP ? c.y1 : c.y0;
		*a = (struct point){w.x0, y};
		*b = (struct point){w.x1, y};
		return;
	}
	double x = side == SIDE_RIGHT ? c.x1 : c.x0;
	*a = (struct point){x, w.y0};
	*b = (struct point){x, w.y1};
}

/* Sheet and zone where the neighbour shows the middle of the match line. */
static const char *line_text(const struct sheet *sheet, const struct part *next,
                             struct point middle)
{
	const struct draft *draft = sheet->draft;
	struct view view = parts_view(sheet->parts, (size_t)(next - sheet->parts->list));
	return draft_text(draft, "part.match", {"sheet", next->name},
	                  {"zone", sheet_zone(draft, view_point(&view, middle))});
}

/* Outside the part, beside the stretch of floor that the neighbour shows too. */
static void label_line(struct sheet *sheet, enum side side, const char *text, const char *target,
                       struct paper_box edge)
{
	double cap = sheet->draft->style->texts[TEXT_TAG].cap;
	bool level = side_is_level(side);
	double sign = side == SIDE_TOP || side == SIDE_LEFT ? -1 : 1;
	double at = level ? (sign < 0 ? edge.y0 : edge.y1) : (sign < 0 ? edge.x0 : edge.x1);
	struct label_place places[ROWS * STAND_COUNT];
	for (int i = 0; i < ROWS * STAND_COUNT; i++) {
		double out = at + sign * (CLEAR + cap / 2 + (i / STAND_COUNT) * text_pitch(cap));
		double share = STANDS[i % STAND_COUNT];
		double x = edge.x0 + share * (edge.x1 - edge.x0);
		double y = edge.y0 + share * (edge.y1 - edge.y0);
		places[i] = (struct label_place){.at = level ? paper_at(x, out) : paper_at(out, y),
		                                 .is_upright = !level,
		                                 .cost = i};
	}
	list_label(sheet->list, &(struct label){.lines = &text,
	                                        .line_count = 1,
	                                        .role = TEXT_TAG,
	                                        .layer = LAYER_LABELS,
	                                        .link = target,
	                                        .where = LABEL_FIXED,
	                                        .a = places[0].at,
	                                        .b = places[0].at,
	                                        .places = places,
	                                        .place_count = ROWS * STAND_COUNT,
	                                        .priority = TEXT_PRIORITY,
	                                        .is_clear = true});
}

static void draw_match_line(struct sheet *sheet, const struct view *view, enum side side)
{
	const struct part *part = &sheet->parts->list[sheet->part];
	const struct part *next = parts_next_to(sheet->parts, part, side);
	struct point a, b;
	if (!next)
		return;
	line_ends(part, side, &a, &b);
	struct paper_point from = view_point(view, a), to = view_point(view, b);
	struct paper_point along = paper_unit(paper_sub(to, from));
	list_stroke(sheet->list, LAYER_SHEET, PEN_MATCH, NULL,
	            paper_path_segment(sheet->draft->arena, paper_step(from, along, -BEYOND),
	                               paper_step(to, along, BEYOND)));
	struct paper_point low = view_point(view, (struct point){part->window.x0, part->window.y0});
	struct paper_point high =
		view_point(view, (struct point){part->window.x1, part->window.y1});
	struct point middle = {(a.x + b.x) / 2, (a.y + b.y) / 2};
	label_line(sheet, side, line_text(sheet, next, middle), next->name,
	           (struct paper_box){low.x, high.y, high.x, low.y});
}

/* ---- key plan ---- */

static struct paper_path box_path(struct arena *arena, const struct view *view, struct box box)
{
	struct paper_point low = view_point(view, (struct point){box.x0, box.y0});
	struct paper_point high = view_point(view, (struct point){box.x1, box.y1});
	return paper_path_box(arena, (struct paper_box){low.x, high.y, high.x, low.y});
}

static void draw_key_part(struct sheet *sheet, const struct view *view, size_t index)
{
	struct arena *arena = sheet->draft->arena;
	const struct part *part = &sheet->parts->list[index];
	struct paper_path path = box_path(arena, view, part->core);
	struct point middle = {(part->core.x0 + part->core.x1) / 2,
	                       (part->core.y0 + part->core.y1) / 2};
	struct paper_point at = view_point(view, middle);
	double cap = sheet->draft->style->texts[TEXT_TABLE_HEAD].cap;
	if (index == sheet->part)
		list_area(sheet->list, LAYER_NOTES, AREA_OBSTACLE, NULL, path);
	list_stroke(sheet->list, LAYER_NOTES, PEN_RULE, NULL, path);
	struct paper_box text = list_text(sheet->list, LAYER_NOTES, TEXT_TABLE_HEAD, NULL,
	                                  paper_at(at.x, at.y + cap / 2), ALIGN_MIDDLE,
	                                  arena_printf(arena, "%zu", index + 1));
	if (index != sheet->part)
		list_link(sheet->list, text, part->name);
}

static void draw_key_rooms(struct sheet *sheet, const struct view *view)
{
	const struct site *site = sheet->draft->site;
	struct view window = *view;
	window.window = &sheet->parts->whole.window;
	for (size_t i = 0; i < site->room_count; i++) {
		struct region ground = view_ground(sheet->draft->arena, &window, &site->rooms[i]);
		list_stroke(sheet->list, LAYER_NOTES, PEN_OBSTACLE, site->rooms[i].id,
		            view_region(sheet->draft->arena, view, &ground));
	}
}

/* At the foot of the text column, over the revisions. */
static void draw_key(struct sheet *sheet)
{
	const struct draft *draft = sheet->draft;
	struct box whole = sheet->parts->whole.window;
	double cap = draft->style->texts[TEXT_TABLE_HEAD].cap;
	struct paper_box column = sheet->column;
	double wide = column.x1 - column.x0 - 2 * KEY_INSET;
	double high = fmin(KEY_HIGH, wide * (whole.y1 - whole.y0) / (whole.x1 - whole.x0));
	double top = column.y1 - KEY_INSET - high;
	struct paper_box box = {column.x0 + KEY_INSET, top, column.x1 - KEY_INSET, top + high};
	double scale = fmax((whole.x1 - whole.x0) / wide, (whole.y1 - whole.y0) / high);
	struct view view = view_make(whole, 90, scale, box);
	list_text(sheet->list, LAYER_NOTES, TEXT_TABLE_HEAD, NULL, paper_at(box.x0, top - KEY_GAP),
	          ALIGN_START,
	          draft_text(draft, "part.key", {"wide", draft_measure(draft, whole.x1 - whole.x0)},
	                     {"deep", draft_measure(draft, whole.y1 - whole.y0)}));
	for (size_t i = 0; i < sheet->parts->count; i++)
		draw_key_part(sheet, &view, i);
	draw_key_rooms(sheet, &view);
	sheet->column.y1 = top - KEY_GAP - cap - KEY_INSET;
}

void part_marks_draw(struct sheet *sheet, const struct view *view)
{
	if (!sheet->parts)
		return;
	list_set_clip(sheet->list, NULL);
	for (int side = 0; side < SIDE_COUNT; side++)
		draw_match_line(sheet, view, (enum side)side);
	draw_key(sheet);
}

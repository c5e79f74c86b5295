/* draw_controls.c - control lines with their offsets, the square triangle, the first tile. */
#include <string.h>

#include "drawing/dimension.h"
#include "drawing/symbol.h"
#include "sheets/draw_tile.h"
#include "sheets/margin.h"
#include "sheets/wall_label.h"

/* Paper mm, own design: a control line runs this far past the walls, to its end mark. */
static const double BEYOND_WALL = 3.5;
/* From the middle of the mark at its end to its name; the name at the far end costs this much
 * more. */
static const double NAME_CLEAR = 3.8, NAME_FAR = 1;
/* In another room it would seem to name a line of that one. */
static const double NAME_ELSEWHERE = 14;
static const double ARROW_LENGTH = 14;
/* An offset shorter than this on paper says nothing a crew could measure by. */
static const double OFFSET_LEAST = 1;

static void draw_offset(struct sheet *sheet, const struct lay_view *v,
                        const struct control *control, const struct control_offset *offset)
{
	const struct draft *draft = sheet->draft;
	if (view_length(v->view, offset->distance) < OFFSET_LEAST)
		return;
	dimension_pair(sheet->list, v->view, lay_view_plan(v, offset->at_wall),
	               lay_view_plan(v, offset->at_line), 0, draft_length(draft, offset->distance),
	               control->id);
}

/* Round the mark at either end, outside the walls first: over the floor other lines are near. */
static void name_control(struct sheet *sheet, const struct lay_view *v,
                         const struct control *control, const char *text, struct paper_point from,
                         struct paper_point to)
{
	static const struct {
		double along, beside, cost;
	} STANDS[] = {{1, 0, 0},   {1, -1, 0},    {1, 1, 0.4}, {0, -1, 1},
	              {0, 1, 1.4}, {-1, -1, 2.5}, {-1, 1, 3}};
	enum { STAND_COUNT = sizeof STANDS / sizeof *STANDS };
	struct label_place places[2 * STAND_COUNT];
	double cap = sheet->draft->style->texts[TEXT_TAG].cap;
	double half = list_text_width(sheet->list, TEXT_TAG, text) / 2;
	for (int i = 0; i < 2 * STAND_COUNT; i++) {
		bool is_far = i >= STAND_COUNT;
		struct paper_point end = is_far ? from : to;
		struct paper_point along =
			paper_unit(is_far ? paper_sub(from, to) : paper_sub(to, from));
		double on = STANDS[i % STAND_COUNT].along, off = STANDS[i % STAND_COUNT].beside;
		struct paper_point way = {on * along.x - off * along.y,
		                          on * along.y + off * along.x};
		/* Slantwise it begins over or under the mark: so it keeps near. */
		double x = way.x * (on != 0 && off != 0 ? half : half + NAME_CLEAR);
		double y = way.y * (cap / 2 + NAME_CLEAR);
		places[i] = (struct label_place){.at = paper_at(end.x + x, end.y + y),
		                                 .cost = STANDS[i % STAND_COUNT].cost +
		                                         (is_far ? NAME_FAR : 0)};
		const struct site_room *room = wall_label_room(sheet, places[i].at);
		places[i].cost += room && room != v->room ? NAME_ELSEWHERE : 0;
	}
	list_label(sheet->list, &(struct label){.lines = &text,
	                                        .line_count = 1,
	                                        .role = TEXT_TAG,
	                                        .layer = LAYER_LABELS,
	                                        .element = control->id,
	                                        .where = LABEL_FIXED,
	                                        .places = places,
	                                        .place_count = 2 * STAND_COUNT,
	                                        .a = to,
	                                        .b = to,
	                                        .priority = 8,
	                                        .can_lead = true,
	                                        .is_clear = true});
}

/* True where the sheet shows another room there. */
static bool is_elsewhere(const struct sheet *sheet, const struct lay_view *v, struct paper_point at)
{
	const struct box *window = v->view->window ? v->view->window : &sheet->margin->window;
	const struct site_room *room = wall_label_room(sheet, at);
	struct point p = view_floor(v->view, at);
	return room && room != v->room && p.x > window->x0 && p.x < window->x1 &&
	       p.y > window->y0 && p.y < window->y1;
}

/* Where a control line and the mark on it end at a wall: past it, but where another room is the
 * line ends at the wall and the mark stands within. */
struct control_end {
	struct paper_point line, mark;
};

static struct control_end end_at(const struct sheet *sheet, const struct lay_view *v,
                                 struct paper_point wall, struct paper_point outward)
{
	struct paper_point past = paper_step(wall, outward, BEYOND_WALL);
	if (!is_elsewhere(sheet, v, past))
		return (struct control_end){past, past};
	return (struct control_end){wall, paper_step(wall, outward, -BEYOND_WALL)};
}

static void draw_control(struct sheet *sheet, const struct lay_view *v,
                         const struct control *control)
{
	const struct draft *draft = sheet->draft;
	struct paper_point a = lay_view_point(v, control->from), b = lay_view_point(v, control->to);
	struct paper_point along = paper_unit(paper_sub(b, a)), back = {-along.x, -along.y};
	struct control_end first = end_at(sheet, v, a, back), last = end_at(sheet, v, b, along);
	list_stroke(sheet->list, LAYER_CONTROL, PEN_CONTROL, control->id,
	            paper_path_segment(draft->arena, first.line, last.line));
	struct paper_point from = symbol_control_end(sheet->list, control->id, first.mark, back);
	struct paper_point to = symbol_control_end(sheet->list, control->id, last.mark, along);
	const char *text = draft_word(draft, control->along_u ? "tag.line-u" : "tag.line-v");
	/* On a part the name stands where the line leaves it. */
	list_clip_named(sheet->list, &from, &to);
	name_control(sheet, v, control, text, from, to);
	for (size_t i = 0; i < control->offset_count && !lay_view_is_marked(v, control); i++)
		draw_offset(sheet, v, control, &control->offsets[i]);
	sheet_use(sheet, LEGEND_CONTROL);
}

void draw_controls(struct sheet *sheet, const struct lay_view *v)
{
	const struct controls *controls = v->lay->controls;
	for (size_t i = 0; i < controls->control_count; i++)
		if (controls->controls[i].room == v->room)
			draw_control(sheet, v, &controls->controls[i]);
}

/* The hypotenuse of the 3-4-5 between the control lines, with its length. */
static void draw_square(struct sheet *sheet, const struct lay_view *v,
                        const struct first_tile *first)
{
	const struct draft *draft = sheet->draft;
	double unit = first->square_side;
	if (unit <= 0)
		return;
	struct point a = first->square_u, b = first->square_v;
	struct paper_point from = lay_view_point(v, a), to = lay_view_point(v, b);
	list_stroke(sheet->list, LAYER_CONTROL, PEN_DIMENSION, NULL,
	            paper_path_segment(draft->arena, from, to));
	const char *text = draft_text(draft, "tag.square", {"size", draft_length(draft, 5 * unit)});
	list_label(sheet->list, &(struct label){.lines = &text,
	                                        .line_count = 1,
	                                        .role = TEXT_DIMENSION,
	                                        .layer = LAYER_LABELS,
	                                        .where = LABEL_ALONG,
	                                        .a = from,
	                                        .b = to,
	                                        .priority = 4,
	                                        .can_lead = true,
	                                        .is_clear = true});
}

/* Arrows of work from the far edges of the first tile. */
static void draw_arrows(struct sheet *sheet, const struct lay_view *v,
                        const struct first_tile *first, struct box tile)
{
	struct point middle = {(tile.x0 + tile.x1) / 2, (tile.y0 + tile.y1) / 2};
	struct point far_u = {first->towards_u ? tile.x1 : tile.x0, middle.y};
	struct point far_v = {middle.x, first->towards_v ? tile.y1 : tile.y0};
	struct paper_point u = lay_view_direction(v, (struct point){first->towards_u ? 1 : -1, 0});
	struct paper_point w = lay_view_direction(v, (struct point){0, first->towards_v ? 1 : -1});
	symbol_arrow(sheet->list, LAYER_CONTROL, NULL, lay_view_point(v, far_u), u, ARROW_LENGTH);
	symbol_arrow(sheet->list, LAYER_CONTROL, NULL, lay_view_point(v, far_v), w, ARROW_LENGTH);
}

static void draw_first(struct sheet *sheet, const struct lay_view *v,
                       const struct first_tile *first)
{
	const struct draft *draft = sheet->draft;
	struct tile_ref ref = {first->panel, first->tile, NULL};
	struct ring ring = tile_ref_ring(draft->arena, v->lay->tiling, ref);
	struct paper_path path = lay_view_ring(draft->arena, v, ring);
	struct box box = ring_box(ring);
	struct paper_point middle =
		lay_view_point(v, (struct point){(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2});
	/* On a part without it neither drawing nor legend have it. */
	if (!list_shows(sheet->list, middle))
		return;
	list_area(sheet->list, LAYER_CONTROL, AREA_FIRST_TILE, first->room->id, path);
	list_stroke(sheet->list, LAYER_CONTROL, PEN_FIRST_TILE, first->room->id, path);
	draw_arrows(sheet, v, first, box);
	const char *text = draft_word(draft, "tag.first-tile");
	list_label(sheet->list, &(struct label){.lines = &text,
	                                        .line_count = 1,
	                                        .role = TEXT_STRONG,
	                                        .layer = LAYER_LABELS,
	                                        .element = first->room->id,
	                                        .where = LABEL_AROUND,
	                                        .a = middle,
	                                        .b = middle,
	                                        .gap = 4,
	                                        .priority = 9,
	                                        .can_lead = true,
	                                        .is_clear = true,
	                                        .frame = LABEL_BOX});
	sheet_use(sheet, LEGEND_FIRST_TILE);
}

void draw_first_tile(struct sheet *sheet, const struct lay_view *v)
{
	const struct controls *controls = v->lay->controls;
	for (size_t i = 0; i < controls->first_count; i++)
		if (controls->firsts[i].room == v->room) {
			draw_first(sheet, v, &controls->firsts[i]);
			draw_square(sheet, v, &controls->firsts[i]);
		}
}

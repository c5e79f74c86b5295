#include "sheets/part_marks.h"

#include "sheets/lay_view.h"
#include "sheets/parts.h"

/* Paper mm, own design: a match line runs on past the part; its text's clear distance; the
 * key plan in the text column. */
static const double BEYOND = 3, CLEAR = 1.6, KEY_HIGH = 34, KEY_INSET = 4, KEY_GAP = 2;
/* Where along a match line its text may stand: shares of its length, best first. */
static const double STANDS[] = {0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85};
/* Floor mm to each side of a match line where floor that goes on across it is looked for. */
static const double ACROSS = 5;
enum { STAND_COUNT = sizeof STANDS / sizeof *STANDS, ROWS = 2, TEXT_PRIORITY = 500 };

/* The ends of a box at a side, west to east or south to north. */
static void line_ends(struct box box, enum side side, struct point *a, struct point *b)
{
	*a = (struct point){side == SIDE_RIGHT ? box.x1 : box.x0,
	                    side == SIDE_TOP ? box.y1 : box.y0};
	*b = (struct point){side == SIDE_LEFT ? box.x0 : box.x1,
	                    side == SIDE_BOTTOM ? box.y0 : box.y1};
}

/* Moves a line to that side of the box. */
static void place_at(struct box box, enum side side, struct point *a, struct point *b)
{
	if (side_is_level(side))
		a->y = b->y = side == SIDE_TOP ? box.y1 : box.y0;
	else
		a->x = b->x = side == SIDE_RIGHT ? box.x1 : box.x0;
}

/* Part and zone where the neighbour shows the middle of the match line. */
static const char *line_text(const struct sheet *sheet, const struct part *next,
                             struct point middle)
{
	const struct draft *draft = sheet->draft;
	size_t part = (size_t)(next - sheet->parts->list);
	struct view view = parts_view(sheet->parts, part);
	return draft_text(draft, "part.match",
	                  {"part", arena_printf(draft->arena, "%zu", part + 1)},
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

/* Shortens it to the floor that goes on across it; false: none does. */
static bool keep_on_floor(const struct sheet *sheet, enum side side, struct point *a,
                          struct point *b)
{
	const struct site *site = sheet->draft->site;
	struct box band = {a->x - ACROSS, a->y - ACROSS, b->x + ACROSS, b->y + ACROSS};
	struct view view = {.scale = 1, .window = &band};
	struct box floor = box_empty();
	for (size_t i = 0; i < site->room_count; i++) {
		struct region ground = view_ground(sheet->draft->arena, &view, &site->rooms[i]);
		struct box box = region_box(&ground);
		if (ground.count == 0)
			continue;
		floor = box_with(floor, (struct point){box.x0, box.y0});
		floor = box_with(floor, (struct point){box.x1, box.y1});
	}
	if (side_is_level(side)) {
		a->x = fmax(a->x, floor.x0);
		b->x = fmin(b->x, floor.x1);
	} else {
		a->y = fmax(a->y, floor.y0);
		b->y = fmin(b->y, floor.y1);
	}
	return a->x < b->x || a->y < b->y;
}

static void draw_match_line(struct sheet *sheet, const struct view *view, enum side side)
{
	const struct part *part = &sheet->parts->list[sheet->part];
	const struct part *next = parts_next_to(sheet->parts, part, side);
	struct point a, b;
	if (!next)
		return;
	/* What lies beyond a corner of the part is no neighbour at this side. */
	line_ends(part->core, side, &a, &b);
	if (!keep_on_floor(sheet, side, &a, &b))
		return;
	line_ends(part->window, side, &a, &b);
	place_at(part->core, side, &a, &b);
	keep_on_floor(sheet, side, &a, &b);
	struct paper_point from = view_point(view, a), to = view_point(view, b);
	struct paper_point along = paper_unit(paper_sub(to, from));
	list_stroke(sheet->list, LAYER_DIMENSIONS, PEN_MATCH, NULL,
	            paper_path_segment(sheet->draft->arena, paper_step(from, along, -BEYOND),
	                               paper_step(to, along, BEYOND)));
	struct paper_point low = view_point(view, (struct point){part->window.x0, part->window.y0});
	struct paper_point high =
		view_point(view, (struct point){part->window.x1, part->window.y1});
	struct point middle = {(a.x + b.x) / 2, (a.y + b.y) / 2};
	struct paper_box edge = {low.x, high.y, high.x, low.y};
	if (side_is_level(side)) {
		edge.x0 = from.x;
		edge.x1 = to.x;
	} else {
		edge.y0 = to.y;
		edge.y1 = from.y;
	}
	label_line(sheet, side, line_text(sheet, next, middle), next->name, edge);
}

/* ---- key plan ---- */

static struct paper_path box_path(struct arena *arena, const struct view *view, struct box box)
{
	struct paper_point low = view_point(view, (struct point){box.x0, box.y0});
	struct paper_point high = view_point(view, (struct point){box.x1, box.y1});
	return paper_path_box(arena, (struct paper_box){low.x, high.y, high.x, low.y});
}

/* Where the part shows most floor. */
static struct point key_place(const struct sheet *sheet, const struct part *part)
{
	const struct site *site = sheet->draft->site;
	struct view view = {.scale = 1, .window = &part->core};
	struct point best = {(part->core.x0 + part->core.x1) / 2,
	                     (part->core.y0 + part->core.y1) / 2};
	double clear = 0;
	for (size_t i = 0; i < site->room_count; i++) {
		struct region ground = view_ground(sheet->draft->arena, &view, &site->rooms[i]);
		for (size_t k = 0; k < ground.count; k++) {
			struct ring outline = ground.polygons[k].outline;
			struct point at = ring_widest(outline);
			if (ring_distance(outline, at) <= clear)
				continue;
			clear = ring_distance(outline, at);
			best = at;
		}
	}
	return best;
}

static void draw_key_part(struct sheet *sheet, const struct view *view, size_t index)
{
	struct arena *arena = sheet->draft->arena;
	const struct part *part = &sheet->parts->list[index];
	struct paper_path path = box_path(arena, view, part->core);
	struct paper_point at = view_point(view, key_place(sheet, part));
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
	struct box walls = sheet->parts->whole.walls;
	list_text(sheet->list, LAYER_NOTES, TEXT_TABLE_HEAD, NULL, paper_at(box.x0, top - KEY_GAP),
	          ALIGN_START,
	          draft_text(draft, "part.key", {"wide", draft_measure(draft, walls.x1 - walls.x0)},
	                     {"deep", draft_measure(draft, walls.y1 - walls.y0)}));
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

#include "sheets/floor_plan.h"

#include "sheets/crew_marks.h"
#include "sheets/draw_cuts.h"
#include "sheets/draw_floor.h"
#include "sheets/part_marks.h"
#include "sheets/parts.h"
#include "sheets/wall_label.h"

/* Paper mm, own design: the lane of the overall dimensions, outside the names of the walls. */
static const double LANE = 8, FIRST_LANE = 6;
enum { LABEL_LINES = 2 };

struct box floor_plan_window(struct arena *arena, const struct site *site)
{
	struct box window = box_empty();
	for (size_t i = 0; i < site->room_count; i++) {
		struct region ground = site_room_ground(arena, &site->rooms[i]);
		struct box box = region_box(&ground);
		window = box_with(window, (struct point){box.x0, box.y0});
		window = box_with(window, (struct point){box.x1, box.y1});
	}
	return window;
}

/* As the chains of its rooms have it: a corner beside another does not count. */
struct box floor_plan_walls(struct arena *arena, const struct site *site)
{
	struct box walls = box_empty();
	for (size_t i = 0; i < site->room_count; i++) {
		struct places x = room_corners(arena, &site->rooms[i], SIDE_BOTTOM);
		struct places y = room_corners(arena, &site->rooms[i], SIDE_LEFT);
		walls = box_with(walls, (struct point){x.at.items[0], y.at.items[0]});
		walls = box_with(walls, (struct point){x.at.items[x.at.count - 1],
		                                       y.at.items[y.at.count - 1]});
	}
	return walls;
}

static void draw_overall(struct sheet *sheet, const struct view *view, struct box window,
                         double offset)
{
	struct box walls = floor_plan_walls(sheet->draft->arena, sheet->draft->site);
	double x[] = {walls.x0, walls.x1}, y[] = {walls.y0, walls.y1};
	/* Of a floor in parts the key plan says it. */
	if (sheet->parts)
		return;
	struct places wide = {.at = {x, 2, 2}}, deep = {.at = {y, 2, 2}};
	margin_chain(sheet, view, window, SIDE_BOTTOM, offset, &wide, NULL);
	margin_chain(sheet, view, window, SIDE_LEFT, offset, &deep, NULL);
}

static void draw_not_tiled(struct sheet *sheet, const struct view *view,
                           const struct site_room *room)
{
	struct arena *arena = sheet->draft->arena;
	struct region ground = view_ground(arena, view, room);
	if (ground.count == 0)
		return;
	list_area(sheet->list, LAYER_SLAB, AREA_NOT_TILED, room->id,
	          view_region(arena, view, &ground));
	sheet_use(sheet, LEGEND_NOT_TILED);
}

static void draw_room(struct sheet *sheet, const struct view *view, const struct site_room *room,
                      struct floor_plan plan)
{
	const struct draft *draft = sheet->draft;
	const struct placed_lay *lay = lay_of_room(draft->placed, room);
	draw_doorways(sheet, view, room, DOORWAY_WIDE);
	if (lay) {
		struct lay_view v = lay_view_make(draft->arena, lay, view, room);
		plan.draw(sheet, &v);
		if (plan.has_cuts)
			draw_cuts(sheet, &v);
	}
	if (!lay)
		draw_not_tiled(sheet, view, room);
	if (!lay || !plan.has_cuts)
		draw_wall_names(sheet, view, room);
	draw_walls(sheet, view, room);
	draw_obstacles(sheet, view, room);
}

enum sheet_fit floor_plan_draw(struct sheet *sheet, struct floor_plan plan)
{
	const struct draft *draft = sheet->draft;
	struct margin margin = {.window = floor_plan_window(draft->arena, draft->site),
	                        .walls = floor_plan_walls(draft->arena, draft->site)};
	double offset = wall_label_lane(draft, LABEL_LINES) + FIRST_LANE;
	struct view view;
	for (int side = 0; side < SIDE_COUNT; side++)
		margin.need[side] = offset;
	margin.need[SIDE_BOTTOM] += LANE;
	margin.need[SIDE_LEFT] += LANE;
	if (!margin_fit(sheet, &margin, &view))
		return SHEET_TOO_LARGE;
	for (size_t i = 0; i < draft->site->room_count; i++)
		draw_room(sheet, &view, &draft->site->rooms[i], plan);
	draw_overall(sheet, &view, margin.window, offset);
	part_marks_draw(sheet, &view);
	return SHEET_FITS;
}

#include "sheets/install.h"

#include <math.h>

#include "sheets/crew_marks.h"
#include "sheets/draw_cuts.h"
#include "sheets/draw_floor.h"
#include "sheets/draw_tile.h"
#include "sheets/install_notes.h"
#include "sheets/locate.h"
#include "sheets/part_marks.h"
#include "sheets/parts.h"
#include "sheets/strip_corners.h"
#include "sheets/wall_label.h"

/* Paper mm, own design: a lane of running dimensions, whose values stand square to it, and
 * a lane of a chain, whose values stand along it. */
static const double CHAIN_LANE = 7.5, FIRST_LANE = 2.6;
static const double FROM_GAP = 1;      /* from the end of a lane */
static const double RUNNING_CLEAR = 6; /* ticks, overshoot and space round the values */

struct plan_lanes {
	double running[SIDE_COUNT], chain[SIDE_COUNT], overall[SIDE_COUNT]; /* offsets */
	double need[SIDE_COUNT];
};

static struct box room_window(struct arena *arena, const struct site_room *room)
{
	struct region ground = site_room_ground(arena, room);
	return region_box(&ground);
}

/* A running lane is as deep as its widest value. */
static double running_lane(const struct sheet *sheet, const struct crew_marks *marks, int side)
{
	double widest = 0, origin = marks->origin[side_is_level((enum side)side) ? 0 : 1];
	for (size_t i = 0; i < marks->sides[side].at.count; i++) {
		double distance = fabs(marks->sides[side].at.items[i] - origin);
		widest = fmax(widest, list_text_width(sheet->list, TEXT_DIMENSION,
		                                      draft_length(sheet->draft, distance)));
	}
	return widest + RUNNING_CLEAR;
}

/* Ends of turned control lines between the corners; on the main sides at least the corners. */
static struct places side_chain(const struct sheet *sheet, const struct site_room *room,
                                const struct crew_marks *marks, int side)
{
	if (marks->ends[side].at.count > 0)
		return marks->ends[side];
	if (side == SIDE_BOTTOM || side == SIDE_LEFT)
		return room_corners(sheet->draft->arena, room, (enum side)side);
	return (struct places){0};
}

/* The distances of a lane begin in a circle; where that is on another part, a text says on which
 * line. */
static void name_origin(struct sheet *sheet, const struct view *view, enum side side, double offset,
                        double origin)
{
	const struct box *w = view->window;
	bool level = side_is_level(side);
	if (!w ||
	    (level ? origin >= w->x0 && origin <= w->x1 : origin >= w->y0 && origin <= w->y1)) {
		sheet_use(sheet, LEGEND_ORIGIN);
		return;
	}
	bool before = origin < (level ? w->x0 : w->y0);
	struct point end = {level ? (before ? w->x0 : w->x1) : w->x0,
	                    level ? w->y0 : (before ? w->y0 : w->y1)};
	struct paper_point at = view_point(view, end);
	at = level ? paper_at(at.x + (before ? -FROM_GAP : FROM_GAP), at.y + offset)
	           : paper_at(at.x - offset, at.y + (before ? FROM_GAP : -FROM_GAP));
	const struct list_clip *clip = sheet->list->clip;
	list_set_clip(sheet->list, NULL);
	const char *text =
		draft_text(sheet->draft, "tag.from",
	                   {"line", draft_word(sheet->draft, level ? "tag.line-v" : "tag.line-u")});
	list_label(sheet->list, &(struct label){.lines = &text,
	                                        .line_count = 1,
	                                        .role = TEXT_DIMENSION,
	                                        .layer = LAYER_DIMENSIONS,
	                                        .where = LABEL_AROUND,
	                                        .a = at,
	                                        .b = at,
	                                        .priority = 8,
	                                        .is_clear = true});
	list_set_clip(sheet->list, clip);
}

/* Lanes outwards: wall labels, running dimensions, chain of corners, overall. With room for
 * `rows` lines of a wall's label where it tells course ends. */
static struct plan_lanes lay_lanes(const struct sheet *sheet, const struct site_room *room,
                                   const struct lay_view *v, const struct crew_marks *marks,
                                   size_t rows)
{
	const struct draft *draft = sheet->draft;
	struct plan_lanes lanes = {0};
	for (int side = 0; side < SIDE_COUNT; side++) {
		/* A label of two lines stands beside the running dimensions, not under them. */
		bool has_ends = v && draw_cuts_has_ends(v, (enum side)side);
		double least = wall_label_lane(draft, has_ends ? rows : 1) + FIRST_LANE;
		double at = wall_label_lane(draft, 1) + FIRST_LANE;
		if (marks->sides[side].at.count > 0) {
			lanes.running[side] = at;
			at += running_lane(sheet, marks, side);
		}
		at = fmax(at, least);
		bool is_main = side == SIDE_BOTTOM || side == SIDE_LEFT;
		if (side_chain(sheet, room, marks, side).at.count > 2) {
			lanes.chain[side] = at + CHAIN_LANE - FIRST_LANE;
			at += CHAIN_LANE;
		}
		if (is_main) {
			lanes.overall[side] = at + CHAIN_LANE - FIRST_LANE;
			at += CHAIN_LANE;
		}
		lanes.need[side] = at;
	}
	return lanes;
}

static struct margin margin_of(struct arena *arena, const struct site_room *room,
                               const struct plan_lanes *lanes)
{
	struct margin margin = {.window = room_window(arena, room),
	                        .walls = ring_box(room->outline)};
	for (int side = 0; side < SIDE_COUNT; side++)
		margin.need[side] = lanes->need[side];
	return margin;
}

/* Labels of two lines have a lane of their own, where that costs no scale: else leaders. */
static struct plan_lanes choose_lanes(const struct sheet *sheet, const struct site_room *room,
                                      const struct lay_view *v, const struct crew_marks *marks)
{
	struct plan_lanes roomy = lay_lanes(sheet, room, v, marks, 2),
			  plain = lay_lanes(sheet, room, v, marks, 1);
	struct margin wide = margin_of(sheet->draft->arena, room, &roomy),
		      least = margin_of(sheet->draft->arena, room, &plain);
	bool is_same = llround(margin_scale(sheet, &wide) * 1000) ==
	               llround(margin_scale(sheet, &least) * 1000);
	return is_same ? roomy : plain;
}

static void draw_side(struct sheet *sheet, const struct view *view, struct box window,
                      const struct site_room *room, const struct crew_marks *marks,
                      const struct plan_lanes *lanes, enum side side)
{
	struct places corners = room_corners(sheet->draft->arena, room, side);
	double origin = marks->origin[side_is_level(side) ? 0 : 1];
	if (marks->sides[side].at.count > 0) {
		margin_running(sheet, view, window, side, lanes->running[side], origin,
		               &marks->sides[side], room->id);
		name_origin(sheet, view, side, lanes->running[side], origin);
	}
	/* What runs along a wall stands where the wall is. */
	if (!parts_is_outer(sheet, side))
		return;
	struct places chain = side_chain(sheet, room, marks, side);
	if (lanes->chain[side] > 0)
		margin_chain(sheet, view, window, side, lanes->chain[side], &chain, room->id);
	if (lanes->overall[side] > 0) {
		double ends[] = {corners.at.items[0], corners.at.items[corners.at.count - 1]};
		struct places overall = {.at = {ends, 2, 2}};
		margin_chain(sheet, view, window, side, lanes->overall[side], &overall, room->id);
	}
}

static void draw_dimensions(struct sheet *sheet, const struct view *view, struct box window,
                            const struct site_room *room, const struct crew_marks *marks,
                            const struct plan_lanes *lanes)
{
	for (int side = 0; side < SIDE_COUNT; side++)
		draw_side(sheet, view, window, room, marks, lanes, (enum side)side);
	for (size_t i = 0; i < marks->inside.count; i++)
		locate_draw_inside(sheet, view, room, marks->inside.items[i], room->id);
}

static void draw_lay(struct sheet *sheet, const struct lay_view *v)
{
	draw_cut_tiles(sheet, v);
	draw_tile_joints(sheet, v);
	draw_strips(sheet, v);
	draw_joints(sheet, v);
	draw_holds(sheet, v, true);
	draw_covered_cracks(sheet, v);
	draw_controls(sheet, v);
	draw_first_tile(sheet, v);
	draw_cuts(sheet, v);
	draw_open_edges(sheet, v);
	const struct draft *draft = sheet->draft;
	struct strip_corners corners = strip_corners_find(draft->arena, draft->placed, v, false);
	strip_corners_mark(sheet, v, &corners);
}

enum sheet_fit install_draw(struct sheet *sheet, const struct site_room *room)
{
	struct arena *arena = sheet->draft->arena;
	const struct placed_lay *lay = lay_of_room(sheet->draft->placed, room);
	struct view view = parts_extent(sheet);
	struct lay_view v = {0};
	struct crew_marks marks = {0};
	if (lay) {
		v = lay_view_make(arena, lay, &view, room);
		marks = crew_marks_find(arena, &v);
	}
	struct plan_lanes lanes = choose_lanes(sheet, room, lay ? &v : NULL, &marks);
	struct margin margin = margin_of(arena, room, &lanes);
	if (!margin_fit(sheet, &margin, &view))
		return SHEET_TOO_LARGE;
	draw_doorways(sheet, &view, room, DOORWAY_ALONE);
	if (lay)
		draw_lay(sheet, &v);
	else
		draw_wall_names(sheet, &view, room);
	draw_walls(sheet, &view, room);
	draw_obstacles(sheet, &view, room);
	draw_dimensions(sheet, &view, margin.window, room, &marks, &lanes);
	part_marks_draw(sheet, &view);
	install_notes(sheet, room, lay);
	return SHEET_FITS;
}

#include "sheets/slab.h"

#include <math.h>

#include "geometry/clip.h"
#include "sheets/crew_marks.h"
#include "sheets/draw_cuts.h"
#include "sheets/draw_floor.h"
#include "sheets/draw_tile.h"
#include "sheets/floor_plan.h"
#include "sheets/locate.h"
#include "sheets/part_marks.h"
#include "sheets/parts.h"
#include "sheets/slab_located.h"
#include "sheets/slab_notes.h"
#include "sheets/slab_readings.h"
#include "sheets/wall_label.h"

/* Paper mm, own design: the lane of a chain, outside the names of the walls. */
static const double CHAIN_LANE = 8, FIRST_LANE = 6;
/* Floor mm: places nearer than this are one. */
static const double SAME_PLACE = 8;

static void locate_lines(struct arena *arena, struct located *all, struct box window,
                         struct line line, const struct region *ground)
{
	size_t count;
	struct line *parts = clip_line(arena, line, ground, &count);
	for (size_t i = 0; i < count; i++)
		locate_line(arena, all, window, parts[i]);
}

/* The corner of an obstacle that is nearest to the walls; of a round one the centre. */
static struct point obstacle_point(const struct site_room *room,
                                   const struct site_obstacle *obstacle)
{
	struct box box = ring_box(obstacle->ring);
	struct point middle = {(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2};
	struct point best = obstacle->ring.points[0];
	if (obstacle->plan->across_nm > 0)
		return middle;
	for (size_t i = 1; i < obstacle->ring.count; i++)
		if (locate_reach(room, obstacle->ring.points[i]) < locate_reach(room, best) - 1)
			best = obstacle->ring.points[i];
	return best;
}

/* Jambs and obstacles. */
static void locate_fixtures(struct arena *arena, struct located *all, struct box window,
                            const struct site_room *room)
{
	for (size_t i = 0; i < room->doorway_count; i++) {
		struct point jambs[] = {room->doorways[i].from, room->doorways[i].to};
		locate_line(arena, all, window, (struct line){jambs, 2});
	}
	for (size_t i = 0; i < room->obstacle_count; i++) {
		struct point at = obstacle_point(room, &room->obstacles[i]);
		locate_line(arena, all, window, (struct line){&at, 1});
	}
}

/* Ends of all cracks and slab joints in a room, then its corners. */
static struct located locate_room(struct arena *arena, const struct site *site,
                                  const struct site_room *room)
{
	struct box window = ring_box(room->outline);
	struct located all = {0};
	struct region ground = site_room_ground(arena, room);
	for (size_t i = 0; i < site->crack_count; i++)
		locate_lines(arena, &all, window, site->cracks[i].line, &ground);
	for (size_t i = 0; i < site->slab_joint_count; i++)
		locate_lines(arena, &all, window, site->slab_joints[i].line, &ground);
	locate_fixtures(arena, &all, window, room);
	for (int s = 0; s < SIDE_COUNT; s++) {
		struct places corners = room_corners(arena, room, (enum side)s);
		if (all.sides[s].at.count == 0)
			continue;
		for (size_t i = 0; i < corners.at.count; i++)
			*array_push(arena, &all.sides[s].at) = corners.at.items[i];
		places_sort(&all.sides[s], SAME_PLACE);
	}
	return all;
}

/* Chains of one side, from the wall outwards: ends at the wall, corners, overall. */
enum { CHAIN_ENDS, CHAIN_CORNERS, CHAIN_OVERALL, CHAIN_COUNT };

static bool has_chain(const struct located *all, const struct places *corners, enum side side,
                      int chain)
{
	bool is_main = side == SIDE_BOTTOM || side == SIDE_LEFT;
	switch (chain) {
	case CHAIN_ENDS:
		return all->sides[side].at.count > 0;
	case CHAIN_CORNERS:
		/* The ends stand between the corners already. */
		return is_main && corners->at.count > 2 && all->sides[side].at.count == 0;
	default:
		return is_main;
	}
}

static double side_place(struct box box, enum side side)
{
	const double places[] = {[SIDE_BOTTOM] = box.y0,
	                         [SIDE_RIGHT] = box.x1,
	                         [SIDE_TOP] = box.y1,
	                         [SIDE_LEFT] = box.x0};
	return places[side];
}

/* True where a side of a room is one of the whole floor. */
static bool is_outer(const struct draft *draft, struct box window, enum side side)
{
	struct box floor = floor_plan_window(draft->arena, draft->site);
	return fabs(side_place(window, side) - side_place(floor, side)) < SAME_PLACE;
}

/* True where the side of a room lies in the part that the view shows. */
static bool is_seen(const struct view *view, struct box window, enum side side)
{
	double at = side_place(window, side);
	if (!view->window)
		return true;
	if (side_is_level(side))
		return at > view->window->y0 - SAME_PLACE && at < view->window->y1 + SAME_PLACE;
	return at > view->window->x0 - SAME_PLACE && at < view->window->x1 + SAME_PLACE;
}

static void draw_side(struct sheet *sheet, const struct view *view, const struct site_room *room,
                      const struct located *all, struct box window, enum side side)
{
	struct places corners = room_corners(sheet->draft->arena, room, side);
	if (!is_seen(view, window, side))
		return;
	double ends[] = {corners.at.items[0], corners.at.items[corners.at.count - 1]};
	struct places overall = {.at = {ends, 2, 2}};
	const struct places *chains[] = {&all->sides[side], &corners, &overall};
	/* Behind an inner wall is another room: its chains stand in its own. */
	double out = is_outer(sheet->draft, window, side) ? 1 : -1;
	double at = out > 0 ? wall_label_lane(sheet->draft, 1) + FIRST_LANE : FIRST_LANE;
	/* Where room is scarce, one chain that adds up is enough. */
	int last = out > 0 || all->sides[side].at.count == 0 ? CHAIN_OVERALL : CHAIN_ENDS;
	for (int chain = 0; chain <= last; chain++)
		if (has_chain(all, &corners, side, chain)) {
			margin_chain(sheet, view, window, side, out * at, chains[chain], room->id);
			at += CHAIN_LANE;
		}
}

/* Paper that the lanes of a room take on each side of the floor. */
static void add_need(const struct draft *draft, const struct site_room *room,
                     const struct located *all, double need[SIDE_COUNT])
{
	for (int s = 0; s < SIDE_COUNT; s++) {
		struct places corners = room_corners(draft->arena, room, (enum side)s);
		double at = wall_label_lane(draft, 1) + FIRST_LANE;
		for (int chain = 0; chain < CHAIN_COUNT; chain++)
			if (has_chain(all, &corners, (enum side)s, chain))
				at += CHAIN_LANE;
		need[s] = fmax(need[s], at);
	}
}

static void draw_room(struct sheet *sheet, const struct view *view, const struct site_room *room)
{
	const struct draft *draft = sheet->draft;
	struct region ground = site_room_ground(draft->arena, room);
	struct box window = region_box(&ground);
	ground = view_ground(draft->arena, view, room);
	const struct placed_lay *lay = lay_of_room(draft->placed, room);
	struct located all = locate_room(draft->arena, draft->site, room);
	if (lay) {
		struct lay_view v = lay_view_make(draft->arena, lay, view, room);
		draw_holds(sheet, &v, false);
	}
	draw_obstacles(sheet, view, room);
	draw_slab_joints(sheet, view, &ground);
	draw_cracks(sheet, view, &ground);
	draw_walls(sheet, view, room);
	draw_doorways(sheet, view, room, DOORWAY_NAME);
	draw_wall_names(sheet, view, room);
	draw_room_name(sheet, view, room);
	for (int side = 0; side < SIDE_COUNT; side++)
		draw_side(sheet, view, room, &all, window, (enum side)side);
	bool is_listed = slab_located_is_listed(draft, room);
	for (size_t i = 0; i < all.inside.count && !is_listed; i++)
		locate_draw_inside(sheet, view, room, all.inside.items[i], NULL);
}

enum sheet_fit slab_draw(struct sheet *sheet)
{
	const struct draft *draft = sheet->draft;
	struct margin margin = {.window = floor_plan_window(draft->arena, draft->site),
	                        .walls = floor_plan_walls(draft->arena, draft->site)};
	for (size_t i = 0; i < draft->site->room_count; i++) {
		const struct site_room *room = &draft->site->rooms[i];
		struct located all = locate_room(draft->arena, draft->site, room);
		add_need(draft, room, &all, margin.need);
	}
	struct view view;
	if (!margin_fit(sheet, &margin, &view))
		return SHEET_TOO_LARGE;
	for (size_t i = 0; i < draft->site->room_count; i++)
		draw_room(sheet, &view, &draft->site->rooms[i]);
	slab_readings_draw(sheet, &view);
	part_marks_draw(sheet, &view);
	slab_notes(sheet);
	return SHEET_FITS;
}

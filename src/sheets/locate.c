#include "sheets/locate.h"

#include "drawing/dimension.h"

/* Floor mm: what lies this near to a side of the window is at the wall. */
static const double AT_WALL = 40;

static void locate_point(struct arena *arena, struct located *all, struct box window,
                         struct point p)
{
	double gaps[] = {[SIDE_BOTTOM] = p.y - window.y0,
	                 [SIDE_RIGHT] = window.x1 - p.x,
	                 [SIDE_TOP] = window.y1 - p.y,
	                 [SIDE_LEFT] = p.x - window.x0};
	bool at_wall = false;
	for (int side = 0; side < SIDE_COUNT; side++)
		if (gaps[side] < AT_WALL) {
			*array_push(arena, &all->sides[side].at) =
				side_is_level((enum side)side) ? p.x : p.y;
			at_wall = true;
		}
	if (!at_wall)
		*array_push(arena, &all->inside) = p;
}

void locate_line(struct arena *arena, struct located *all, struct box window, struct line line)
{
	locate_point(arena, all, window, line.points[0]);
	if (line.count > 1)
		locate_point(arena, all, window, line.points[line.count - 1]);
}

/* The nearest point of a wall square to `p` in direction `axis` (0: along x); false: none. */
static bool nearest_wall(const struct site_room *room, struct point p, int axis,
                         struct point *out_at)
{
	double best = HUGE_VAL;
	for (size_t i = 0; i < room->edge_count; i++) {
		struct point a = room->edges[i].from, b = room->edges[i].to;
		double along0 = axis == 0 ? a.y : a.x, along1 = axis == 0 ? b.y : b.x;
		double across0 = axis == 0 ? a.x : a.y, across1 = axis == 0 ? b.x : b.y;
		double at = axis == 0 ? p.y : p.x, from = axis == 0 ? p.x : p.y;
		/* Only walls square to the measuring tape serve. */
		if (fabs(across0 - across1) > 1 || at < fmin(along0, along1) ||
		    at > fmax(along0, along1) || fabs(across0 - from) >= best)
			continue;
		best = fabs(across0 - from);
		*out_at = axis == 0 ? (struct point){across0, p.y} : (struct point){p.x, across0};
	}
	return best < HUGE_VAL;
}

double locate_reach(const struct site_room *room, struct point p)
{
	double reach = 0;
	struct point wall;
	for (int axis = 0; axis < 2; axis++)
		if (nearest_wall(room, p, axis, &wall))
			reach += point_distance(wall, p);
	return reach;
}

void locate_draw_inside(struct sheet *sheet, const struct view *view, const struct site_room *room,
                        struct point p, const char *element)
{
	const struct draft *draft = sheet->draft;
	for (int axis = 0; axis < 2; axis++) {
		struct point wall;
		if (nearest_wall(room, p, axis, &wall) && point_distance(wall, p) > AT_WALL)
			dimension_pair(sheet->list, view, wall, p, 0,
			               draft_length(draft, point_distance(wall, p)), element);
	}
}

#include "sheets/clouds.h"

#include "drawing/cloud.h"
#include "geometry/overlay.h"

/* Floor mm: a line of the floor as ground, and how far beyond its walls a room is seen. */
static const double LINE_HALF = 1, WALL_REACH = 30;

/* Of a floor in parts each names, and clouds, what lies up to its match lines. */
static struct region within_box(struct arena *arena, const struct region *ground, struct box b)
{
	struct point corners[] = {{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}};
	struct region box = region_from_ring(arena, (struct ring){corners, 4});
	return overlay_intersection(arena, ground, &box);
}

static struct region ground_of(const struct draft *draft, const struct comparison_line *line,
                               struct cloud_scope scope)
{
	struct arena *arena = draft->arena;
	struct region ground =
		thing_changes_ground(arena, &line->difference.things, scope.kinds, LINE_HALF);
	if (scope.core != NULL)
		ground = within_box(arena, &ground, *scope.core);
	if (scope.room == NULL || ground.count == 0)
		return ground;
	struct region room = site_room_ground(arena, scope.room);
	room = overlay_offset(arena, &room, WALL_REACH, OVERLAY_MITRE);
	return overlay_intersection(arena, &ground, &room);
}

bool clouds_any(const struct draft *draft, struct cloud_scope scope)
{
	const struct comparison *comparison = draft->comparison;
	for (size_t i = 0; comparison != NULL && i < comparison->line_count; i++)
		if (ground_of(draft, &comparison->lines[i], scope).count > 0)
			return true;
	return false;
}

/* Sheet points with y running up. */
static struct ring ring_on_sheet(struct arena *arena, const struct view *view, struct ring ring)
{
	struct point *points = ARENA_ARRAY(arena, struct point, ring.count);
	for (size_t i = 0; i < ring.count; i++) {
		struct paper_point p = view_point(view, ring.points[i]);
		points[i] = (struct point){p.x, -p.y};
	}
	return (struct ring){points, ring.count};
}

/* A cloud goes round a hole in its ground too. */
static struct region on_sheet(struct arena *arena, const struct view *view,
                              const struct region *ground)
{
	struct region *parts = ARENA_ARRAY(arena, struct region, ground->count);
	for (size_t i = 0; i < ground->count; i++) {
		struct polygon *polygon = ARENA_NEW(arena, struct polygon);
		polygon->outline = ring_on_sheet(arena, view, ground->polygons[i].outline);
		parts[i] = (struct region){polygon, 1};
	}
	return overlay_union_all(arena, parts, ground->count);
}

struct grounds {
	struct cloud_ground *items;
	size_t count;
};

/* Of each line of the change order what of it the sheet shows. */
static struct grounds grounds_of(const struct sheet *sheet, struct cloud_scope scope)
{
	const struct draft *draft = sheet->draft;
	const struct comparison *comparison = draft->comparison;
	struct grounds grounds = {0};
	if (comparison == NULL || sheet->view.scale <= 0)
		return grounds;
	grounds.items = ARENA_ARRAY(draft->arena, struct cloud_ground, comparison->line_count);
	for (size_t i = 0; i < comparison->line_count; i++) {
		const struct comparison_line *line = &comparison->lines[i];
		struct region ground = ground_of(draft, line, scope);
		if (ground.count > 0)
			grounds.items[grounds.count++] = (struct cloud_ground){
				comparison_mark(draft->arena, comparison, line),
				on_sheet(draft->arena, &sheet->view, &ground)};
	}
	return grounds;
}

void clouds_reserve(struct sheet *sheet, struct cloud_scope scope)
{
	struct grounds grounds = grounds_of(sheet, scope);
	if (grounds.count > 0)
		cloud_reserve(sheet->list, grounds.items, grounds.count);
}

void clouds_draw(struct sheet *sheet, struct cloud_scope scope)
{
	struct grounds grounds = grounds_of(sheet, scope);
	if (grounds.count == 0)
		return;
	list_set_clip(sheet->list, NULL);
	cloud_draw(sheet->list, grounds.items, grounds.count, sheet->drawing);
}

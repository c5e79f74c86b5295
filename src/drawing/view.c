#include "drawing/view.h"

/* The sheet's axes in the plan: u to the right, v up; up_deg is v's direction. */
static struct frame sheet_frame(double up_deg)
{
	return frame_from_deg(up_deg - 90);
}

struct view view_make(struct box window, double up_deg, double scale, struct paper_box paper)
{
	struct point centre = {(window.x0 + window.x1) / 2, (window.y0 + window.y1) / 2};
	return (struct view){sheet_frame(up_deg), centre, paper, scale, NULL, NULL};
}

struct paper_point view_point(const struct view *view, struct point p)
{
	struct point uv = frame_in(view->frame, point_sub(p, view->centre));
	return (struct paper_point){(view->paper.x0 + view->paper.x1) / 2 + uv.x / view->scale,
	                            (view->paper.y0 + view->paper.y1) / 2 - uv.y / view->scale};
}

struct paper_point view_direction(const struct view *view, struct point direction)
{
	struct point uv = frame_in(view->frame, direction);
	return paper_unit((struct paper_point){uv.x, -uv.y});
}

struct point view_floor(const struct view *view, struct paper_point p)
{
	struct point uv = {(p.x - (view->paper.x0 + view->paper.x1) / 2) * view->scale,
	                   ((view->paper.y0 + view->paper.y1) / 2 - p.y) * view->scale};
	return point_add(view->centre, frame_out(view->frame, uv));
}

static struct paper_line line_on_paper(struct arena *arena, const struct view *view,
                                       const struct point *points, size_t count,
                                       enum paper_line_kind kind)
{
	struct paper_line line = {ARENA_ARRAY(arena, struct paper_point, count), count, kind};
	for (size_t i = 0; i < count; i++)
		line.points[i] = view_point(view, points[i]);
	return line;
}

static struct paper_path path_on_paper(struct arena *arena, const struct view *view,
                                       const struct point *points, size_t count,
                                       enum paper_line_kind kind)
{
	struct paper_line *line = ARENA_NEW(arena, struct paper_line);
	*line = line_on_paper(arena, view, points, count, kind);
	return (struct paper_path){line, 1};
}

struct paper_path view_line(struct arena *arena, const struct view *view, struct line line)
{
	return path_on_paper(arena, view, line.points, line.count, PAPER_OPEN);
}

struct paper_path view_ring(struct arena *arena, const struct view *view, struct ring ring)
{
	return path_on_paper(arena, view, ring.points, ring.count, PAPER_CLOSED);
}

struct paper_path view_segment(struct arena *arena, const struct view *view, struct point a,
                               struct point b)
{
	return path_on_paper(arena, view, (struct point[]){a, b}, 2, PAPER_OPEN);
}

struct paper_path view_region(struct arena *arena, const struct view *view,
                              const struct region *region)
{
	size_t rings = region->count;
	for (size_t i = 0; i < region->count; i++)
		rings += region->polygons[i].hole_count;
	struct paper_path path = {ARENA_ARRAY(arena, struct paper_line, rings), 0};
	for (size_t i = 0; i < region->count; i++) {
		const struct polygon *polygon = &region->polygons[i];
		path.lines[path.count++] = line_on_paper(arena, view, polygon->outline.points,
		                                         polygon->outline.count, PAPER_CLOSED);
		for (size_t j = 0; j < polygon->hole_count; j++)
			path.lines[path.count++] =
				line_on_paper(arena, view, polygon->holes[j].points,
			                      polygon->holes[j].count, PAPER_CLOSED);
	}
	return path;
}

struct paper_point view_size(struct box window, double up_deg, double scale)
{
	struct frame frame = sheet_frame(up_deg);
	double width = window.x1 - window.x0, height = window.y1 - window.y0;
	return (struct paper_point){(fabs(frame.cos) * width + fabs(frame.sin) * height) / scale,
	                            (fabs(frame.sin) * width + fabs(frame.cos) * height) / scale};
}

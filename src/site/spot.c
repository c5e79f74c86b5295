#include "site/spot.h"

#include "site/outline.h"

struct point spot_on_edge(const struct site_edge *edge, double along, double out)
{
	struct point ahead = point_unit(point_sub(edge->to, edge->from));
	struct point inward = point_left(ahead);
	struct point start = edge->reversed ? edge->to : edge->from;
	struct point way = point_scale(ahead, edge->reversed ? -along : along);
	return point_add(point_add(start, way), point_scale(inward, out));
}

bool spot_find(const struct build *build, const struct plan_at *at, struct point *out_spot)
{
	if (build_is_faulty(build, at->given, at->line))
		return false;
	if (!at->on_wall) {
		*out_spot = build_point(at->x_nm, at->y_nm);
		return true;
	}
	const struct build_wall *wall = build_wall_find(build, at->wall);
	if (!wall || !wall->is_built)
		return false;
	struct site_edge chord = outline_chord(wall->owner, wall->edge);
	*out_spot = spot_on_edge(&chord, length_mm(at->along_nm), length_mm(at->out_nm));
	return true;
}

bool spot_find_all(const struct build *build, const struct plan_at *points, size_t count,
                   struct line *out_line)
{
	bool all = true;
	*out_line = (struct line){ARENA_ARRAY(build->arena, struct point, count), count};
	for (size_t i = 0; i < count; i++)
		if (!spot_find(build, &points[i], &out_line->points[i]))
			all = false;
	return all;
}

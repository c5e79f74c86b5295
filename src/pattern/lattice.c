#include "pattern/lattice.h"

#include "geometry/tolerance.h"

bool lattice_leads(struct lattice lattice, struct point from, struct point to, int *out_i,
                   int *out_j)
{
	struct point way = point_sub(to, from);
	double cell = point_cross(lattice.a, lattice.b);
	double i = nearbyint(point_cross(way, lattice.b) / cell);
	double j = nearbyint(point_cross(lattice.a, way) / cell);
	struct point step = point_add(point_scale(lattice.a, i), point_scale(lattice.b, j));
	*out_i = (int)i;
	*out_j = (int)j;
	return point_distance(way, step) < TOLERANCE_SAME;
}

/* x along the rows, y across them. */
static struct point in_rows(struct point along, struct point p)
{
	return (struct point){point_dot(along, p), point_cross(along, p)};
}

/* Makes `j` the row of the walk: the copies whose box meets the segment in it. */
static void enter_row(struct lattice_walk *walk, int j)
{
	struct point step = in_rows(walk->along, walk->lattice.b);
	double low = j * step.y + walk->shape.y0, high = j * step.y + walk->shape.y1;
	double rise = walk->to.y - walk->from.y, first = 0, last = 1;
	if (rise != 0) {
		double one = (low - walk->from.y) / rise, other = (high - walk->from.y) / rise;
		first = fmin(fmax(fmin(one, other), 0), 1);
		last = fmin(fmax(fmax(one, other), 0), 1);
	}
	double x = point_between(walk->from, walk->to, first).x;
	double y = point_between(walk->from, walk->to, last).x;
	double pitch = point_length(walk->lattice.a), shift = j * step.x;
	walk->j = j;
	walk->i = (int)ceil((fmin(x, y) - shift - walk->shape.x1) / pitch);
	walk->last_i = (int)floor((fmax(x, y) - shift - walk->shape.x0) / pitch);
}

struct lattice_walk lattice_walk_near(struct lattice lattice, struct ring shape,
                                      struct segment segment, double reach)
{
	struct lattice_walk walk = {.lattice = lattice, .along = point_unit(lattice.a)};
	walk.from = in_rows(walk.along, segment.from);
	walk.to = in_rows(walk.along, segment.to);
	walk.shape = box_empty();
	for (size_t k = 0; k < shape.count; k++)
		walk.shape = box_with(walk.shape, in_rows(walk.along, shape.points[k]));
	walk.shape = box_grown(walk.shape, reach + TOLERANCE_SAME);
	double pitch = in_rows(walk.along, lattice.b).y;
	double low = fmin(walk.from.y, walk.to.y), high = fmax(walk.from.y, walk.to.y);
	walk.last_j = (int)floor((high - walk.shape.y0) / pitch);
	enter_row(&walk, (int)ceil((low - walk.shape.y1) / pitch));
	return walk;
}

bool lattice_walk_next(struct lattice_walk *walk, int *out_i, int *out_j)
{
	while (walk->i > walk->last_i && walk->j < walk->last_j)
		enter_row(walk, walk->j + 1);
	if (walk->i > walk->last_i || walk->j > walk->last_j)
		return false;
	*out_i = walk->i++;
	*out_j = walk->j;
	return true;
}

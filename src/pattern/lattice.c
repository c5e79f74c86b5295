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

struct point lattice_in_rows(struct lattice lattice, struct point p)
{
	struct point along = point_unit(lattice.a);
	return (struct point){point_dot(along, p), point_cross(along, p)};
}

void lattice_walk_enter(struct lattice_walk *walk, int j)
{
	double low = j * walk->rise + walk->shape.y0, high = j * walk->rise + walk->shape.y1;
	double climb = walk->to.y - walk->from.y, first = 0, last = 1;
	if (climb != 0) {
		double one = (low - walk->from.y) / climb, other = (high - walk->from.y) / climb;
		first = fmin(fmax(fmin(one, other), 0), 1);
		last = fmin(fmax(fmax(one, other), 0), 1);
	}
	double x = point_between(walk->from, walk->to, first).x;
	double y = point_between(walk->from, walk->to, last).x;
	double shift = j * walk->shift;
	walk->j = j;
	walk->i = (int)ceil((fmin(x, y) - shift - walk->shape.x1) / walk->pitch);
	walk->last_i = (int)floor((fmax(x, y) - shift - walk->shape.x0) / walk->pitch);
}

struct lattice_walk lattice_walk_near(struct lattice lattice, struct ring shape,
                                      struct segment segment, double reach)
{
	struct point step = lattice_in_rows(lattice, lattice.b);
	struct lattice_walk walk = {.from = lattice_in_rows(lattice, segment.from),
	                            .to = lattice_in_rows(lattice, segment.to),
	                            .pitch = point_length(lattice.a),
	                            .shift = step.x,
	                            .rise = step.y,
	                            .shape = box_empty()};
	for (size_t k = 0; k < shape.count; k++)
		walk.shape = box_with(walk.shape, lattice_in_rows(lattice, shape.points[k]));
	walk.shape = box_grown(walk.shape, reach + TOLERANCE_SAME);
	double low = fmin(walk.from.y, walk.to.y), high = fmax(walk.from.y, walk.to.y);
	walk.last_j = (int)floor((high - walk.shape.y0) / walk.rise);
	lattice_walk_enter(&walk, (int)ceil((low - walk.shape.y1) / walk.rise));
	return walk;
}

bool lattice_walk_next(struct lattice_walk *walk, int *out_i, int *out_j)
{
	while (walk->i > walk->last_i && walk->j < walk->last_j)
		lattice_walk_enter(walk, walk->j + 1);
	if (walk->i > walk->last_i || walk->j > walk->last_j)
		return false;
	*out_i = walk->i++;
	*out_j = walk->j;
	return true;
}

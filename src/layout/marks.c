#include "layout/marks.h"

#include <stdlib.h>

/* Row axes: s along the lattice vector a, t square to it. */
struct row_point {
	double s, t;
};

struct row_axes {
	struct point along;        /* unit vector of a */
	double step;               /* length of a */
	struct row_point next_row; /* b */
};

static struct row_point row_from_point(const struct row_axes *axes, struct point p)
{
	return (struct row_point){point_dot(p, axes->along), point_cross(axes->along, p)};
}

static struct row_axes axes_of_module(const struct module *module)
{
	struct row_axes axes = {point_unit(module->a), point_length(module->a), {0, 0}};
	axes.next_row = row_from_point(&axes, module->b);
	return axes;
}

struct row_box {
	double s0, s1, t0, t1;
};

/* At least a step long: the boxes of a row's faces leave nothing between them, so that an
 * edge that crosses the row marks one, though it may pass beside the faces themselves. */
static struct row_box box_of_face(const struct row_axes *axes, struct ring face, double reach)
{
	struct row_box box = {INFINITY, -INFINITY, INFINITY, -INFINITY};
	for (size_t i = 0; i < face.count; i++) {
		struct row_point p = row_from_point(axes, face.points[i]);
		box.s0 = fmin(box.s0, p.s);
		box.s1 = fmax(box.s1, p.s);
		box.t0 = fmin(box.t0, p.t);
		box.t1 = fmax(box.t1, p.t);
	}
	double s0 = box.s0 - reach;
	return (struct row_box){s0, fmax(box.s1 + reach, s0 + axes->step), box.t0 - reach,
	                        box.t1 + reach};
}

/* The stretch of s that the edge covers while t is within [t0, t1]. */
static void stretch_in_row(struct row_point a, struct row_point b, double t0, double t1, double *s0,
                           double *s1)
{
	double from = 0, to = 1, rise = b.t - a.t;
	if (rise != 0) {
		double first = (t0 - a.t) / rise, last = (t1 - a.t) / rise;
		from = fmax(from, fmin(first, last));
		to = fmin(to, fmax(first, last));
	}
	double sa = a.s + from * (b.s - a.s), sb = a.s + to * (b.s - a.s);
	*s0 = fmin(sa, sb);
	*s1 = fmax(sa, sb);
}

void marks_add_edge(struct mark_list *list, const struct module *module, struct point position,
                    struct point from, struct point to, double reach, size_t edge)
{
	struct row_axes axes = axes_of_module(module);
	struct row_point a = row_from_point(&axes, point_sub(from, position));
	struct row_point b = row_from_point(&axes, point_sub(to, position));
	for (size_t f = 0; f < module->face_count; f++) {
		struct row_box box = box_of_face(&axes, module->faces[f].ring, reach);
		int first_j = (int)ceil((fmin(a.t, b.t) - box.t1) / axes.next_row.t);
		int last_j = (int)floor((fmax(a.t, b.t) - box.t0) / axes.next_row.t);
		for (int j = first_j; j <= last_j; j++) {
			double t = j * axes.next_row.t, s = j * axes.next_row.s, s0, s1;
			stretch_in_row(a, b, t + box.t0, t + box.t1, &s0, &s1);
			int first_i = (int)ceil((s0 - s - box.s1) / axes.step);
			int last_i = (int)floor((s1 - s - box.s0) / axes.step);
			for (int i = first_i; i <= last_i; i++)
				*array_push(list->arena, &list->marks) =
					(struct mark){{(int)f, i, j}, edge};
		}
	}
}

static int by_address(const void *a, const void *b)
{
	const struct mark *x = a, *y = b;
	if (x->at.face != y->at.face)
		return x->at.face < y->at.face ? -1 : 1;
	if (x->at.j != y->at.j)
		return x->at.j < y->at.j ? -1 : 1;
	if (x->at.i != y->at.i)
		return x->at.i < y->at.i ? -1 : 1;
	return x->edge < y->edge ? -1 : x->edge > y->edge;
}

void marks_sort(struct mark_list *list)
{
	if (list->marks.count)
		qsort(list->marks.items, list->marks.count, sizeof *list->marks.items, by_address);
}

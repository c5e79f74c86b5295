#include "layout/movement_anchor.h"

#include <string.h>

#include "geometry/tolerance.h"
#include "units/length.h"

static double across(struct point p, bool along_u)
{
	return along_u ? p.y : p.x;
}

static bool start_in(const struct field *field, size_t part, struct point *out_start)
{
	const struct plan_start *start = field->lay->start;
	struct region ground = {&field->region.polygons[part], 1};
	if (!start)
		return false;
	*out_start = frame_in(field->frame,
	                      (struct point){length_mm(start->x_nm), length_mm(start->y_nm)});
	return region_holds(&ground, *out_start);
}

/* The longest border of that name; NULL: the part has none. A full cut speaks of the way
 * across its border, a centre of the way along it. */
static const struct field_border *border_named(const struct field *field, size_t part,
                                               const char *id, bool runs_along_u)
{
	const struct field_border *best = NULL;
	double most = 0;
	for (size_t i = 0; i < field->border_count; i++) {
		const struct field_border *border = &field->borders[i];
		struct point way = point_sub(border->to, border->from);
		double length = point_length(way);
		/* Half way between the axes along v, as in setting out (wall_term.c). */
		bool is_along_u = fabs(way.x) - fabs(way.y) > TOLERANCE_PARALLEL * length;
		if (border->part != part || strcmp(border->of, id) != 0 ||
		    is_along_u != runs_along_u || length <= most + TOLERANCE_CUT)
			continue;
		most = length;
		best = border;
	}
	return best;
}

static const struct field_border *first_named(const struct field *field, size_t part, bool along_u)
{
	const struct plan_lay *lay = field->lay;
	const struct field_border *border = NULL;
	for (size_t i = 0; !border && i < lay->full_at_count; i++)
		border = border_named(field, part, lay->full_at[i].id, along_u);
	for (size_t i = 0; !border && i < lay->centre_on_count; i++)
		border = border_named(field, part, lay->centre_on[i].id, !along_u);
	return border;
}

double movement_anchor(const struct field *field, size_t part, bool along_u)
{
	struct point start;
	if (start_in(field, part, &start))
		return across(start, along_u);
	const struct field_border *border = first_named(field, part, along_u);
	if (border)
		return across(point_between(border->from, border->to, 0.5), along_u);
	struct box box = ring_box(field->region.polygons[part].outline);
	return across((struct point){(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2}, along_u);
}

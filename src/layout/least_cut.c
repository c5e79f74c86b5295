#include "layout/least_cut.h"

#include "units/number.h"

/* A border that runs through more of a tile than its small part spans has a small cut
 * somewhere, wherever the grid lies; at a slant every tile is cut on the spot. */
static bool can_be_helped(const struct field *field, const struct border_cut *cut)
{
	const struct field_border *border = &field->borders[cut->border];
	if (border->kind == SITE_EDGE_OBSTACLE || border->kind == SITE_EDGE_DRAIN ||
	    field_has_askew(field, border->of))
		return false;
	double taper = cut->along_u ? border->to.x - border->from.x : border->to.y - border->from.y;
	return fabs(taper) < (1 - cut->small_share) * cut->whole;
}

struct least_cut least_cut_of(const struct field *field, const struct position *position)
{
	struct least_cut least = {.share = INFINITY};
	for (size_t i = 0; i < position->cut_count; i++) {
		const struct border_cut *cut = &position->cuts[i];
		const struct field_border *border = &field->borders[cut->border];
		double limit = cut->small_share * cut->whole;
		if (!can_be_helped(field, cut) ||
		    number_order(cut->least / limit, least.share) >= 0)
			continue;
		least = (struct least_cut){cut, border->of, limit, cut->least / limit};
	}
	return least;
}

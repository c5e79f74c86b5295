#include "geometry/tolerance.h"
#include "layout/search.h"

/* Where whole tiles begin along the axis, from the lattice's position. */
struct beginnings {
	const double *places;
	size_t count;
};

static struct beginnings beginnings_of(const struct module *module, bool along_u)
{
	static const double origin[] = {0};
	const struct lanes *lanes = module_lanes(module, along_u);
	if (lanes && lanes->lane_count > 0)
		return (struct beginnings){lanes->borders, lanes->border_count};
	if (along_u && module->offset_count > 0)
		return (struct beginnings){module->offsets, (size_t)module->offset_count};
	return (struct beginnings){origin, 1};
}

/* After which places repeat; a period too long to show is gone through tile by tile. */
static double period_of(const struct module *module, bool along_u)
{
	const struct lanes *lanes = module_lanes(module, along_u);
	if (lanes && lanes->lane_count > 0)
		return lanes->period;
	return along_u ? module->pitch : module->course;
}

/* The same place in the period above `from`: of equals the one nearest the first corner is
 * tried first. Where no period is known the place stays. */
static double into_period(const struct module *module, bool along_u, double place, double from)
{
	const struct lanes *lanes = module_lanes(module, along_u);
	double period = period_of(module, along_u);
	if (lanes && lanes->lane_count == 0)
		return place;
	return place - floor((place - from) / period + TOLERANCE_PERIOD) * period;
}

static void add_exact(struct search *s, bool along_u, size_t class, double from,
                      struct candidates *out)
{
	struct beginnings begin = beginnings_of(s->module, along_u);
	for (size_t i = 0; i < s->term_count; i++) {
		const struct wall_term *term = &s->terms[i];
		if (term->along_u != along_u || search_class_of_term(s, term) != class ||
		    !term->is_straight)
			continue;
		for (size_t r = 0; r < begin.count; r++) {
			double place =
				term->at[0] - term->sign * s->module->joint / 2 - begin.places[r];
			out->places[out->count++] = into_period(s->module, along_u, place, from);
		}
	}
	for (size_t i = 0; i < s->wishes.count; i++) {
		const struct wish *wish = &s->wishes.wishes[i];
		if (!wish->is_centre || !wish->is_possible || wish->along_u != along_u)
			continue;
		out->places[out->count++] = into_period(s->module, along_u, wish->centre, from);
		out->places[out->count++] =
			into_period(s->module, along_u,
		                    wish->centre - wish_middle(s->module, along_u), from);
	}
}

struct candidates search_candidates(struct search *s, bool along_u, size_t class)
{
	struct point corner = frame_in(s->field->frame, s->field->rooms[0]->outline.points[0]);
	double period = period_of(s->module, along_u);
	double from = (along_u ? corner.x : corner.y) - s->module->joint / 2;
	size_t steps = (size_t)ceil(period / s->print_step);
	size_t begins = beginnings_of(s->module, along_u).count;
	size_t most = steps + s->term_count * begins + 2 * s->wishes.count;
	struct candidates out = {ARENA_ARRAY(s->arena, double, most), 0};
	for (size_t k = 0; k < steps; k++)
		out.places[out.count++] = from + (double)k * s->print_step;
	add_exact(s, along_u, class, from, &out);
	return out;
}

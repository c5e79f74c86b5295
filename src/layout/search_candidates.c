#include "layout/search.h"

/* The lattice coordinate nearest above `from`: places are tried in that order, so that the
 * first of equals is the one nearest the first corner. */
static double into_period(double place, double from, double period)
{
	return place - floor((place - from) / period + 1e-12) * period;
}

static void add_exact(struct search *s, bool along_u, size_t class, double from, double period,
                      struct candidates *out)
{
	for (size_t i = 0; i < s->term_count; i++) {
		const struct wall_term *term = &s->terms[i];
		if (term->along_u != along_u || search_class_of_term(s, term) != class ||
		    !term->is_straight)
			continue;
		int shifts = along_u ? s->module->offset_count : 1;
		for (int r = 0; r < shifts; r++) {
			double shift = along_u ? s->module->offsets[r] : 0;
			double place = term->at[0] - term->sign * s->module->joint / 2 - shift;
			out->places[out->count++] = into_period(place, from, period);
		}
	}
	for (size_t i = 0; i < s->wishes.count; i++) {
		const struct wish *wish = &s->wishes.wishes[i];
		if (!wish->is_centre || !wish->is_possible || wish->along_u != along_u)
			continue;
		out->places[out->count++] = into_period(wish->centre, from, period);
		out->places[out->count++] = into_period(wish->centre - period / 2, from, period);
	}
}

struct candidates search_candidates(struct search *s, bool along_u, size_t class)
{
	struct point corner = frame_in(s->field->frame, s->field->rooms[0]->outline.points[0]);
	double period = along_u ? s->module->pitch : s->module->course;
	double from = (along_u ? corner.x : corner.y) - s->module->joint / 2;
	size_t steps = (size_t)ceil(period / s->print_step);
	size_t shifts = (size_t)s->module->offset_count;
	size_t most = steps + s->term_count * shifts + 2 * s->wishes.count;
	struct candidates out = {ARENA_ARRAY(s->arena, double, most), 0};
	for (size_t k = 0; k < steps; k++)
		out.places[out.count++] = from + (double)k * s->print_step;
	add_exact(s, along_u, class, from, period, &out);
	return out;
}

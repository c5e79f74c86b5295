#include "layout/wish.h"

#include <string.h>

#include "geometry/tolerance.h"

static bool names_border(const struct plan_ref *ref, const struct field_border *border)
{
	if (!border->of || strcmp(border->of, ref->id) != 0)
		return false;
	return ref->kind != PLAN_REF_DOORWAY || border->kind == SITE_EDGE_STOP;
}

static struct wish wish_of_full(struct arena *arena, const struct field *field,
                                const struct plan_ref *ref, const struct wall_term *terms,
                                size_t term_count)
{
	struct wish wish = {.ref = ref, .terms = ARENA_ARRAY(arena, size_t, term_count)};
	for (size_t i = 0; i < term_count; i++) {
		if (!names_border(ref, &field->borders[terms[i].border]))
			continue;
		double slope = fabs(terms[i].at[1] - terms[i].at[0]);
		if (slope > TOLERANCE_PARALLEL * terms[i].length)
			continue;
		wish.along_u = terms[i].along_u;
		wish.is_possible = true;
		wish.terms[wish.term_count++] = i;
	}
	return wish;
}

/* The middle of all that is named: a wall may stand in several pieces. */
static struct wish wish_of_centre(const struct field *field, const struct plan_ref *ref,
                                  const struct wall_term *terms, size_t term_count)
{
	struct wish wish = {.ref = ref, .is_centre = true};
	double low = INFINITY, high = -INFINITY;
	for (size_t i = 0; i < term_count; i++) {
		if (!names_border(ref, &field->borders[terms[i].border]))
			continue;
		low = fmin(low, fmin(terms[i].beside[0], terms[i].beside[1]));
		high = fmax(high, fmax(terms[i].beside[0], terms[i].beside[1]));
		wish.along_u = !terms[i].along_u;
		wish.part = terms[i].part;
		wish.is_possible = true;
	}
	wish.centre = (low + high) / 2;
	return wish;
}

struct wishes wishes_of_lay(struct arena *arena, const struct field *field,
                            const struct wall_term *terms, size_t term_count)
{
	const struct plan_lay *lay = field->lay;
	struct wishes wishes = {ARENA_ARRAY(arena, struct wish,
	                                    lay->full_at_count + lay->centre_on_count),
	                        0};
	for (size_t i = 0; i < lay->full_at_count; i++)
		wishes.wishes[wishes.count++] =
			wish_of_full(arena, field, &lay->full_at[i], terms, term_count);
	for (size_t i = 0; i < lay->centre_on_count; i++)
		wishes.wishes[wishes.count++] =
			wish_of_centre(field, &lay->centre_on[i], terms, term_count);
	return wishes;
}

double wish_middle(const struct module *module, bool along_u)
{
	struct point middle = ring_middle(module->faces[0].ring);
	return along_u ? middle.x : middle.y;
}

static double off_by(double value, double period)
{
	return fabs(value - nearbyint(value / period) * period);
}

/* At a beginning of a tile, or half its extent on. */
static bool is_centred_in(const struct lanes *lanes, double at, double reach)
{
	for (size_t k = 0; k < lanes->lane_count; k++)
		for (size_t c = 0; c < lanes->lanes[k].cell_count; c++) {
			const struct lane_cell *cell = &lanes->lanes[k].cells[c];
			double middle = (cell->from + cell->to) / 2;
			if (off_by(at - cell->from, lanes->period) <= reach ||
			    off_by(at - middle, lanes->period) <= reach)
				return true;
		}
	return false;
}

bool wish_is_centred(const struct wish *wish, const struct module *module, double position,
                     double reach)
{
	const struct lanes *lanes = module_lanes(module, wish->along_u);
	double at = wish->centre - position;
	if (lanes && lanes->lane_count > 0)
		return is_centred_in(lanes, at, reach);
	/* One of the places that search_candidates.c tries, of a period too long to show. */
	if (lanes)
		return fabs(at) <= reach || fabs(at - wish_middle(module, wish->along_u)) <= reach;
	double period = wish->along_u ? module->pitch : module->course;
	int shifts = wish->along_u ? module->offset_count : 1;
	for (int r = 0; r < shifts; r++) {
		double off = at - (wish->along_u ? module->offsets[r] : 0);
		if (off_by(off, period / 2) <= reach)
			return true;
	}
	return false;
}

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

bool wish_is_centred(const struct wish *wish, const struct module *module, double position,
                     double reach)
{
	double period = wish->along_u ? module->pitch : module->course;
	int shifts = wish->along_u ? module->offset_count : 1;
	for (int r = 0; r < shifts; r++) {
		double off = wish->centre - position - (wish->along_u ? module->offsets[r] : 0);
		double halves = off / (period / 2);
		if (fabs(halves - nearbyint(halves)) * period / 2 <= reach)
			return true;
	}
	return false;
}

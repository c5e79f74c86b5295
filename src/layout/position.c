#include "layout/position.h"

#include "geometry/tolerance.h"
#include "layout/search.h"

/* ---- the search ---- */

static struct position_key lesser(struct position_key a, struct position_key b)
{
	return position_key_compare(a, b) < 0 ? a : b;
}

/* What must stay unmet along one axis: where a place meets more, no other is worth its time. */
static struct position_key least_unmet(const struct search *s, bool along_u, size_t class,
                                       const struct candidates *candidates)
{
	struct position_key least = position_key_worst();
	for (size_t i = 0; i < candidates->count; i++)
		least = lesser(least, search_unmet(s, along_u, class, candidates->places[i]));
	least.small = HUGE_VAL;
	return least;
}

/* Best place of a u class, as the courses lie; no better than `limit` where there is none. */
static struct position_key best_of_u(struct search *s, size_t class,
                                     const struct candidates *candidates, struct position_key limit)
{
	struct position_key best = position_key_worst();
	if (s->u_pinned[class])
		return search_key(s, true, class, s->u[class], best);
	if (s->wishes.count > 0)
		limit = lesser(limit, least_unmet(s, true, class, candidates));
	for (size_t i = 0; i < candidates->count; i++) {
		double place = candidates->places[i];
		struct position_key key = search_key(s, true, class, place, lesser(best, limit));
		s->tried++;
		if (position_key_compare(key, best) < 0) {
			best = key;
			s->u[class] = place;
		}
	}
	return best;
}

/* Best u of every class, where v has put the courses. */
static struct position_key best_of_all_u(struct search *s, const struct candidates *u_candidates,
                                         struct position_key limit)
{
	struct position_key sum = {0};
	search_set_slots(s);
	for (size_t class = 0; class < s->bays.u_count; class ++) {
		struct position_key left = position_key_difference(limit, sum);
		sum = position_key_sum(sum, best_of_u(s, class, &u_candidates[class], left));
	}
	return sum;
}

/* The best v so far, and the u of every class that goes with it. */
struct chosen_v {
	struct position_key key;
	double v, *u;
	bool u_depends;
};

/* Tries one v of a class; where courses are shifted the best u depends on it. */
static void try_v(struct search *s, size_t class, double place,
                  const struct candidates *u_candidates, struct chosen_v *chosen)
{
	s->v[class] = place;
	struct position_key key = search_key(s, false, class, place, chosen->key);
	s->tried++;
	if (chosen->u_depends && position_key_compare(key, chosen->key) < 0) {
		struct position_key left = position_key_difference(chosen->key, key);
		key = position_key_sum(key, best_of_all_u(s, u_candidates, left));
	}
	if (position_key_compare(key, chosen->key) >= 0)
		return;
	chosen->key = key;
	chosen->v = place;
	for (size_t u = 0; u < s->bays.u_count; u++)
		chosen->u[u] = s->u[u];
}

/* Those that meet most wishes first: the rest then need no look at u. */
static void choose_v(struct search *s, size_t class, const struct candidates *u_candidates)
{
	struct candidates candidates = search_candidates(s, false, class);
	struct position_key least = least_unmet(s, false, class, &candidates);
	struct chosen_v chosen = {.key = position_key_worst(),
	                          .v = s->v[class],
	                          .u = ARENA_ARRAY(s->arena, double, s->bays.u_count),
	                          .u_depends = s->module->offset_count > 1};
	for (int rest = 0; rest <= 1; rest++)
		for (size_t i = 0; i < candidates.count; i++) {
			double place = candidates.places[i];
			bool leaves_more =
				position_key_is_beaten(search_unmet(s, false, class, place), least);
			if (leaves_more == rest)
				try_v(s, class, place, u_candidates, &chosen);
		}
	s->v[class] = chosen.v;
	for (size_t u = 0; chosen.u_depends && u < s->bays.u_count; u++)
		s->u[u] = chosen.u[u];
}

static void choose(struct search *s)
{
	struct candidates *u_candidates = ARENA_ARRAY(s->arena, struct candidates, s->bays.u_count);
	for (size_t class = 0; class < s->bays.u_count; class ++)
		u_candidates[class] = search_candidates(s, true, class);
	search_set_slots(s);
	/* One v class is exact in one round; several with shifted courses settle in two. */
	int rounds = s->bays.v_count > 1 && s->module->offset_count > 1 ? 2 : 1;
	for (int round = 0; round < rounds; round++)
		for (size_t class = 0; class < s->bays.v_count; class ++)
			if (!s->v_pinned[class])
				choose_v(s, class, u_candidates);
	best_of_all_u(s, u_candidates, position_key_worst());
}

/* ---- what came of it ---- */

static struct position_key whole_key(struct search *s)
{
	struct position_key key = {0}, worst = position_key_worst();
	search_set_slots(s);
	for (size_t class = 0; class < s->bays.u_count; class ++)
		key = position_key_sum(key, search_key(s, true, class, s->u[class], worst));
	for (size_t class = 0; class < s->bays.v_count; class ++)
		key = position_key_sum(key, search_key(s, false, class, s->v[class], worst));
	for (size_t i = 0; i < s->wishes.count; i++)
		key.unmet += !s->wishes.wishes[i].is_possible;
	return key;
}

/* The wall with both its ends moved out by the tolerance: it may show a course more. */
static struct wall_term widened(const struct wall_term *term)
{
	struct wall_term wide = *term;
	double along = term->beside[1] - term->beside[0];
	if (!term->along_u || fabs(along) <= TOLERANCE_SAME)
		return wide;
	double by = term->profile.tolerance / fabs(along);
	for (int end = 0; end < 2; end++) {
		double past = end ? by : -by;
		wide.beside[end] += past * along;
		wide.at[end] += past * (term->at[1] - term->at[0]);
	}
	return wide;
}

static double worst_cut_of_term(struct search *s, size_t i)
{
	struct wall_term wide = widened(&s->terms[i]);
	struct wall_slots slots = {ARENA_ARRAY(s->arena, struct wall_slot,
	                                       wall_term_most_slots(&wide, s->module)),
	                           0};
	wall_term_slots(&wide, s->module, s->v[s->bays.v_of_part[wide.part]], &slots);
	return wall_term_worst_cut(&wide, &slots, search_place_of_term(s, &wide));
}

static double cut_of_slot(const struct search *s, const struct wall_term *term,
                          const struct wall_slot *slot, int end)
{
	double phase = slot->phase[end] - term->sign * search_place_of_term(s, term);
	return cut_profile_cut(&term->profile, cut_profile_phase(&term->profile, phase));
}

/* The slot of the first course from one end of the wall that is shifted like this. */
static const struct wall_slot *slot_of_shift(const struct wall_slots *slots, int shift,
                                             bool is_from_last)
{
	const struct wall_slot *found = NULL;
	for (size_t i = 0; i < slots->count; i++)
		if (slots->slots[i].shift == shift && (!found || is_from_last))
			found = &slots->slots[i];
	return found;
}

static bool is_listed(const struct border_cut *cut, double from, double to)
{
	for (size_t i = 0; i < cut->course_count; i++)
		if (fabs(cut->courses[i] - from) < TOLERANCE_WHOLE &&
		    fabs(cut->courses_to[i] - to) < TOLERANCE_WHOLE)
			return true;
	return false;
}

static void list_courses(struct search *s, const struct wall_term *term,
                         const struct wall_slots *slots, struct border_cut *cut)
{
	bool rising = term->beside[1] > term->beside[0];
	cut->courses = ARENA_ARRAY(s->arena, double, slots->count);
	cut->courses_to = ARENA_ARRAY(s->arena, double, slots->count);
	for (int shift = 0; shift < s->module->offset_count; shift++) {
		/* Slots run with the coordinate. */
		const struct wall_slot *first = slot_of_shift(slots, shift, !rising),
				       *last = slot_of_shift(slots, shift, rising);
		if (!first)
			continue;
		double from = cut_of_slot(s, term, first, rising ? 0 : 1),
		       to = cut_of_slot(s, term, last, rising ? 1 : 0);
		if (is_listed(cut, from, to))
			continue;
		cut->courses[cut->course_count] = from;
		cut->courses_to[cut->course_count++] = to;
	}
}

/* The cut at the very end of a border: of the first or last slot along it. */
static double cut_at_end(const struct search *s, const struct wall_term *term,
                         const struct wall_slots *slots, int end)
{
	bool rising = term->beside[1] > term->beside[0];
	size_t slot = (end == 0) == rising || !term->along_u ? 0 : slots->count - 1;
	if (term->is_straight && slots->count > 1)
		return wall_term_least_cut(term, slots, search_place_of_term(s, term));
	return cut_of_slot(s, term, &slots->slots[slot], term->along_u && !rising ? 1 - end : end);
}

/* The stretch of the lanes that the wall crosses, grown by `by` at both ends. */
static struct wall_stretch stretch_of(const struct search *s, const struct wall_term *term,
                                      double by)
{
	double across = term->along_u ? s->v[s->bays.v_of_part[term->part]]
	                              : s->u[s->bays.u_of_part[term->part]];
	return (struct wall_stretch){fmin(term->beside[0], term->beside[1]) - across - by,
	                             fmax(term->beside[0], term->beside[1]) - across + by};
}

/* Without courses: lane by lane; a wall askew to the lanes cuts tile of every size. */
static struct border_cut cut_of_lanes(struct search *s, const struct wall_term *term)
{
	struct border_cut cut = {.border = term->border, .along_u = term->along_u};
	double slack = term->profile.slack;
	if (!wall_term_shows_lanes(term)) {
		cut.varies = true;
		cut.whole = term->profile.extent;
		cut.small_share = term->profile.small / term->profile.extent;
		cut.from = cut.to = cut.least = cut.worst = slack;
		return cut;
	}
	double at = (term->at[0] + term->at[1]) / 2 - search_place_of_term(s, term);
	struct wall_stretch own = stretch_of(s, term, 0);
	struct wall_stretch wide = stretch_of(s, term, term->profile.tolerance);
	struct wall_cut least = wall_lanes_least(&term->lanes, at, own);
	cut.from = cut.to = cut.least = least.cut;
	cut.whole = least.whole;
	cut.small_share = least.small / least.whole;
	cut.worst = wall_lanes_least(&term->lanes, at, wide).worst;
	cut.varies = wall_lanes_is_slanted(&term->lanes);
	if (!cut.varies)
		cut.courses = cut.courses_to =
			wall_lanes_cuts(s->arena, &term->lanes, at, own, &cut.course_count);
	return cut;
}

static struct border_cut cut_of_term(struct search *s, size_t i)
{
	const struct wall_term *term = &s->terms[i];
	if (wall_term_has_lanes(term))
		return cut_of_lanes(s, term);
	const struct wall_slots *slots = &s->slots[i];
	struct border_cut cut = {.border = term->border,
	                         .along_u = term->along_u,
	                         .whole = term->profile.extent};
	cut.worst = worst_cut_of_term(s, i);
	cut.small_share = term->profile.small / term->profile.extent;
	cut.least = wall_term_least_cut(term, slots, search_place_of_term(s, term));
	if (slots->count == 0) {
		cut.from = cut.to = term->profile.extent;
		return cut;
	}
	cut.from = cut_at_end(s, term, slots, 0);
	cut.to = cut_at_end(s, term, slots, 1);
	bool meets_ends = term->along_u && s->module->offset_count > 1 &&
	                  fabs(term->at[1] - term->at[0]) <= TOLERANCE_SQUARE * term->length;
	if (meets_ends && slots->count > 1)
		list_courses(s, term, slots, &cut);
	return cut;
}

/* Moves the grid of all parts. */
static void shift_places(struct search *s, struct point by)
{
	for (size_t class = 0; class < s->bays.u_count; class ++)
		s->u[class] += by.x;
	for (size_t class = 0; class < s->bays.v_count; class ++)
		s->v[class] += by.y;
	search_set_slots(s);
}

/* Cuts with the grid moved by `shifts` at each border; NULL: nowhere. */
static void list_cuts(struct search *s, struct position *position, const struct point *shifts)
{
	struct point moved = {0, 0};
	position->cut_count = s->term_count;
	position->cuts = ARENA_ARRAY(s->arena, struct border_cut, s->term_count);
	position->smallest_cut = position->smallest_cut_worst = INFINITY;
	for (size_t i = 0; i < s->term_count; i++) {
		struct point by = shifts ? shifts[s->terms[i].border] : moved;
		if (point_distance(by, moved) > TOLERANCE_SAME)
			shift_places(s, point_sub(by, moved));
		moved = by;
		position->cuts[i] = cut_of_term(s, i);
		position->smallest_cut = fmin(position->smallest_cut, position->cuts[i].least);
		position->smallest_cut_worst =
			fmin(position->smallest_cut_worst, position->cuts[i].worst);
	}
}

static struct position *position_of_search(struct search *s)
{
	struct position *position = ARENA_NEW(s->arena, struct position);
	position->part_count = s->field->region.count;
	position->parts = ARENA_ARRAY(s->arena, struct point, position->part_count);
	for (size_t i = 0; i < position->part_count; i++)
		position->parts[i] =
			(struct point){s->u[s->bays.u_of_part[i]], s->v[s->bays.v_of_part[i]]};
	position->is_pinned = s->field->lay->start != NULL;
	position->key = whole_key(s);
	position->unmet = search_first_unmet(s);
	list_cuts(s, position, NULL);
	position->candidates_tried = s->tried;
	return position;
}

const struct position *position_search(struct arena *arena, const struct field *field,
                                       const struct module *module, const struct rules *rules)
{
	struct search s = search_start(arena, field, module, rules);
	if (field->region.count)
		choose(&s);
	return position_of_search(&s);
}

/* Puts every class where it was. */
static void set_places(struct search *s, const struct position *before)
{
	for (size_t i = 0; i < before->part_count; i++) {
		s->u[s->bays.u_of_part[i]] = before->parts[i].x;
		s->v[s->bays.v_of_part[i]] = before->parts[i].y;
	}
	search_set_slots(s);
}

static bool is_wished(const struct search *s, bool along_u, size_t class)
{
	bool wished = false;
	for (size_t i = 0; i < s->wishes.count; i++)
		wished = wished || search_wish_concerns(s, &s->wishes.wishes[i], along_u, class);
	return wished;
}

/* Pins all classes of an axis but those that wishes speak of; false: no place of one of these
 * meets them all. */
static bool free_wished(struct search *s, bool along_u, bool *pinned, size_t count)
{
	for (size_t class = 0; class < count; class ++) {
		pinned[class] = !is_wished(s, along_u, class);
		if (pinned[class])
			continue;
		struct candidates candidates = search_candidates(s, along_u, class);
		if (least_unmet(s, along_u, class, &candidates).unmet > 0)
			return false;
	}
	return true;
}

const struct position *position_moved(struct arena *arena, const struct field *field,
                                      const struct module *module, const struct rules *rules,
                                      const struct position *before)
{
	struct search s = search_start(arena, field, module, rules);
	set_places(&s, before);
	if (!free_wished(&s, true, s.u_pinned, s.bays.u_count) ||
	    !free_wished(&s, false, s.v_pinned, s.bays.v_count))
		return NULL;
	choose(&s);
	return position_of_search(&s);
}

const struct position *position_shifted(struct arena *arena, const struct field *field,
                                        const struct module *module, const struct rules *rules,
                                        const struct position *before, const struct point *shifts)
{
	struct search s = search_start(arena, field, module, rules);
	struct position *after = ARENA_NEW(arena, struct position);
	*after = *before;
	set_places(&s, before);
	list_cuts(&s, after, shifts);
	return after;
}

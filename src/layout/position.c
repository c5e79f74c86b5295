#include "layout/position.h"

#include "base/array.h"
#include "geometry/tolerance.h"
#include "layout/bays.h"
#include "layout/wall_term.h"
#include "layout/wish.h"
#include "units/length.h"

/* Two opposite walls of a part whose cuts should be alike. */
struct pair {
	size_t term[2];
};

/* Places to try for one class of parts along one axis, the first corner's first. */
struct candidates {
	double *places;
	size_t count;
};

struct search {
	struct arena *arena;
	const struct field *field;
	const struct module *module;
	struct bays bays;
	double print_step;
	struct wall_term *terms;
	size_t term_count;
	struct wall_slots *slots;       /* of each term, for the v position being tried */
	struct pair *pairs;
	size_t pair_count;
	struct wishes wishes;
	bool balance;
	double *u, *v;                  /* of each class */
	bool *u_pinned, *v_pinned;
	struct position_key *best_u;    /* of each u class, with the v positions as they are */
	long tried;
};

static const struct position_key WORST_KEY = {INFINITY, INFINITY, INFINITY, INFINITY, INFINITY};

static struct position_key key_sum(struct position_key a, struct position_key b)
{
	return (struct position_key){a.unmet + b.unmet, a.small + b.small,
	                             a.whole_at_joint + b.whole_at_joint, a.balance + b.balance,
	                             a.cut_pieces + b.cut_pieces};
}

/* Terms count as equal when they print equal: rounding must not choose. */
static int compare_term(double a, double b)
{
	const double grid = 1e6;
	if (isinf(a) || isinf(b))
		return isinf(a) && isinf(b) ? 0 : isinf(a) ? 1 : -1;
	double difference = nearbyint(a * grid) - nearbyint(b * grid);
	return difference < 0 ? -1 : difference > 0;
}

int position_key_compare(struct position_key a, struct position_key b)
{
	int order = compare_term(a.unmet, b.unmet);
	if (!order)
		order = compare_term(a.small, b.small);
	if (!order)
		order = compare_term(a.whole_at_joint, b.whole_at_joint);
	if (!order)
		order = compare_term(a.balance, b.balance);
	if (!order)
		order = compare_term(a.cut_pieces, b.cut_pieces);
	return order;
}

static size_t class_of_term(const struct search *s, const struct wall_term *term)
{
	return term->along_u ? s->bays.u_of_part[term->part] : s->bays.v_of_part[term->part];
}

/* ---- the key of one class at one place ---- */

static void add_terms(const struct search *s, bool along_u, size_t class, double place,
                      struct position_key *key)
{
	for (size_t i = 0; i < s->term_count; i++) {
		const struct wall_term *term = &s->terms[i];
		if (term->along_u != along_u || class_of_term(s, term) != class)
			continue;
		key->small += wall_term_penalty(term, &s->slots[i], place);
		key->cut_pieces += wall_term_cut_pieces(term, s->module, &s->slots[i], place);
		if (s->field->borders[term->border].is_carried && term->is_straight)
			key->whole_at_joint += !wall_term_starts_whole(term, &s->slots[i], place, s->print_step / 2);
	}
}

static bool meets_wish(const struct search *s, const struct wish *wish, double place)
{
	double reach = s->print_step / 2;
	if (wish->is_centre)
		return wish_is_centred(wish, s->module, place, reach);
	for (size_t i = 0; i < wish->term_count; i++)
		if (!wall_term_starts_whole(&s->terms[wish->terms[i]], &s->slots[wish->terms[i]], place, reach))
			return false;
	return true;
}

static size_t class_of_wish(const struct search *s, const struct wish *wish)
{
	size_t part = wish->is_centre ? wish->part : s->terms[wish->terms[0]].part;
	return wish->along_u ? s->bays.u_of_part[part] : s->bays.v_of_part[part];
}

static void add_wishes(const struct search *s, bool along_u, size_t class, double place,
                       struct position_key *key)
{
	for (size_t i = 0; i < s->wishes.count; i++) {
		const struct wish *wish = &s->wishes.wishes[i];
		if (wish->is_possible && wish->along_u == along_u && class_of_wish(s, wish) == class)
			key->unmet += !meets_wish(s, wish, place);
	}
}

static void add_balance(const struct search *s, bool along_u, size_t class, double place,
                        struct position_key *key)
{
	for (size_t i = 0; i < s->pair_count; i++) {
		const struct pair *pair = &s->pairs[i];
		const struct wall_term *a = &s->terms[pair->term[0]], *b = &s->terms[pair->term[1]];
		if (a->along_u != along_u || class_of_term(s, a) != class)
			continue;
		key->balance += fabs(wall_term_least_cut(a, &s->slots[pair->term[0]], place) -
		                     wall_term_least_cut(b, &s->slots[pair->term[1]], place));
	}
}

static struct position_key key_of_class(const struct search *s, bool along_u, size_t class, double place)
{
	struct position_key key = {0};
	add_terms(s, along_u, class, place, &key);
	add_wishes(s, along_u, class, place, &key);
	if (s->balance)
		add_balance(s, along_u, class, place, &key);
	return key;
}

/* ---- candidates ---- */

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
		if (term->along_u != along_u || class_of_term(s, term) != class || !term->is_straight)
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
		if (!wish->is_centre || wish->along_u != along_u || class_of_wish(s, wish) != class)
			continue;
		out->places[out->count++] = into_period(wish->centre, from, period);
		out->places[out->count++] = into_period(wish->centre - period / 2, from, period);
	}
}

/* Every printed step within one period, counted from the first corner to a face's edge, and
 * the exact places at which a whole tile starts at a wall. */
static struct candidates candidates_of_class(struct search *s, bool along_u, size_t class)
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

/* ---- the search ---- */

static void slots_for_v(struct search *s)
{
	for (size_t i = 0; i < s->term_count; i++)
		wall_term_slots(&s->terms[i], s->module, s->v[s->bays.v_of_part[s->terms[i].part]], &s->slots[i]);
}

static struct position_key best_of_u(struct search *s, size_t class, const struct candidates *candidates)
{
	struct position_key best = WORST_KEY;
	if (s->u_pinned[class])
		return key_of_class(s, true, class, s->u[class]);
	for (size_t i = 0; i < candidates->count; i++) {
		struct position_key key = key_of_class(s, true, class, candidates->places[i]);
		s->tried++;
		if (position_key_compare(key, best) < 0) {
			best = key;
			s->u[class] = candidates->places[i];
		}
	}
	return best;
}

/* Best u of every class, with the courses where v puts them. */
static struct position_key best_of_all_u(struct search *s, const struct candidates *u_candidates)
{
	struct position_key sum = {0};
	slots_for_v(s);
	for (size_t class = 0; class < s->bays.u_count; class++)
		sum = key_sum(sum, best_of_u(s, class, &u_candidates[class]));
	return sum;
}

/* Chooses v of one class; where courses are shifted the best u depends on it. */
static void choose_v(struct search *s, size_t class, const struct candidates *u_candidates)
{
	struct candidates candidates = candidates_of_class(s, false, class);
	bool u_depends = s->module->offset_count > 1;
	double *best_u = ARENA_ARRAY(s->arena, double, s->bays.u_count);
	struct position_key best = WORST_KEY;
	double best_v = s->v[class];
	for (size_t i = 0; i < candidates.count; i++) {
		s->v[class] = candidates.places[i];
		struct position_key key = key_of_class(s, false, class, s->v[class]);
		if (u_depends && position_key_compare(key, best) < 0)
			key = key_sum(key, best_of_all_u(s, u_candidates));
		s->tried++;
		if (position_key_compare(key, best) >= 0)
			continue;
		best = key;
		best_v = s->v[class];
		for (size_t u = 0; u < s->bays.u_count; u++)
			best_u[u] = s->u[u];
	}
	s->v[class] = best_v;
	for (size_t u = 0; u_depends && u < s->bays.u_count; u++)
		s->u[u] = best_u[u];
}

static void choose(struct search *s)
{
	struct candidates *u_candidates = ARENA_ARRAY(s->arena, struct candidates, s->bays.u_count);
	for (size_t class = 0; class < s->bays.u_count; class++)
		u_candidates[class] = candidates_of_class(s, true, class);
	slots_for_v(s);
	/* One v class is exact in one round; several with shifted courses settle in two. */
	int rounds = s->bays.v_count > 1 && s->module->offset_count > 1 ? 2 : 1;
	for (int round = 0; round < rounds; round++)
		for (size_t class = 0; class < s->bays.v_count; class++)
			if (!s->v_pinned[class])
				choose_v(s, class, u_candidates);
	best_of_all_u(s, u_candidates);
}

/* ---- setting up ---- */

/* The longest straight wall of a part that faces one way along an axis. */
static size_t longest_wall(const struct search *s, size_t part, bool along_u, double sign)
{
	size_t best = SIZE_MAX;
	for (size_t i = 0; i < s->term_count; i++) {
		const struct wall_term *term = &s->terms[i];
		if (term->part != part || term->along_u != along_u || term->sign != sign ||
		    s->field->borders[term->border].is_carried)
			continue;
		if (best == SIZE_MAX || term->length > s->terms[best].length + TOLERANCE_SAME)
			best = i;
	}
	return best;
}

static void pair_walls(struct search *s)
{
	s->pairs = ARENA_ARRAY(s->arena, struct pair, 2 * s->field->region.count);
	for (size_t part = 0; part < s->field->region.count; part++)
		for (int axis = 0; axis < 2; axis++) {
			size_t low = longest_wall(s, part, axis, 1), high = longest_wall(s, part, axis, -1);
			if (low != SIZE_MAX && high != SIZE_MAX)
				s->pairs[s->pair_count++] = (struct pair){{low, high}};
		}
}

static void pin(struct search *s)
{
	const struct plan_start *start = s->field->lay->start;
	if (!start)
		return;
	struct point at = frame_in(s->field->frame, (struct point){length_mm(start->x_nm), length_mm(start->y_nm)});
	if (start->at == PLAN_START_CENTRE)
		at = point_sub(at, (struct point){s->module->pitch / 2, s->module->course / 2});
	size_t part = 0;
	for (size_t i = 1; i < s->field->region.count; i++)
		if (polygon_holds(&s->field->region.polygons[i], at))
			part = i;
	size_t u = s->bays.u_of_part[part], v = s->bays.v_of_part[part];
	s->u[u] = at.x;
	s->v[v] = at.y;
	s->u_pinned[u] = s->v_pinned[v] = true;
}

static struct search search_of(struct arena *arena, const struct field *field, const struct module *module,
                               const struct rules *rules)
{
	struct search s = {.arena = arena, .field = field, .module = module, .bays = bays_of_field(arena, field)};
	s.print_step = rules_figure(rules, field->site->inches ? FIGURE_PRINT_STEP_INCH : FIGURE_PRINT_STEP_METRIC);
	s.balance = field->lay->balance;
	s.term_count = field->border_count;
	s.terms = ARENA_ARRAY(arena, struct wall_term, s.term_count);
	s.slots = ARENA_ARRAY(arena, struct wall_slots, s.term_count);
	for (size_t i = 0; i < s.term_count; i++) {
		s.terms[i] = wall_term_from_border(field, module, rules, i);
		s.slots[i].slots = ARENA_ARRAY(arena, struct wall_slot, wall_term_most_slots(&s.terms[i], module));
	}
	pair_walls(&s);
	s.wishes = wishes_of_lay(arena, field, s.terms, s.term_count);
	s.u = ARENA_ARRAY(arena, double, s.bays.u_count);
	s.v = ARENA_ARRAY(arena, double, s.bays.v_count);
	s.u_pinned = ARENA_ARRAY(arena, bool, s.bays.u_count);
	s.v_pinned = ARENA_ARRAY(arena, bool, s.bays.v_count);
	pin(&s);
	return s;
}

/* ---- what came of it ---- */

static struct position_key whole_key(struct search *s)
{
	struct position_key key = {0};
	slots_for_v(s);
	for (size_t class = 0; class < s->bays.u_count; class++)
		key = key_sum(key, key_of_class(s, true, class, s->u[class]));
	for (size_t class = 0; class < s->bays.v_count; class++)
		key = key_sum(key, key_of_class(s, false, class, s->v[class]));
	for (size_t i = 0; i < s->wishes.count; i++)
		key.unmet += !s->wishes.wishes[i].is_possible;
	return key;
}

static double place_of_term(const struct search *s, const struct wall_term *term)
{
	return term->along_u ? s->u[class_of_term(s, term)] : s->v[class_of_term(s, term)];
}

static const struct plan_ref *first_unmet(const struct search *s)
{
	for (size_t i = 0; i < s->wishes.count; i++) {
		const struct wish *wish = &s->wishes.wishes[i];
		if (!wish->is_possible)
			return wish->ref;
		size_t class = class_of_wish(s, wish);
		if (!meets_wish(s, wish, wish->along_u ? s->u[class] : s->v[class]))
			return wish->ref;
	}
	return NULL;
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
	struct wall_slots slots = {
		ARENA_ARRAY(s->arena, struct wall_slot, wall_term_most_slots(&wide, s->module)), 0};
	wall_term_slots(&wide, s->module, s->v[s->bays.v_of_part[wide.part]], &slots);
	return wall_term_worst_cut(&wide, &slots, place_of_term(s, &wide));
}

static void list_courses(struct search *s, const struct wall_term *term, const struct wall_slots *slots,
                         struct border_cut *cut)
{
	cut->courses = ARENA_ARRAY(s->arena, double, slots->count);
	for (size_t i = 0; i < slots->count; i++) {
		double phase = slots->slots[i].phase[0] - term->sign * place_of_term(s, term);
		double width = cut_profile_cut(&term->profile, cut_profile_phase(&term->profile, phase));
		bool known = false;
		for (size_t k = 0; k < cut->course_count; k++)
			known = known || fabs(cut->courses[k] - width) < TOLERANCE_WHOLE;
		if (!known)
			cut->courses[cut->course_count++] = width;
	}
}

/* The cut at the very end of a border: of the first or last slot along it. */
static double cut_at_end(const struct search *s, const struct wall_term *term, const struct wall_slots *slots,
                         int end)
{
	bool rising = term->beside[1] > term->beside[0];
	size_t slot = (end == 0) == rising || !term->along_u ? 0 : slots->count - 1;
	if (term->is_straight && slots->count > 1)
		return wall_term_least_cut(term, slots, place_of_term(s, term));
	int phase_end = term->along_u && !rising ? 1 - end : end;
	double phase = slots->slots[slot].phase[phase_end] - term->sign * place_of_term(s, term);
	return cut_profile_cut(&term->profile, cut_profile_phase(&term->profile, phase));
}

static struct border_cut cut_of_term(struct search *s, size_t i)
{
	const struct wall_term *term = &s->terms[i];
	const struct wall_slots *slots = &s->slots[i];
	struct border_cut cut = {.border = term->border, .along_u = term->along_u, .whole = term->profile.extent};
	cut.worst = worst_cut_of_term(s, i);
	cut.small_share = term->profile.small / term->profile.extent;
	cut.least = wall_term_least_cut(term, slots, place_of_term(s, term));
	if (slots->count == 0) {
		cut.from = cut.to = term->profile.extent;
		return cut;
	}
	cut.from = cut_at_end(s, term, slots, 0);
	cut.to = cut_at_end(s, term, slots, 1);
	if (term->along_u && term->is_straight && slots->count > 1)
		list_courses(s, term, slots, &cut);
	return cut;
}

static struct position *position_of_search(struct search *s)
{
	struct position *position = ARENA_NEW(s->arena, struct position);
	position->part_count = s->field->region.count;
	position->parts = ARENA_ARRAY(s->arena, struct point, position->part_count);
	for (size_t i = 0; i < position->part_count; i++)
		position->parts[i] = (struct point){s->u[s->bays.u_of_part[i]], s->v[s->bays.v_of_part[i]]};
	position->is_pinned = s->field->lay->start != NULL;
	position->key = whole_key(s);
	position->unmet = first_unmet(s);
	position->cut_count = s->term_count;
	position->cuts = ARENA_ARRAY(s->arena, struct border_cut, s->term_count);
	position->smallest_cut = position->smallest_cut_worst = INFINITY;
	for (size_t i = 0; i < s->term_count; i++) {
		position->cuts[i] = cut_of_term(s, i);
		position->smallest_cut = fmin(position->smallest_cut, position->cuts[i].least);
		position->smallest_cut_worst = fmin(position->smallest_cut_worst, position->cuts[i].worst);
	}
	position->candidates_tried = s->tried;
	return position;
}

const struct position *position_search(struct arena *arena, const struct field *field,
                                       const struct module *module, const struct rules *rules)
{
	struct search s = search_of(arena, field, module, rules);
	if (field->region.count)
		choose(&s);
	return position_of_search(&s);
}

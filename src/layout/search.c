#include "layout/search.h"

#include <stdlib.h>

#include "geometry/tolerance.h"
#include "units/length.h"

size_t search_class_of_term(const struct search *s, const struct wall_term *term)
{
	return term->along_u ? s->bays.u_of_part[term->part] : s->bays.v_of_part[term->part];
}

double search_place_of_term(const struct search *s, const struct wall_term *term)
{
	size_t class = search_class_of_term(s, term);
	return term->along_u ? s->u[class] : s->v[class];
}

void search_set_slots(struct search *s)
{
	for (size_t i = 0; i < s->term_count; i++) {
		double v = s->v[s->bays.v_of_part[s->terms[i].part]];
		wall_term_slots(&s->terms[i], s->module, v, &s->slots[i]);
	}
}

/* ---- wishes ---- */

static bool term_of_wish_is_in(const struct search *s, const struct wish *wish, size_t i,
                               size_t class)
{
	return search_class_of_term(s, &s->terms[wish->terms[i]]) == class;
}

bool search_wish_concerns(const struct search *s, const struct wish *wish, bool along_u,
                          size_t class)
{
	if (!wish->is_possible || wish->along_u != along_u)
		return false;
	if (wish->is_centre)
		return (along_u ? s->bays.u_of_part : s->bays.v_of_part)[wish->part] == class;
	for (size_t i = 0; i < wish->term_count; i++)
		if (term_of_wish_is_in(s, wish, i, class))
			return true;
	return false;
}

/* Half a printed step off prints as met. */
static double reach_of_wish(const struct search *s)
{
	return s->print_step / 2 + TOLERANCE_CUT;
}

/* What a wish asks of one class that it concerns. */
static bool meets_wish(const struct search *s, const struct wish *wish, size_t class, double place)
{
	double reach = reach_of_wish(s);
	if (wish->is_centre)
		return wish_is_centred(wish, s->module, place, reach);
	for (size_t i = 0; i < wish->term_count; i++) {
		size_t term = wish->terms[i];
		if (term_of_wish_is_in(s, wish, i, class) &&
		    !wall_term_starts_whole(&s->terms[term], &s->slots[term], place, reach))
			return false;
	}
	return true;
}

static bool is_met(const struct search *s, const struct wish *wish)
{
	size_t classes = wish->along_u ? s->bays.u_count : s->bays.v_count;
	const double *places = wish->along_u ? s->u : s->v;
	bool met = wish->is_possible;
	for (size_t class = 0; met && class < classes; class ++)
		met = !search_wish_concerns(s, wish, wish->along_u, class) ||
		      meets_wish(s, wish, class, places[class]);
	return met;
}

const struct plan_ref *search_first_unmet(const struct search *s)
{
	for (size_t i = 0; i < s->wishes.count; i++)
		if (!is_met(s, &s->wishes.wishes[i]))
			return s->wishes.wishes[i].ref;
	return NULL;
}

/* ---- the key of one class at one place ---- */

struct position_key search_unmet(const struct search *s, bool along_u, size_t class, double place)
{
	struct position_key key = {0};
	double importance = 1;
	for (size_t i = 0; i < s->wishes.count; i++, importance /= 2) {
		const struct wish *wish = &s->wishes.wishes[i];
		if (!search_wish_concerns(s, wish, along_u, class) ||
		    meets_wish(s, wish, class, place))
			continue;
		key.unmet++;
		key.unmet_order += importance;
	}
	return key;
}

static const struct class_terms *terms_of(const struct search *s, bool along_u, size_t class)
{
	return along_u ? &s->terms_of_u[class] : &s->terms_of_v[class];
}

static void add_penalties(const struct search *s, const struct class_terms *terms, double place,
                          struct position_key limit, struct position_key *key)
{
	for (size_t k = 0; k < terms->by_weight.count; k++) {
		size_t i = terms->by_weight.items[k];
		key->small += wall_term_penalty(&s->terms[i], &s->slots[i], place);
		if (position_key_is_beaten(*key, limit))
			return;
	}
}

static void add_counts(const struct search *s, const struct class_terms *terms, double place,
                       struct position_key *key)
{
	for (size_t k = 0; k < terms->in_order.count; k++) {
		size_t i = terms->in_order.items[k];
		const struct wall_term *term = &s->terms[i];
		key->cut_pieces += wall_term_cut_pieces(term, s->module, &s->slots[i], place);
		if (s->field->borders[term->border].is_carried && term->is_straight)
			key->whole_at_joint += !wall_term_starts_whole(term, &s->slots[i], place,
			                                               reach_of_wish(s));
	}
}

static void add_balance(const struct search *s, bool along_u, size_t class, double place,
                        struct position_key *key)
{
	for (size_t i = 0; i < s->pair_count; i++) {
		const size_t *pair = s->pairs[i].term;
		const struct wall_term *term = &s->terms[pair[0]];
		if (term->along_u != along_u || search_class_of_term(s, term) != class)
			continue;
		double cuts[2];
		for (int side = 0; side < 2; side++)
			cuts[side] = wall_term_least_cut(&s->terms[pair[side]],
			                                 &s->slots[pair[side]], place);
		key->balance += fabs(cuts[0] - cuts[1]);
	}
}

struct position_key search_key(const struct search *s, bool along_u, size_t class, double place,
                               struct position_key limit)
{
	const struct class_terms *terms = terms_of(s, along_u, class);
	struct position_key key = search_unmet(s, along_u, class, place);
	if (position_key_is_beaten(key, limit))
		return key;
	add_penalties(s, terms, place, limit, &key);
	if (position_key_is_beaten(key, limit))
		return key;
	add_counts(s, terms, place, &key);
	if (s->field->lay->balance)
		add_balance(s, along_u, class, place, &key);
	return key;
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
	s->pairs = ARENA_ARRAY(s->arena, struct wall_pair, 2 * s->field->region.count);
	for (size_t part = 0; part < s->field->region.count; part++)
		for (int axis = 0; axis < 2; axis++) {
			size_t low = longest_wall(s, part, axis, 1),
			       high = longest_wall(s, part, axis, -1);
			if (low != SIZE_MAX && high != SIZE_MAX)
				s->pairs[s->pair_count++] = (struct wall_pair){{low, high}};
		}
}

static void pin(struct search *s)
{
	const struct plan_start *start = s->field->lay->start;
	if (!start)
		return;
	struct point at = frame_in(s->field->frame,
	                           (struct point){length_mm(start->x_nm), length_mm(start->y_nm)});
	if (start->at == PLAN_START_CENTRE)
		at = point_sub(at, ring_middle(s->module->faces[0].ring));
	size_t part = 0;
	for (size_t i = 1; i < s->field->region.count; i++)
		if (polygon_holds(&s->field->region.polygons[i], at))
			part = i;
	size_t u = s->bays.u_of_part[part], v = s->bays.v_of_part[part];
	s->u[u] = at.x;
	s->v[v] = at.y;
	s->u_pinned[u] = s->v_pinned[v] = true;
}

struct weighed_term {
	size_t term;
	double most; /* what it can cost at the most, up to a factor all share */
};

static int weightiest_first(const void *a, const void *b)
{
	const struct weighed_term *x = a, *y = b;
	if (x->most != y->most)
		return x->most > y->most ? -1 : 1;
	return x->term < y->term ? -1 : x->term > y->term;
}

static struct weighed_term *weighed_terms(struct search *s)
{
	struct weighed_term *weighed = ARENA_ARRAY(s->arena, struct weighed_term, s->term_count);
	for (size_t i = 0; i < s->term_count; i++)
		weighed[i] = (struct weighed_term){i, s->terms[i].weight * s->terms[i].length};
	if (s->term_count > 0)
		qsort(weighed, s->term_count, sizeof *weighed, weightiest_first);
	return weighed;
}

static struct class_terms *class_of(struct search *s, size_t term)
{
	size_t class = search_class_of_term(s, &s->terms[term]);
	return s->terms[term].along_u ? &s->terms_of_u[class] : &s->terms_of_v[class];
}

static void share_out_terms(struct search *s)
{
	const struct weighed_term *weighed = weighed_terms(s);
	s->terms_of_u = ARENA_ARRAY(s->arena, struct class_terms, s->bays.u_count);
	s->terms_of_v = ARENA_ARRAY(s->arena, struct class_terms, s->bays.v_count);
	for (size_t i = 0; i < s->term_count; i++) {
		size_t term = weighed[i].term;
		*array_push(s->arena, &class_of(s, i)->in_order) = i;
		*array_push(s->arena, &class_of(s, term)->by_weight) = term;
	}
}

struct search search_start(struct arena *arena, const struct field *field,
                           const struct module *module, const struct rules *rules)
{
	struct search s = {.arena = arena, .field = field, .module = module};
	s.bays = bays_of_field(arena, field);
	s.print_step = rules_figure(rules, field->site->inches ? FIGURE_PRINT_STEP_INCH
	                                                       : FIGURE_PRINT_STEP_METRIC);
	s.term_count = field->border_count;
	s.terms = ARENA_ARRAY(arena, struct wall_term, s.term_count);
	s.slots = ARENA_ARRAY(arena, struct wall_slots, s.term_count);
	for (size_t i = 0; i < s.term_count; i++) {
		s.terms[i] = wall_term_from_border(arena, field, module, rules, i);
		size_t most = wall_term_most_slots(&s.terms[i], module);
		s.slots[i].slots = ARENA_ARRAY(arena, struct wall_slot, most);
	}
	share_out_terms(&s);
	pair_walls(&s);
	s.wishes = wishes_of_lay(arena, field, s.terms, s.term_count);
	s.u = ARENA_ARRAY(arena, double, s.bays.u_count);
	s.v = ARENA_ARRAY(arena, double, s.bays.v_count);
	s.u_pinned = ARENA_ARRAY(arena, bool, s.bays.u_count);
	s.v_pinned = ARENA_ARRAY(arena, bool, s.bays.v_count);
	pin(&s);
	return s;
}

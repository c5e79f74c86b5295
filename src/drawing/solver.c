#include "drawing/solver.h"

#include <stdint.h>
#include <stdlib.h>

#include "drawing/clash.h"

/* Crossing a mark costs as much as covering this many mm of it. */
static const double CROSS_MM = 1.5;
/* What lies within so many mm of a leader's tip may be taken for what it names: that costs as
 * much as covering this share of it; or all of it, and from farther, of a dot on an area. */
static const double TIP_NEAR = 1.5, TIP_SHARE = 0.25, DOT_NEAR = 3;
/* A place that costs more is worth looking for one with a leader. */
static const double LEADER_WORTH = 6;
/* And one that costs more than this worth a closer look. */
static const double CLOSER_WORTH = 14;
enum { IMPROVE_ROUNDS = 2, POLISH_ROUNDS = 2, NEVER = -1 };
/* From a height of lettering to the next lower of ISO 3098-1, within its rounding. */
static const double STEP_DOWN = 0.7;
/* So many labels may be moved to make room for one. */
enum { PUSHED_MOST = 3 };
/* A label that costs more than this stands badly and tries to swap places, so many of them. */
static const double BADLY = 20;
enum { SWAPS_MOST = 12 };

struct choice {
	struct candidates near, led, dense;
	bool is_near_made, is_led_made, is_dense_made;
};

struct solver {
	struct arena *arena;
	const struct occupancy *occupancy;
	struct paper_box within;
	struct solver_label *labels;
	struct choice *choices;
	struct paper_box *taken; /* extents of the chosen places, empty where there is none */
	size_t count;
};

/* Nothing may stand there, or it is seen to cost no less than `best`. */
static bool is_out(const struct candidate *c, int64_t best)
{
	return c->is_impossible || (best != NEVER && llround(c->cost * 1e6) >= best);
}

/* What the text covers, as far as that is less than `best`. */
static void rate_body(const struct solver *s, struct candidate *c, int64_t best)
{
	struct paper_box box = clash_clear_box(c);
	double most = INFINITY;
	if (best != NEVER)
		most = (double)best / 1e6 - c->place_cost;
	c->extent = clash_extent(c);
	c->is_impossible =
		!paper_box_inside(c->box, s->within) || occupancy_is_blocked(s->occupancy, box);
	if (c->is_impossible)
		return;
	double cover = occupancy_cover(s->occupancy, box, most);
	c->cost = c->place_cost + cover;
	c->rated = cover <= most ? RATED_BODY : RATED_NOT;
}

/* What the leader crosses. */
static void rate_leader(const struct solver *s, struct candidate *c)
{
	struct paper_point a, b;
	for (int i = 0; i + 1 < c->leader_count && !c->is_impossible; i++) {
		clash_leader_piece(c, i, &a, &b);
		c->is_impossible = occupancy_blocks_line(s->occupancy, a, b);
		if (!c->is_impossible)
			c->cost += CROSS_MM * occupancy_cross(s->occupancy, a, b);
	}
	c->rated = RATED_ALL;
}

/* Rated against the fixed marks no further than it takes to see that it is out: each mark only
 * adds to the cost. */
static bool is_worth(const struct solver *s, struct candidate *c, int64_t best)
{
	if (c->rated == RATED_NOT && !is_out(c, best))
		rate_body(s, c, best);
	if (c->rated == RATED_BODY && !is_out(c, best))
		rate_leader(s, c);
	return c->rated == RATED_ALL && !is_out(c, best);
}

/* Values of a chain stand as close as their ticks. */
static bool may_read_on(const struct solver *s, size_t a, size_t b)
{
	const struct label *one = s->labels[a].label, *other = s->labels[b].label;
	return one->frame == LABEL_PLAIN && other->frame == LABEL_PLAIN &&
	       !(one->role == TEXT_DIMENSION && other->role == TEXT_DIMENSION);
}

/* Cost with all labels placed so far, in millionths; NEVER where it clashes. */
static int64_t cost_now(const struct solver *s, size_t self, const struct candidate *c)
{
	double cost = c->cost;
	for (size_t i = 0; i < s->count; i++) {
		if (i == self || !paper_box_meets(c->extent, s->taken[i]))
			continue;
		const struct candidate *other = s->labels[i].chosen;
		if (clash_is(c, other))
			return NEVER;
		cost += clash_tangle(c, other);
		if (may_read_on(s, self, i))
			cost += clash_reads_on(c, other, s->labels[self].body.cap);
	}
	return (int64_t)llround(cost * 1e6);
}

static const struct candidate *cheapest(const struct solver *s, size_t self,
                                        struct candidates among, int64_t *best)
{
	const struct candidate *found = NULL;
	for (size_t i = 0; i < among.count; i++) {
		if (!is_worth(s, &among.items[i], *best))
			continue;
		int64_t cost = cost_now(s, self, &among.items[i]);
		if (cost == NEVER || (*best != NEVER && cost >= *best))
			continue;
		*best = cost;
		found = &among.items[i];
	}
	return found;
}

static void take(struct solver *s, size_t self, const struct candidate *place)
{
	s->labels[self].chosen = place;
	s->taken[self] = place ? place->extent : paper_box_empty();
}

/* What lies round the end of each leader, more than round the end that is freest: what is named
 * is always there. */
static void rate_tips(const struct solver *s, struct candidates led, bool is_dotted)
{
	double reach = is_dotted ? DOT_NEAR : TIP_NEAR, share = is_dotted ? 1 : TIP_SHARE;
	double least = INFINITY, here = 0;
	struct paper_point before = {NAN, NAN};
	for (int round = 0; round <= 1; round++)
		for (size_t i = 0; i < led.count; i++) {
			struct candidate *c = &led.items[i];
			struct paper_point tip = c->leader[c->leader_count - 1];
			/* Places in a row have their tip in common. */
			if (!(paper_distance(tip, before) <= 0))
				here = share * occupancy_near(s->occupancy, tip, reach);
			before = tip;
			least = fmin(least, here);
			if (round == 1)
				c->cost = c->place_cost += here - least;
		}
}

static void prepare(struct solver *s, size_t self, bool with_leaders)
{
	struct choice *choice = &s->choices[self];
	const struct solver_label *l = &s->labels[self];
	if (!choice->is_near_made)
		choice->near = candidate_near(s->arena, l->label, &l->body);
	choice->is_near_made = true;
	if (with_leaders && !choice->is_led_made) {
		choice->led = candidate_led(s->arena, l->label, &l->body);
		rate_tips(s, choice->led, l->label->is_dotted);
		choice->is_led_made = true;
	}
}

static void choose(struct solver *s, size_t self)
{
	int64_t best = NEVER;
	prepare(s, self, false);
	take(s, self, cheapest(s, self, s->choices[self].near, &best));
	if (!s->labels[self].label->can_lead ||
	    (best != NEVER && best <= llround(LEADER_WORTH * 1e6)))
		return;
	prepare(s, self, true);
	const struct candidate *led = cheapest(s, self, s->choices[self].led, &best);
	if (led)
		take(s, self, led);
}

/* Among many more places the cheapest that is free, if cheaper than `best`. */
static bool look_closely(struct solver *s, size_t self, int64_t best)
{
	struct solver_label *l = &s->labels[self];
	struct choice *choice = &s->choices[self];
	if (!l->label->can_lead)
		return false;
	if (!choice->is_dense_made) {
		choice->dense = candidate_led_densely(s->arena, l->label, &l->body);
		rate_tips(s, choice->dense, l->label->is_dotted);
	}
	choice->is_dense_made = true;
	const struct candidate *found = cheapest(s, self, choice->dense, &best);
	if (found)
		take(s, self, found);
	return found;
}

/* Labels taken from their places, to be placed anew; more than PUSHED_MOST: too many. */
struct pushed {
	size_t items[PUSHED_MOST], count;
	const struct candidate *before[PUSHED_MOST];
};

/* Those that `c` clashes with, or (where asked) entangles its leader with. */
static struct pushed in_the_way(const struct solver *s, size_t self, const struct candidate *c,
                                bool with_leaders)
{
	struct pushed p = {.count = 0};
	for (size_t i = 0; i < s->count && p.count <= PUSHED_MOST; i++) {
		const struct candidate *other = s->labels[i].chosen;
		if (i == self || !paper_box_meets(c->extent, s->taken[i]) ||
		    !(clash_is(c, other) || (with_leaders && clash_tangle(c, other) > 0)))
			continue;
		if (p.count < PUSHED_MOST) {
			p.items[p.count] = i;
			p.before[p.count] = other;
		}
		p.count++;
	}
	return p;
}

static void put_back(struct solver *s, size_t self, const struct candidate *own,
                     const struct pushed *p)
{
	take(s, self, own);
	for (size_t i = 0; i < p->count; i++)
		take(s, p->items[i], p->before[i]);
}

/* Takes `c` for `self`; false: one of those that stood there finds no other place. */
static bool push(struct solver *s, size_t self, const struct candidate *c, const struct pushed *p)
{
	for (size_t i = 0; i < p->count; i++)
		take(s, p->items[i], NULL);
	take(s, self, c);
	for (size_t i = 0; i < p->count; i++) {
		choose(s, p->items[i]);
		if (!s->labels[p->items[i]].chosen && !look_closely(s, p->items[i], NEVER))
			return false;
	}
	return true;
}

/* Takes `c` for `self` from the labels that stand there, if each finds another place. */
static bool push_from(struct solver *s, size_t self, const struct candidate *c)
{
	struct pushed p = in_the_way(s, self, c, false);
	if (p.count > PUSHED_MOST)
		return false;
	if (push(s, self, c, &p))
		return true;
	put_back(s, self, NULL, &p);
	return false;
}

static bool push_aside(struct solver *s, size_t self, struct candidates among)
{
	for (size_t i = 0; i < among.count; i++)
		if (is_worth(s, &among.items[i], NEVER) && push_from(s, self, &among.items[i]))
			return true;
	return false;
}

static bool make_room(struct solver *s, size_t self)
{
	return look_closely(s, self, NEVER) || push_aside(s, self, s->choices[self].near) ||
	       push_aside(s, self, s->choices[self].led);
}

/* The last resort: the same words in the small height; never a dimension. */
static void set_small(struct solver *s, const struct list *list, size_t self)
{
	struct solver_label *l = &s->labels[self];
	if (list->small_cap <= 0 || l->body.cap <= list->small_cap ||
	    l->label->role == TEXT_DIMENSION)
		return;
	struct label *small = ARENA_NEW(s->arena, struct label);
	*small = *l->label;
	small->cap = fmax(list->small_cap, l->body.cap * STEP_DOWN);
	l->label = small;
	l->body = label_body_of(list, small);
	l->is_small = true;
	s->choices[self] = (struct choice){0};
	choose(s, self);
	if (!l->chosen)
		make_room(s, self);
}

/* A better place than it has, now that all have one. */
static void improve(struct solver *s, size_t self)
{
	const struct candidate *before = s->labels[self].chosen;
	if (!before)
		return;
	int64_t cost = cost_now(s, self, before);
	choose(s, self);
	const struct candidate *after = s->labels[self].chosen;
	int64_t now = after ? cost_now(s, self, after) : NEVER;
	if (now == NEVER || now >= cost) {
		take(s, self, before);
		now = cost;
	}
	if (now > llround(CLOSER_WORTH * 1e6))
		look_closely(s, self, now);
}

/* The best place for `self`, looked for closely where none of the usual ones is good. */
static int64_t choose_closely(struct solver *s, size_t self)
{
	choose(s, self);
	const struct candidate *chosen = s->labels[self].chosen;
	int64_t cost = chosen ? cost_now(s, self, chosen) : NEVER;
	if ((cost == NEVER || cost > llround(CLOSER_WORTH * 1e6)) && look_closely(s, self, cost))
		cost = cost_now(s, self, s->labels[self].chosen);
	return cost;
}

/* Two labels whose leaders are entangled are placed anew, one after the other. */
static bool untangle_pair(struct solver *s, size_t first, size_t second, int64_t most)
{
	take(s, first, NULL);
	take(s, second, NULL);
	int64_t one = choose_closely(s, first), two = choose_closely(s, second);
	if (one == NEVER || two == NEVER)
		return false;
	return cost_now(s, first, s->labels[first].chosen) + two < most;
}

static void untangle(struct solver *s, size_t self)
{
	for (size_t i = 0; i < s->count; i++) {
		const struct candidate *a = s->labels[self].chosen, *b = s->labels[i].chosen;
		if (i == self || !a || !b || !paper_box_meets(a->extent, b->extent) ||
		    clash_tangle(a, b) <= 0)
			continue;
		int64_t before = cost_now(s, self, a) + cost_now(s, i, b);
		if (untangle_pair(s, self, i, before) || untangle_pair(s, i, self, before))
			continue;
		take(s, self, a);
		take(s, i, b);
	}
}

/* The places that fixed marks make cheapest, cheapest first. */
struct best_places {
	struct candidate *items[SWAPS_MOST];
	size_t count;
};

static void keep_best(struct best_places *best, struct candidate *c)
{
	size_t at = best->count < SWAPS_MOST ? best->count++ : SWAPS_MOST - 1;
	if (best->items[at] && best->items[at]->cost <= c->cost)
		return;
	for (; at > 0 && best->items[at - 1]->cost > c->cost; at--)
		best->items[at] = best->items[at - 1];
	best->items[at] = c;
}

static void find_best(const struct solver *s, struct candidates among, int64_t most,
                      struct best_places *best)
{
	for (size_t i = 0; i < among.count; i++)
		if (is_worth(s, &among.items[i], most))
			keep_best(best, &among.items[i]);
}

static int64_t cost_of(const struct solver *s, size_t self, const struct pushed *p)
{
	int64_t cost = cost_now(s, self, s->labels[self].chosen);
	for (size_t i = 0; i < p->count; i++)
		cost += cost_now(s, p->items[i], s->labels[p->items[i]].chosen);
	return cost;
}

/* A label that stands badly takes the place of others, where all of them together then stand
 * better. */
static void swap_places(struct solver *s, size_t self)
{
	const struct candidate *own = s->labels[self].chosen;
	int64_t cost = own ? cost_now(s, self, own) : NEVER;
	if (cost <= llround(BADLY * 1e6))
		return;
	struct best_places best = {.count = 0};
	prepare(s, self, s->labels[self].label->can_lead);
	find_best(s, s->choices[self].near, cost, &best);
	if (s->labels[self].label->can_lead)
		find_best(s, s->choices[self].led, cost, &best);
	for (size_t i = 0; i < best.count; i++) {
		struct pushed p = in_the_way(s, self, best.items[i], true);
		if (p.count == 0 || p.count > PUSHED_MOST)
			continue;
		int64_t before = cost_of(s, self, &p);
		if (push(s, self, best.items[i], &p) && cost_of(s, self, &p) < before)
			return;
		put_back(s, self, own, &p);
	}
}

struct turn {
	int priority;
	size_t index;
};

static int compare_turns(const void *a, const void *b)
{
	const struct turn *x = a, *y = b;
	if (x->priority != y->priority)
		return x->priority > y->priority ? -1 : 1;
	return (x->index > y->index) - (x->index < y->index);
}

static struct turn *turns_of(const struct solver *s)
{
	struct turn *turns = ARENA_ARRAY(s->arena, struct turn, s->count);
	for (size_t i = 0; i < s->count; i++)
		turns[i] = (struct turn){s->labels[i].label->priority, i};
	if (s->count > 0)
		qsort(turns, s->count, sizeof *turns, compare_turns);
	return turns;
}

static void polish(struct solver *s, const struct turn *turns)
{
	for (int round = 0; round < IMPROVE_ROUNDS; round++)
		for (size_t i = 0; i < s->count; i++)
			improve(s, turns[i].index);
	for (size_t i = 0; i < s->count; i++)
		untangle(s, turns[i].index);
	for (size_t i = 0; i < s->count; i++)
		swap_places(s, turns[i].index);
}

struct solver_label *solver_place(struct arena *arena, const struct list *list,
                                  const struct occupancy *occupancy, struct paper_box within)
{
	size_t count = list->labels.count;
	struct solver s = {arena,
	                   occupancy,
	                   within,
	                   ARENA_ARRAY(arena, struct solver_label, count),
	                   ARENA_ARRAY(arena, struct choice, count),
	                   ARENA_ARRAY(arena, struct paper_box, count),
	                   count};
	for (size_t i = 0; i < count; i++) {
		s.taken[i] = paper_box_empty();
		s.labels[i].label = &list->labels.items[i];
		s.labels[i].body = label_body_of(list, s.labels[i].label);
	}
	const struct turn *turns = turns_of(&s);
	for (int round = 0; round <= IMPROVE_ROUNDS; round++)
		for (size_t i = 0; i < count; i++)
			choose(&s, turns[i].index);
	for (size_t i = 0; i < count; i++) {
		size_t self = turns[i].index;
		if (!s.labels[self].chosen && !make_room(&s, self))
			set_small(&s, list, self);
	}
	for (int round = 0; round < POLISH_ROUNDS; round++)
		polish(&s, turns);
	return s.labels;
}

bool solver_stands_badly(const struct solver_label *placed)
{
	return placed->chosen && llround(placed->chosen->cost * 1e6) > llround(BADLY * 1e6);
}

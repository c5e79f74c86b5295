#include "drawing/solver.h"

#include <stdint.h>
#include <stdlib.h>

/* Clear on each side of a text, mm; and to the text before and after it on its line, so that
 * two never read as one: half a capital height. */
static const double TEXT_CLEAR = 0.6, READ_APART = 1.75;
/* Crossing a mark costs as much as covering this many mm of it. */
static const double CROSS_MM = 1.5;
/* The end of a leader lies on what it names: this much of it is not looked at. */
static const double LEADER_END = 1.2;
static const double LEADERS_CROSS = 25;
/* Leaders whose elbows come as near to each other as this (mm) are mistaken for one. */
static const double LEADERS_APART = 2, LEADERS_JOIN = 50;
/* A place that costs more is worth looking for one with a leader. */
static const double LEADER_WORTH = 6;
/* And one that costs more than this worth a closer look. */
static const double CLOSER_WORTH = 14;
enum { IMPROVE_ROUNDS = 2, NEVER = -1 };
/* From a height of lettering to the next lower of ISO 3098-1, within its rounding. */
static const double STEP_DOWN = 0.7;
/* So many labels may be moved to make room for one. */
enum { PUSHED_MOST = 3 };

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

static struct paper_box clear_box(const struct candidate *c)
{
	return paper_box_grown(c->box, TEXT_CLEAR);
}

/* The place of a text with the white that other texts keep off. */
static struct paper_box apart_box(const struct candidate *c)
{
	struct paper_box box = clear_box(c);
	double more = READ_APART - TEXT_CLEAR;
	if (c->is_upright) {
		box.y0 -= more;
		box.y1 += more;
	} else {
		box.x0 -= more;
		box.x1 += more;
	}
	return box;
}

static struct paper_point leader_tip(const struct candidate *c)
{
	struct paper_point before = c->leader[c->leader_count - 2];
	struct paper_point tip = c->leader[c->leader_count - 1];
	double length = paper_distance(before, tip);
	return length > LEADER_END ? paper_step(tip, paper_sub(before, tip), LEADER_END / length)
	                           : before;
}

/* The i-th stretch of a leader, without its tip. */
static void leader_piece(const struct candidate *c, int i, struct paper_point *a,
                         struct paper_point *b)
{
	*a = c->leader[i];
	*b = i + 2 == c->leader_count ? leader_tip(c) : c->leader[i + 1];
}

static struct paper_box extent_of(const struct candidate *c)
{
	struct paper_box box = c->box;
	for (int i = 0; i < c->leader_count; i++)
		box = paper_box_with(box, c->leader[i]);
	return paper_box_grown(box, READ_APART);
}

/* Nothing may stand there, or it is seen to cost no less than `best`. */
static bool is_out(const struct candidate *c, int64_t best)
{
	return c->is_impossible || (best != NEVER && llround(c->cost * 1e6) >= best);
}

/* What the text covers, as far as that is less than `best`. */
static void rate_body(const struct solver *s, struct candidate *c, int64_t best)
{
	struct paper_box box = clear_box(c);
	double most = INFINITY;
	if (best != NEVER)
		most = (double)best / 1e6 - c->place_cost;
	c->extent = extent_of(c);
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
		leader_piece(c, i, &a, &b);
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

static bool leader_meets_box(const struct candidate *leader, struct paper_box box)
{
	struct paper_point a, b;
	double t0, t1;
	for (int i = 0; i + 1 < leader->leader_count; i++) {
		leader_piece(leader, i, &a, &b);
		if (paper_box_clip(box, a, b, &t0, &t1))
			return true;
	}
	return false;
}

static bool is_clash(const struct candidate *c, const struct candidate *other)
{
	if (!paper_box_meets(c->extent, other->extent))
		return false;
	return paper_box_meets(apart_box(c), other->box) ||
	       paper_box_meets(apart_box(other), c->box) || leader_meets_box(c, clear_box(other)) ||
	       leader_meets_box(other, clear_box(c));
}

static bool leaders_cross(const struct candidate *c, const struct candidate *other)
{
	struct paper_point a, b, d, e;
	for (int i = 0; i + 1 < c->leader_count; i++)
		for (int j = 0; j + 1 < other->leader_count; j++) {
			leader_piece(c, i, &a, &b);
			leader_piece(other, j, &d, &e);
			if (occupancy_is_crossing(a, b, d, e))
				return true;
		}
	return false;
}

static double distance_to(struct paper_point p, struct paper_point a, struct paper_point b)
{
	struct paper_point d = paper_sub(b, a), from = paper_sub(p, a);
	double square = d.x * d.x + d.y * d.y;
	double share = square > 0 ? (from.x * d.x + from.y * d.y) / square : 0;
	return paper_distance(p, paper_step(a, d, fmax(0, fmin(1, share))));
}

/* True where the shoulder or the elbow of one leader comes near the other. */
static bool leader_joins(const struct candidate *c, const struct candidate *other)
{
	struct paper_point a, b;
	for (int i = 0; i + 1 < c->leader_count; i++)
		for (int j = 0; j + 1 < other->leader_count; j++) {
			leader_piece(other, j, &a, &b);
			if (distance_to(c->leader[i], a, b) < LEADERS_APART)
				return true;
		}
	return false;
}

static double tangle_cost(const struct candidate *c, const struct candidate *other)
{
	if (leader_joins(c, other) || leader_joins(other, c))
		return LEADERS_JOIN;
	return leaders_cross(c, other) ? LEADERS_CROSS : 0;
}

/* Cost with all labels placed so far, in millionths; NEVER where it clashes. */
static int64_t cost_now(const struct solver *s, size_t self, const struct candidate *c)
{
	double cost = c->cost;
	for (size_t i = 0; i < s->count; i++) {
		if (i == self || !paper_box_meets(c->extent, s->taken[i]))
			continue;
		const struct candidate *other = s->labels[i].chosen;
		if (is_clash(c, other))
			return NEVER;
		cost += tangle_cost(c, other);
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

static void prepare(struct solver *s, size_t self, bool with_leaders)
{
	struct choice *choice = &s->choices[self];
	const struct solver_label *l = &s->labels[self];
	if (!choice->is_near_made)
		choice->near = candidate_near(s->arena, l->label, &l->body);
	choice->is_near_made = true;
	if (with_leaders && !choice->is_led_made) {
		choice->led = candidate_led(s->arena, l->label, &l->body);
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

/* The labels that `c` clashes with; more than PUSHED_MOST: too many to move. */
static size_t clashes(const struct solver *s, size_t self, const struct candidate *c,
                      size_t out_others[PUSHED_MOST])
{
	size_t count = 0;
	for (size_t i = 0; i < s->count && count <= PUSHED_MOST; i++) {
		if (i == self || !paper_box_meets(c->extent, s->taken[i]) ||
		    !is_clash(c, s->labels[i].chosen))
			continue;
		if (count < PUSHED_MOST)
			out_others[count] = i;
		count++;
	}
	return count;
}

/* Takes `c` for `self` from the labels that stand there, if each finds another place. */
static bool push_from(struct solver *s, size_t self, const struct candidate *c)
{
	size_t others[PUSHED_MOST], count = clashes(s, self, c, others), moved = 0;
	const struct candidate *before[PUSHED_MOST];
	if (count > PUSHED_MOST)
		return false;
	for (size_t i = 0; i < count; i++) {
		before[i] = s->labels[others[i]].chosen;
		take(s, others[i], NULL);
	}
	take(s, self, c);
	for (; moved < count; moved++) {
		choose(s, others[moved]);
		if (!s->labels[others[moved]].chosen)
			break;
	}
	if (moved == count)
		return true;
	take(s, self, NULL);
	for (size_t i = 0; i < count; i++)
		take(s, others[i], before[i]);
	return false;
}

static bool push_aside(struct solver *s, size_t self, struct candidates among)
{
	for (size_t i = 0; i < among.count; i++)
		if (is_worth(s, &among.items[i], NEVER) && push_from(s, self, &among.items[i]))
			return true;
	return false;
}

/* Among many more places the cheapest that is free, if cheaper than `best`. */
static bool look_closely(struct solver *s, size_t self, int64_t best)
{
	struct solver_label *l = &s->labels[self];
	struct choice *choice = &s->choices[self];
	if (!l->label->can_lead)
		return false;
	if (!choice->is_dense_made)
		choice->dense = candidate_led_densely(s->arena, l->label, &l->body);
	choice->is_dense_made = true;
	const struct candidate *found = cheapest(s, self, choice->dense, &best);
	if (found)
		take(s, self, found);
	return found;
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
		    tangle_cost(a, b) <= 0)
			continue;
		int64_t before = cost_now(s, self, a) + cost_now(s, i, b);
		if (untangle_pair(s, self, i, before) || untangle_pair(s, i, self, before))
			continue;
		take(s, self, a);
		take(s, i, b);
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
	for (int round = 0; round < IMPROVE_ROUNDS; round++)
		for (size_t i = 0; i < count; i++)
			improve(&s, turns[i].index);
	for (size_t i = 0; i < count; i++)
		untangle(&s, turns[i].index);
	return s.labels;
}

#include "layout/soft_path.h"

#include "base/array.h"
#include "geometry/tolerance.h"
#include "layout/place_map.h"

static const size_t NONE = (size_t)-1;
static const double NM_PER_MM = 1e6, MILLIONTHS = 1e6;

/* An edge walked from end to end; or, as a goal, as far as its gate. */
struct node {
	struct soft_step step;
	bool is_goal, is_settled;
	size_t from, to; /* gates: where the walk began, and, of a goal, where it ends */
	size_t previous; /* NONE: the walk began here */
	struct soft_cost least;
};

struct entry {
	struct soft_cost cost;
	size_t node;
};

struct search {
	struct arena *arena;
	const struct soft_query *query;
	struct place_map known; /* step and goal -> node */
	struct place_map ends;  /* step -> gate in query->to */
	ARRAY_OF(struct node) nodes;
	ARRAY_OF(struct entry) heap;
	long settled;
};

int soft_cost_compare(struct soft_cost a, struct soft_cost b)
{
	if (a.cost != b.cost)
		return a.cost < b.cost ? -1 : 1;
	if (a.turns != b.turns)
		return a.turns < b.turns ? -1 : 1;
	return a.length < b.length ? -1 : a.length > b.length;
}

int soft_step_compare(struct soft_step a, struct soft_step b)
{
	const int differences[] = {a.at.edge - b.at.edge, a.at.j - b.at.j, a.at.i - b.at.i,
	                           a.reversed - b.reversed};
	for (size_t k = 0; k < sizeof differences / sizeof *differences; k++)
		if (differences[k] != 0)
			return differences[k] < 0 ? -1 : 1;
	return 0;
}

/* Halving the angle between unit vectors until its sine is the angle: sqrt is the same to
 * the last bit on every machine, arc tangents are not. */
double soft_turn(struct point before, struct point after)
{
	const int halvings = 20;
	const double pi = 3.14159265358979323846;
	struct point u = point_unit(before), w = point_unit(after);
	if (fabs(point_cross(u, w)) < TOLERANCE_SAME)
		return point_dot(u, w) > 0 ? 0 : 2;
	for (int k = 0; k < halvings; k++)
		w = point_unit(point_add(u, w));
	double angle = ldexp(fabs(point_cross(u, w)), halvings);
	return nearbyint(angle / (pi / 2) * MILLIONTHS) / MILLIONTHS;
}

static long long to_nm(double mm)
{
	return llround(mm * NM_PER_MM);
}

static struct point way_of(const struct soft_query *query, struct soft_step step)
{
	struct segment at =
		network_segment(query->network, query->module, step.at, (struct point){0, 0});
	return step.reversed ? point_sub(at.from, at.to) : point_sub(at.to, at.from);
}

static struct soft_cost add_edge(const struct soft_query *query, struct soft_cost cost,
                                 double length, double turn)
{
	cost.length += to_nm(length);
	cost.turns += llround(turn * MILLIONTHS);
	cost.cost += to_nm(length) + to_nm(turn * query->turn_penalty);
	return cost;
}

static double edge_length(const struct soft_query *query, struct soft_step step)
{
	return query->network->edges[step.at.edge].length;
}

struct soft_cost soft_path_cost(const struct soft_query *query, const struct soft_step *steps,
                                size_t count, double first_part, double last_part)
{
	struct soft_cost cost = {0, 0, 0};
	if (count == 1)
		return add_edge(query, cost, first_part + last_part - edge_length(query, steps[0]),
		                0);
	for (size_t k = 0; k < count; k++) {
		double length = k == 0           ? first_part
		                : k + 1 == count ? last_part
		                                 : edge_length(query, steps[k]);
		double turn =
			k == 0 ? 0
			       : soft_turn(way_of(query, steps[k - 1]), way_of(query, steps[k]));
		cost = add_edge(query, cost, length, turn);
	}
	return cost;
}

static bool is_before(const struct search *search, struct entry a, struct entry b)
{
	int order = soft_cost_compare(a.cost, b.cost);
	if (order != 0)
		return order < 0;
	const struct node *x = &search->nodes.items[a.node], *y = &search->nodes.items[b.node];
	order = soft_step_compare(x->step, y->step);
	return order != 0 ? order < 0 : x->is_goal < y->is_goal;
}

static void push(struct search *search, struct entry entry)
{
	array_push(search->arena, &search->heap);
	struct entry *heap = search->heap.items;
	size_t at = search->heap.count - 1;
	for (size_t up; at > 0 && is_before(search, entry, heap[up = (at - 1) / 2]); at = up)
		heap[at] = heap[up];
	heap[at] = entry;
}

static struct entry pop(struct search *search)
{
	struct entry *heap = search->heap.items, first = heap[0];
	struct entry last = heap[--search->heap.count];
	size_t at = 0, count = search->heap.count;
	for (size_t down; (down = 2 * at + 1) < count; at = down) {
		if (down + 1 < count && is_before(search, heap[down + 1], heap[down]))
			down++;
		if (!is_before(search, heap[down], last))
			break;
		heap[at] = heap[down];
	}
	if (count > 0)
		heap[at] = last;
	return first;
}

static struct place_key key_of(struct soft_step step, bool is_goal)
{
	return (struct place_key){step.at.edge * 2 + step.reversed, is_goal, step.at.i, step.at.j};
}

static bool is_lesser_previous(const struct search *search, size_t a, size_t b)
{
	if (a == NONE || b == NONE)
		return a == NONE && b != NONE;
	return soft_step_compare(search->nodes.items[a].step, search->nodes.items[b].step) < 0;
}

/* A walk that ends with `node`: kept when it is the least known to that step. */
static void offer(struct search *search, struct node node)
{
	size_t fresh = search->nodes.count;
	size_t index = *place_map_add(&search->known, key_of(node.step, node.is_goal), fresh);
	if (index == fresh) {
		*array_push(search->arena, &search->nodes) = node;
		push(search, (struct entry){node.least, index});
		return;
	}
	struct node *known = &search->nodes.items[index];
	int order = soft_cost_compare(node.least, known->least);
	if (known->is_settled || order > 0 ||
	    (order == 0 && !is_lesser_previous(search, node.previous, known->previous)))
		return;
	*known = node;
	if (order < 0)
		push(search, (struct entry){node.least, index});
}

/* Walks that begin and end on one edge. */
static void offer_within(struct search *search, struct node start)
{
	const struct soft_query *query = search->query;
	double part = query->from[start.from].part;
	start.is_goal = true;
	for (size_t g = 0; g < query->to_count; g++) {
		double both = part + query->to[g].part - edge_length(query, start.step);
		if (soft_step_compare(query->to[g].step, start.step) != 0 || both <= TOLERANCE_SAME)
			continue;
		start.to = g;
		start.least = add_edge(query, (struct soft_cost){0, 0, 0}, both, 0);
		offer(search, start);
	}
}

static void offer_starts(struct search *search)
{
	const struct soft_query *query = search->query;
	for (size_t g = 0; g < query->from_count; g++) {
		struct node node = {.step = query->from[g].step, .from = g, .previous = NONE};
		node.least = add_edge(query, node.least, query->from[g].part, 0);
		if (!query->from[g].is_cut)
			offer(search, node);
		offer_within(search, node);
	}
}

static void offer_step(struct search *search, size_t previous, struct soft_step step)
{
	const struct soft_query *query = search->query;
	const struct node before = search->nodes.items[previous];
	double turn = soft_turn(way_of(query, before.step), way_of(query, step));
	struct node node = {.step = step, .from = before.from, .previous = previous};
	if (query->is_open(query->context, step.at)) {
		node.least = add_edge(query, before.least, edge_length(query, step), turn);
		offer(search, node);
	}
	const size_t *end = place_map_find(&search->ends, key_of(step, true));
	if (end) {
		node.is_goal = true;
		node.to = *end;
		node.least = add_edge(query, before.least, query->to[*end].part, turn);
		offer(search, node);
	}
}

static void leave(struct search *search, size_t index)
{
	const struct soft_step at = search->nodes.items[index].step;
	const struct network_edge *edge = &search->query->network->edges[at.at.edge];
	int vertex = at.reversed ? edge->from : edge->to;
	int i = at.at.i + (at.reversed ? 0 : edge->to_i);
	int j = at.at.j + (at.reversed ? 0 : edge->to_j);
	const struct network_vertex *here = &search->query->network->vertices[vertex];
	for (size_t k = 0; k < here->leaving_count; k++) {
		struct network_leaving next = here->leaving[k];
		struct soft_step step = {{next.edge, i + next.i, j + next.j}, next.reversed};
		if (!network_place_is_same(step.at, at.at))
			offer_step(search, index, step);
	}
}

/* The gate of each step where a walk may end; of several the one met first. */
static void list_ends(struct search *search)
{
	const struct soft_query *query = search->query;
	for (size_t g = 0; g < query->to_count; g++) {
		if (query->to[g].is_cut)
			continue;
		size_t *gate = place_map_add(&search->ends, key_of(query->to[g].step, true), g);
		if (query->to[g].part < query->to[*gate].part)
			*gate = g;
	}
}

static struct soft_path path_to(const struct search *search, size_t goal)
{
	const struct node *nodes = search->nodes.items;
	struct soft_path path = {.from = nodes[goal].from,
	                         .to = nodes[goal].to,
	                         .least = nodes[goal].least};
	for (size_t n = goal; n != NONE; n = nodes[n].previous)
		path.count++;
	path.steps = ARENA_ARRAY(search->arena, struct soft_step, path.count);
	size_t at = path.count;
	for (size_t n = goal; n != NONE; n = nodes[n].previous)
		path.steps[--at] = nodes[n].step;
	return path;
}

struct soft_path soft_path_search(struct arena *arena, const struct soft_query *query)
{
	struct search search = {.arena = arena,
	                        .query = query,
	                        .known = place_map_in(arena),
	                        .ends = place_map_in(arena)};
	list_ends(&search);
	offer_starts(&search);
	while (search.heap.count > 0) {
		struct entry entry = pop(&search);
		struct node *node = &search.nodes.items[entry.node];
		if (node->is_settled || soft_cost_compare(entry.cost, node->least) != 0)
			continue;
		node->is_settled = true;
		if (node->is_goal) {
			struct soft_path path = path_to(&search, entry.node);
			path.settled = search.settled;
			return path;
		}
		search.settled++;
		leave(&search, entry.node);
	}
	return (struct soft_path){.settled = search.settled};
}

/* The walk of a soft joint, against every simple walk of small corridors, and the comb. */
#include "support/program.h"

#include <stdlib.h>

#include "layout/soft_path.h"
#include "support/modules.h"

enum { OPEN_MOST = 40, STEPS_MOST = OPEN_MOST + 2 };

struct corridor {
	struct network_place open[OPEN_MOST];
	size_t count;
	long asked;
};

static bool is_open(void *context, struct network_place place)
{
	struct corridor *corridor = context;
	corridor->asked++;
	for (size_t k = 0; k < corridor->count; k++)
		if (network_place_is_same(corridor->open[k], place))
			return true;
	return false;
}

/* The search that knows nothing clever: all walks that enter no vertex twice. */
struct brute {
	const struct soft_query *query;
	struct soft_step steps[STEPS_MOST], best[STEPS_MOST];
	size_t count, best_count;
	struct soft_cost least;
	long walks;
};

struct knot {
	int vertex, i, j;
};

static struct knot end_of(const struct network *network, struct soft_step step, bool last)
{
	const struct network_edge *edge = &network->edges[step.at.edge];
	if (last != step.reversed)
		return (struct knot){edge->to, step.at.i + edge->to_i, step.at.j + edge->to_j};
	return (struct knot){edge->from, step.at.i, step.at.j};
}

static bool is_same_knot(struct knot a, struct knot b)
{
	return a.vertex == b.vertex && a.i == b.i && a.j == b.j;
}

/* -1 when the walk at hand goes before the best one, read from its end. */
static int compare_backwards(const struct brute *brute)
{
	for (size_t k = 1; k <= brute->count && k <= brute->best_count; k++) {
		int order = soft_step_compare(brute->steps[brute->count - k],
		                              brute->best[brute->best_count - k]);
		if (order != 0)
			return order;
	}
	return brute->count < brute->best_count ? -1 : brute->count > brute->best_count;
}

static void consider(struct brute *brute, double first_part)
{
	const struct soft_query *query = brute->query;
	for (size_t g = 0; g < query->to_count; g++) {
		if (soft_step_compare(query->to[g].step, brute->steps[brute->count - 1]) != 0)
			continue;
		struct soft_cost cost = soft_path_cost(query, brute->steps, brute->count,
		                                       first_part, query->to[g].part);
		if (cost.length <= 0)
			continue;
		brute->walks++;
		int order = brute->best_count ? soft_cost_compare(cost, brute->least) : -1;
		if (order > 0 || (order == 0 && compare_backwards(brute) >= 0))
			continue;
		brute->least = cost;
		brute->best_count = brute->count;
		for (size_t k = 0; k < brute->count; k++)
			brute->best[k] = brute->steps[k];
	}
}

static bool was_there(const struct brute *brute, struct knot knot)
{
	for (size_t k = 1; k < brute->count; k++)
		if (is_same_knot(end_of(brute->query->network, brute->steps[k], false), knot))
			return true;
	return false;
}

static void walk_on(struct brute *brute, double first_part)
{
	const struct network *network = brute->query->network;
	consider(brute, first_part);
	struct soft_step here = brute->steps[brute->count - 1];
	/* The whole edge must be free to be walked beyond; the gates' own are. */
	if (brute->count > 1 && !is_open(brute->query->context, here.at))
		return;
	struct knot knot = end_of(network, here, true);
	if (was_there(brute, knot) || brute->count == STEPS_MOST)
		return;
	const struct network_vertex *vertex = &network->vertices[knot.vertex];
	for (size_t k = 0; k < vertex->leaving_count; k++) {
		struct network_leaving next = vertex->leaving[k];
		struct soft_step step = {{next.edge, knot.i + next.i, knot.j + next.j},
		                         next.reversed};
		if (network_place_is_same(step.at, here.at))
			continue;
		brute->steps[brute->count++] = step;
		walk_on(brute, first_part);
		brute->count--;
	}
}

static void try_all(struct brute *brute)
{
	for (size_t g = 0; g < brute->query->from_count; g++) {
		brute->steps[0] = brute->query->from[g].step;
		brute->count = 1;
		walk_on(brute, brute->query->from[g].part);
	}
}

/* True where there is a walk. */
static bool check_against_all(struct arena *arena, const struct soft_query *query, int number)
{
	struct brute *brute = ARENA_NEW(arena, struct brute);
	brute->query = query;
	try_all(brute);
	struct soft_path path = soft_path_search(arena, query);
	if (path.count != brute->best_count)
		fail_msg("corridor %d: %zu steps, %zu by trying all", number, path.count,
		         brute->best_count);
	if (path.count == 0)
		return false;
	if (soft_cost_compare(path.least, brute->least) != 0)
		fail_msg("corridor %d: cost %lld, %lld by trying all", number, path.least.cost,
		         brute->least.cost);
	for (size_t k = 0; k < path.count; k++)
		if (soft_step_compare(path.steps[k], brute->best[k]) != 0)
			fail_msg("corridor %d: step %zu differs", number, k);
	assert_int_equal(soft_step_compare(path.steps[0], query->from[path.from].step), 0);
	assert_int_equal(soft_step_compare(path.steps[path.count - 1], query->to[path.to].step), 0);
	return true;
}

/* A connected random corridor: grown edge by edge from one place. */
static void grow(struct corridor *corridor, const struct network *network, size_t wanted)
{
	corridor->open[0] = (struct network_place){0, 0, 0};
	corridor->count = 1;
	while (corridor->count < wanted) {
		struct soft_step from = {corridor->open[(size_t)rand() % corridor->count],
		                         rand() % 2};
		struct knot knot = end_of(network, from, true);
		const struct network_vertex *vertex = &network->vertices[knot.vertex];
		struct network_leaving next =
			vertex->leaving[(size_t)rand() % vertex->leaving_count];
		struct network_place place = {next.edge, knot.i + next.i, knot.j + next.j};
		/* Kept low and long, so that trying all stays short. */
		if (abs(place.j) <= 1 && !is_open(corridor, place))
			corridor->open[corridor->count++] = place;
	}
}

static struct soft_gate random_gate(const struct corridor *corridor, const struct network *network)
{
	struct soft_gate gate = {{corridor->open[(size_t)rand() % corridor->count], rand() % 2}, 0};
	double length = network->edges[gate.step.at.edge].length;
	gate.part = rand() % 2 ? length : length * (1 + rand() % 9) / 10;
	return gate;
}

/* As at the border of a field: nothing leads on beyond a gate, or back out through it. */
static void close_gates(struct corridor *corridor, const struct soft_gate *gates, size_t count)
{
	for (size_t g = 0; g < count; g++)
		for (size_t k = corridor->count; k-- > 0;)
			if (network_place_is_same(corridor->open[k], gates[g].step.at))
				corridor->open[k] = corridor->open[--corridor->count];
}

static bool has_turn_back(const struct soft_gate *from, const struct soft_gate *to, size_t count)
{
	for (size_t f = 0; f < count; f++)
		for (size_t t = 0; t < count; t++)
			if (network_place_is_same(from[f].step.at, to[t].step.at) &&
			    from[f].step.reversed != to[t].step.reversed)
				return true;
	return false;
}

static void test_agrees_with_all_walks(void **state)
{
	(void)state;
	srand(19590601);
	struct arena *shapes = arena_new();
	const struct module *modules[] = {
		module_of_rectangles(shapes, 300, 300, 3, 0),
		module_of_rectangles(shapes, 600, 300, 3, 0.5),
		module_of_rectangles(shapes, 600, 150, 2, 1.0 / 3),
		module_of_hexagons(shapes, 200, 3),
		module_of_pinwheel(shapes, 300, 150, 3),
	};
	const double penalties[] = {0, 150, 303, 1000};
	long found = 0;
	for (int number = 0; number < 3000; number++) {
		struct arena *arena = arena_new();
		const struct module *module = modules[number % 5];
		const struct network *network = network_from_module(arena, module);
		struct corridor corridor = {.count = 0};
		grow(&corridor, network, 4 + (size_t)(rand() % (OPEN_MOST - 3)));
		struct soft_gate from[3], to[3];
		for (size_t g = 0; g < 3; g++) {
			from[g] = random_gate(&corridor, network);
			to[g] = random_gate(&corridor, network);
		}
		close_gates(&corridor, from, 3);
		close_gates(&corridor, to, 3);
		struct soft_query query = {network,   module, is_open,
		                           &corridor, from,   to,
		                           3,         3,      penalties[rand() % 4]};
		if (!has_turn_back(from, to, 3))
			found += check_against_all(arena, &query, number);
		arena_free(arena);
	}
	assert_true(found > 500);
	arena_free(shapes);
}

static void test_turns(void **state)
{
	(void)state;
	const double root = sqrt(3);
	assert_near(soft_turn((struct point){5, 0}, (struct point){3, 0}), 0, 0);
	assert_near(soft_turn((struct point){5, 0}, (struct point){0, 7}), 1, 0);
	assert_near(soft_turn((struct point){5, 0}, (struct point){0, -7}), 1, 0);
	assert_near(soft_turn((struct point){5, 0}, (struct point){-1, 0}), 2, 0);
	assert_near(soft_turn((struct point){1, 0}, (struct point){1, root}), 2.0 / 3, 1e-6);
	assert_near(soft_turn((struct point){0, 2}, (struct point){root, -1}), 4.0 / 3, 1e-6);
	assert_near(soft_turn((struct point){3, 4}, (struct point){4, 3}), 0.180669, 1e-6);
}

/* Squares of 300 mm with joint. Crossed are a spine (cells i = 0 to 7, j = 0) and the teeth on
 * it (i = 1, 3, 5, 7, j = 1), the last at the wall. Edge 0 runs along u from corner (i, j),
 * edge 1 along v. */
enum { TEETH = 4, COMB_WIDE = 2 * TEETH, COMB_HIGH = 3 };
static const double SQUARE = 300;

static void open_comb(struct corridor *corridor)
{
	corridor->count = 0;
	for (int j = 1; j <= COMB_HIGH; j++) {
		for (int i = 0; i < COMB_WIDE; i++)
			if (j > 1 || i % 2 == 0)
				corridor->open[corridor->count++] = (struct network_place){0, i, j};
		for (int i = 0; i <= COMB_WIDE; i++)
			if (j < COMB_HIGH)
				corridor->open[corridor->count++] = (struct network_place){1, i, j};
	}
}

/* Along the border of what is crossed: over every tooth and down again. */
static size_t walk_outline(struct soft_step *steps)
{
	size_t count = 0;
	for (int i = 0; i < COMB_WIDE; i++) {
		int j = i % 2 ? 2 : 1;
		if (i > 0)
			steps[count++] = (struct soft_step){{1, i, 1}, i % 2 == 0};
		steps[count++] = (struct soft_step){{0, i, j}, false};
	}
	return count;
}

static void test_comb(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct module *module = module_of_rectangles(arena, SQUARE - 3, SQUARE - 3, 3, 0);
	const struct network *network = network_from_module(arena, module);
	struct corridor corridor;
	open_comb(&corridor);
	assert_true(corridor.count <= OPEN_MOST);
	struct soft_gate from = {{{0, 0, 1}, false}, SQUARE};
	struct soft_gate to = {{{0, COMB_WIDE - 1, 2}, false}, SQUARE};
	struct soft_query query = {network, module, is_open, &corridor, &from, &to, 1, 1, 150};

	struct soft_step outline[STEPS_MOST];
	size_t count = walk_outline(outline);
	struct soft_cost along = soft_path_cost(&query, outline, count, SQUARE, SQUARE);
	assert_int_equal(along.turns, 14000000);
	assert_int_equal(along.length, 15 * 300000000LL);

	struct soft_path path = soft_path_search(arena, &query);
	assert_int_equal(path.least.turns, 2000000);
	assert_int_equal(path.least.length, 9 * 300000000LL);
	assert_int_equal(path.least.cost, 3000000000LL);
	assert_true(path.settled <= 2 * (long)corridor.count);
	assert_true(check_against_all(arena, &query, -1));
	arena_free(arena);
}

static void test_no_way(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct module *module = module_of_rectangles(arena, 297, 297, 3, 0);
	const struct network *network = network_from_module(arena, module);
	struct corridor corridor = {.open = {{0, 0, 0}, {0, 1, 0}, {0, 3, 0}}, .count = 3};
	struct soft_gate from = {{{0, 0, 0}, false}, 300}, to = {{{0, 3, 0}, false}, 300};
	struct soft_query query = {network, module, is_open, &corridor, &from, &to, 1, 1, 150};
	struct soft_path path = soft_path_search(arena, &query);
	assert_int_equal(path.count, 0);
	assert_int_equal(path.settled, 2);
	arena_free(arena);
}

/* A yard of four by four cells with no way out, entered twice by one edge, the dearer way first:
 * every edge is settled once each way all the same. */
static void test_each_edge_once_each_way(void **state)
{
	(void)state;
	enum { CELLS = 4 };
	struct arena *arena = arena_new();
	const struct module *module = module_of_rectangles(arena, 597, 97, 3, 0);
	const struct network *network = network_from_module(arena, module);
	struct corridor corridor = {.count = 0};
	for (int k = 0; k <= CELLS; k++)
		for (int n = 0; n < CELLS; n++) {
			corridor.open[corridor.count++] = (struct network_place){0, n, k};
			corridor.open[corridor.count++] = (struct network_place){1, k, n};
		}
	struct soft_gate from[] = {{.step = {{0, 0, 0}, false}, .part = 600},
	                           {.step = {{0, 0, 0}, false}, .part = 200}};
	struct soft_gate to = {.step = {{0, 99, 99}, false}, .part = 600};
	struct soft_query query = {network, module, is_open, &corridor, from, &to, 2, 1, 900};
	struct soft_path path = soft_path_search(arena, &query);
	assert_int_equal(path.count, 0);
	assert_int_equal(path.settled, 2 * corridor.count);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_turns),
		cmocka_unit_test(test_agrees_with_all_walks),
		cmocka_unit_test(test_comb),
		cmocka_unit_test(test_no_way),
		cmocka_unit_test(test_each_edge_once_each_way),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

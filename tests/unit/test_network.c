/* The joint network of five patterns: every border once, with a cell on each side. */
#include "support/program.h"

#include "geometry/tolerance.h"
#include "pattern/network.h"
#include "support/modules.h"

struct sample {
	const char *what;
	const struct module *module;
	size_t vertices, edges; /* of one period */
};

enum { SAMPLES = 6 };

static void make_samples(struct arena *arena, struct sample samples[SAMPLES])
{
	const struct sample all[SAMPLES] = {
		{"grid", module_of_rectangles(arena, 300, 200, 3, 0), 1, 2},
		{"running by halves", module_of_rectangles(arena, 600, 300, 3, 0.5), 2, 3},
		{"running by thirds", module_of_rectangles(arena, 600, 300, 3, 1.0 / 3), 2, 3},
		{"hexagon", module_of_hexagons(arena, 200, 3), 2, 3},
		{"pinwheel", module_of_pinwheel(arena, 300, 150, 3), 4, 6},
		{"basketweave", module_of_basketweave(arena, 100, 2), 6, 10},
	};
	for (size_t k = 0; k < SAMPLES; k++)
		samples[k] = all[k];
}

static double cell_border(const struct module *module)
{
	double length = 0;
	for (size_t f = 0; f < module->face_count; f++)
		length += ring_length(module->faces[f].cell);
	return length;
}

static double network_length(const struct network *network)
{
	double length = 0;
	for (size_t e = 0; e < network->edge_count; e++)
		length += network->edges[e].length;
	return length;
}

static void test_counts(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct sample samples[SAMPLES];
	make_samples(arena, samples);
	for (size_t k = 0; k < SAMPLES; k++) {
		const struct network *network = network_from_module(arena, samples[k].module);
		if (network->vertex_count != samples[k].vertices ||
		    network->edge_count != samples[k].edges)
			fail_msg("%s: %zu vertices, %zu edges", samples[k].what,
			         network->vertex_count, network->edge_count);
		/* Each border belongs to two cells. */
		assert_near(2 * network_length(network), cell_border(samples[k].module), 1e-6);
	}
	arena_free(arena);
}

/* The cell lies along the whole edge, on the side it is said to. */
static void check_side(struct arena *arena, const struct module *module,
                       const struct network *network, struct network_place place, bool left)
{
	struct point position = {17, -23};
	struct segment edge = network_segment(network, module, place, position);
	struct ring cell =
		module_cell_at(arena, module, network_beside(network, place, left), position);
	struct point middle = point_between(edge.from, edge.to, 0.5);
	struct point square = point_left(point_unit(point_sub(edge.to, edge.from)));
	assert_true(ring_holds(cell, point_add(middle, point_scale(square, left ? 0.01 : -0.01))));
	assert_false(ring_holds(cell, point_add(middle, point_scale(square, left ? -0.01 : 0.01))));
	assert_near(ring_distance(cell, edge.from), 0, TOLERANCE_SAME);
	assert_near(ring_distance(cell, edge.to), 0, TOLERANCE_SAME);
}

static void test_sides(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct sample samples[SAMPLES];
	make_samples(arena, samples);
	for (size_t k = 0; k < SAMPLES; k++) {
		const struct network *network = network_from_module(arena, samples[k].module);
		for (size_t e = 0; e < network->edge_count; e++)
			for (int i = -2; i <= 2; i++) {
				struct network_place place = {(int)e, i, 3 - i};
				check_side(arena, samples[k].module, network, place, true);
				check_side(arena, samples[k].module, network, place, false);
			}
	}
	arena_free(arena);
}

static struct point way_of(const struct module *module, const struct network *network,
                           const struct network_vertex *vertex, struct network_leaving leaving)
{
	struct segment at =
		network_segment(network, module,
	                        (struct network_place){leaving.edge, leaving.i, leaving.j},
	                        (struct point){0, 0});
	struct point start = leaving.reversed ? at.to : at.from;
	struct point end = leaving.reversed ? at.from : at.to;
	assert_near(point_distance(start, vertex->at), 0, TOLERANCE_SAME);
	return point_unit(point_sub(end, start));
}

static double degrees(struct point way)
{
	double angle = atan2(way.y, way.x) * 180 / 3.14159265358979323846;
	return angle < -1e-6 ? angle + 360 : angle;
}

static void test_leaving(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct sample samples[SAMPLES];
	make_samples(arena, samples);
	for (size_t k = 0; k < SAMPLES; k++) {
		const struct module *module = samples[k].module;
		const struct network *network = network_from_module(arena, module);
		size_t ends = 0;
		for (size_t v = 0; v < network->vertex_count; v++) {
			const struct network_vertex *vertex = &network->vertices[v];
			double last = -2;
			for (size_t l = 0; l < vertex->leaving_count; l++) {
				double now = degrees(
					way_of(module, network, vertex, vertex->leaving[l]));
				assert_true(now > last + 1);
				last = now;
			}
			assert_true(vertex->leaving_count >= 3);
			ends += vertex->leaving_count;
		}
		assert_int_equal(ends, 2 * network->edge_count);
	}
	arena_free(arena);
}

static bool is_listed(const struct network_place *places, size_t count, struct network_place place)
{
	for (size_t k = 0; k < count; k++)
		if (network_place_is_same(places[k], place))
			return true;
	return false;
}

/* Against every place of a block that is larger than the segment's surroundings. */
static void test_near(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct sample samples[SAMPLES];
	make_samples(arena, samples);
	const struct point position = {31, 57};
	const struct segment lines[] = {{{-300, 100}, {700, 900}},
	                                {{40, 40}, {40, 40}},
	                                {{0, 5}, {900, 5}},
	                                {{20, 900}, {20, -300}}};
	for (size_t k = 0; k < SAMPLES * 4; k++) {
		const struct module *module = samples[k / 4].module;
		const struct network *network = network_from_module(arena, module);
		double reach = k % 2 ? 0 : 60;
		size_t count, expected = 0;
		struct network_place *places =
			network_near(arena, network, module, position, lines[k % 4], reach, &count);
		for (int e = 0; e < (int)network->edge_count; e++)
			for (int j = -30; j <= 30; j++)
				for (int i = -30; i <= 30; i++) {
					struct network_place place = {e, i, j};
					struct segment at =
						network_segment(network, module, place, position);
					if (segment_gap(at, lines[k % 4]) > reach)
						continue;
					expected++;
					assert_true(is_listed(places, count, place));
				}
		assert_int_equal(count, expected);
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_counts),
		cmocka_unit_test(test_sides),
		cmocka_unit_test(test_leaving),
		cmocka_unit_test(test_near),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

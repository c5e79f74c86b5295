/* Every pattern of the format as one period: cells as large as a lattice step, faces that are
 * the tile, a joint between neighbours, and a network that closes on itself. */
#include "support/program.h"

#include "geometry/segment.h"
#include "geometry/tolerance.h"
#include "pattern/network.h"
#include "pattern/period.h"
#include "support/lays.h"

enum { JOINT = 3 };

struct sample {
	const char *what;
	const struct plan_lay *lay;
	size_t faces, vertices; /* of one period, worked by hand */
};

enum { SAMPLES = 9 };

static struct plan_lay *pairs(struct arena *arena, int tile_long, int tile_wide)
{
	struct plan_lay *lay =
		lay_of_tile(arena, PLAN_PATTERN_HERRINGBONE, tile_long, tile_wide, JOINT);
	lay->in_pairs = 2;
	return lay;
}

static struct plan_lay *pinwheel(struct arena *arena)
{
	struct plan_lay *lay = lay_of_tile(arena, PLAN_PATTERN_PINWHEEL, 297, 297, JOINT);
	lay_add_tile(arena, lay, 97, 97);
	return lay;
}

/* A large rectangle, and a square with two small ones beside it on top. */
static struct plan_lay *own(struct arena *arena)
{
	struct plan_lay *lay = lay_of_tile(arena, PLAN_PATTERN_MODULE, 297, 197, JOINT);
	lay_add_tile(arena, lay, 197, 197);
	lay_add_tile(arena, lay, 97, 97);
	lay_set_module(arena, lay, 100, 400, 400, 400);
	lay_add_piece(arena, lay, 0, 50, 60, false);
	lay_add_piece(arena, lay, 1, 50, 260, false);
	lay_add_piece(arena, lay, 2, 250, 260, false);
	lay_add_piece(arena, lay, 2, 250, 360, true);
	return lay;
}

static void make_samples(struct arena *arena, struct sample samples[SAMPLES])
{
	const struct sample all[SAMPLES] = {
		{"grid", lay_of_tile(arena, PLAN_PATTERN_GRID, 597, 297, JOINT), 1, 1},
		{"running", lay_of_tile(arena, PLAN_PATTERN_RUNNING, 597, 297, JOINT), 1, 2},
		{"herringbone 1 to 2", lay_of_tile(arena, PLAN_PATTERN_HERRINGBONE, 197, 97, JOINT),
	         2, 4},
		{"herringbone of no whole ratio",
	         lay_of_tile(arena, PLAN_PATTERN_HERRINGBONE, 250, 97, JOINT), 2, 4},
		{"herringbone in pairs", pairs(arena, 397, 97), 4, 8},
		{"basketweave", lay_of_tile(arena, PLAN_PATTERN_BASKETWEAVE, 197, 97, JOINT), 4, 6},
		{"pinwheel", pinwheel(arena), 2, 4},
		{"hexagon", lay_of_tile(arena, PLAN_PATTERN_HEXAGON, 200, 200, JOINT), 1, 2},
		{"own", own(arena), 4, 7}, /* one crossing, else three joints meet */
	};
	for (size_t k = 0; k < SAMPLES; k++)
		samples[k] = all[k];
}

static void each_sample(void (*check)(struct arena *, const struct sample *, const struct module *))
{
	struct arena *arena = arena_new();
	struct sample samples[SAMPLES];
	make_samples(arena, samples);
	for (size_t k = 0; k < SAMPLES; k++) {
		print_message("%s\n", samples[k].what);
		check(arena, &samples[k], module_from_lay(arena, samples[k].lay));
	}
	arena_free(arena);
}

static void check_areas(struct arena *arena, const struct sample *sample,
                        const struct module *module)
{
	(void)arena;
	double cells = 0;
	assert_int_equal(module->face_count, sample->faces);
	for (size_t f = 0; f < module->face_count; f++) {
		const struct face *face = &module->faces[f];
		const struct plan_tile *tile = sample->lay->tiles[face->tile];
		double wide = (double)tile->wide_nm / 1e6, tall = (double)tile->long_nm / 1e6;
		bool is_hexagon = sample->lay->pattern == PLAN_PATTERN_HEXAGON;
		double area = is_hexagon ? wide * wide * sqrt(3) / 2 : wide * tall;
		assert_near(face->area_mm2, area, 1e-6);
		cells += ring_area(face->cell);
	}
	assert_near(point_cross(module->a, module->b), cells, 1e-6);
}

static void test_cells_are_as_large_as_a_step(void **state)
{
	(void)state;
	each_sample(check_areas);
}

static double distance_between(struct ring a, struct ring b)
{
	double least = INFINITY;
	for (size_t i = 0; i < a.count; i++)
		for (size_t k = 0; k < b.count; k++)
			least = fmin(least,
			             segment_gap(segment_of_ring(a, i), segment_of_ring(b, k)));
	return least;
}

/* Nearest faces are a joint apart, and no face has another's middle in it. */
static void check_neighbours(struct arena *arena, const struct sample *sample,
                             const struct module *module)
{
	(void)sample;
	enum { REACH = 4 };
	struct point origin = {0, 0};
	for (int f = 0; f < (int)module->face_count; f++) {
		double least = INFINITY;
		for (int g = 0; g < (int)module->face_count; g++)
			for (int i = -REACH; i <= REACH; i++)
				for (int j = -REACH; j <= REACH; j++) {
					if (f == g && i == 0 && j == 0)
						continue;
					struct ring other =
						module_face_at(arena, module,
					                       (struct address){g, i, j}, origin);
					least = fmin(least, distance_between(module->faces[f].ring,
					                                     other));
					assert_false(ring_holds(module->faces[f].ring,
					                        ring_middle(other)));
				}
		assert_near(least, JOINT, 1e-6);
	}
}

static void test_neighbours_are_a_joint_apart(void **state)
{
	(void)state;
	each_sample(check_neighbours);
}

/* On the torus of one period vertices less edges and faces are none (Euler), and the borders
 * of all cells are the edges twice. */
static void check_network(struct arena *arena, const struct sample *sample,
                          const struct module *module)
{
	const struct network *network = network_from_module(arena, module);
	double edges = 0, borders = 0;
	assert_int_equal(network->vertex_count, sample->vertices);
	assert_int_equal(network->edge_count, network->vertex_count + module->face_count);
	for (size_t e = 0; e < network->edge_count; e++) {
		assert_true(network->edges[e].left.face >= 0);
		assert_true(network->edges[e].right.face >= 0);
		edges += network->edges[e].length;
	}
	for (size_t f = 0; f < module->face_count; f++)
		borders += ring_length(module->faces[f].cell);
	assert_near(2 * edges, borders, 1e-6);
}

static void test_the_network_closes(void **state)
{
	(void)state;
	each_sample(check_network);
}

/* "One tile" and the tile's width: of several sizes the greatest. */
static void test_widths(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct module *module = module_from_lay(arena, own(arena));
	assert_near(module->tile_long, 297, 0);
	assert_near(module->tile_width, 197, 0);
	module = module_from_lay(arena, lay_of_tile(arena, PLAN_PATTERN_HEXAGON, 200, 200, JOINT));
	assert_near(module->tile_long, 200, 0);
	assert_near(module->tile_width, 200, 0);
	arena_free(arena);
}

/* However long the steps of a module are stated, the rows run along u, the first piece at
 * the origin. */
static void test_steps_are_shortened(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct period *period = period_from_lay(arena, own(arena));
	assert_int_equal(period->a.x, 300 * 1000000LL);
	assert_int_equal(period->a.y, 0);
	assert_int_equal(period->b.x, 100 * 1000000LL);
	assert_int_equal(period->b.y, 400 * 1000000LL);
	assert_int_equal(period->cells[0].x, 0);
	assert_int_equal(period->cells[3].y, 300 * 1000000LL);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_cells_are_as_large_as_a_step),
		cmocka_unit_test(test_neighbours_are_a_joint_apart),
		cmocka_unit_test(test_the_network_closes),
		cmocka_unit_test(test_widths),
		cmocka_unit_test(test_steps_are_shortened),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

/* What walls see of patterns without courses: lanes worked by hand. */
#include "support/program.h"

#include "pattern/joint_rows.h"
#include "pattern/lanes.h"
#include "support/lays.h"

static struct arena *arena;

static int set_up(void **state)
{
	(void)state;
	arena = arena_new();
	return 0;
}

static int tear_down(void **state)
{
	(void)state;
	arena_free(arena);
	return 0;
}

/* Tile of 197 by 97 with a joint of 3: 200 by 100. A lane holds one lying, two standing. */
static void test_herringbone(void **state)
{
	(void)state;
	const struct module *module =
		module_from_lay(arena, lay_of_tile(arena, PLAN_PATTERN_HERRINGBONE, 197, 97, 3));
	for (int along_u = 0; along_u <= 1; along_u++) {
		const struct lanes *lanes = module_lanes(module, along_u);
		assert_near(lanes->period, 400, 1e-9);
		assert_near(lanes->across, 400, 1e-9);
		assert_int_equal(lanes->lane_count, 4);
		for (size_t k = 0; k < lanes->lane_count; k++) {
			const struct lane *lane = &lanes->lanes[k];
			int lying = 0;
			double sum = 0;
			assert_near(lane->to - lane->from, 100, 1e-9);
			assert_int_equal(lane->cell_count, 3);
			for (size_t c = 0; c < 3; c++) {
				double extent = lane->cells[c].to - lane->cells[c].from;
				lying += extent > 150;
				sum += extent;
			}
			assert_int_equal(lying, 1);
			assert_near(sum, 400, 1e-9);
		}
		/* No joint goes on from lane to lane. */
		assert_int_equal(lanes->border_count, 4);
		assert_int_equal(lanes->straight_count, 0);
		struct joint_rows rows = joint_rows_of(module, along_u);
		assert_false(rows.are_straight);
		assert_int_equal(rows.count, 4);
	}
}

/* Straight joints between the blocks, both ways. */
static void test_basketweave(void **state)
{
	(void)state;
	const struct module *module =
		module_from_lay(arena, lay_of_tile(arena, PLAN_PATTERN_BASKETWEAVE, 197, 97, 3));
	for (int along_u = 0; along_u <= 1; along_u++) {
		struct joint_rows rows = joint_rows_of(module, along_u);
		assert_true(rows.are_straight);
		assert_near(rows.period, 400, 1e-9);
		assert_int_equal(rows.count, 2);
		assert_near(rows.places[0], 0, 1e-9);
		assert_near(rows.places[1], 200, 1e-9);
	}
}

/* Along u flats lie between points; along v no lane has one cut all across. */
static void test_hexagons(void **state)
{
	(void)state;
	const struct module *module =
		module_from_lay(arena, lay_of_tile(arena, PLAN_PATTERN_HEXAGON, 197, 197, 3));
	const struct lanes *u = module->lanes_u, *v = module->lanes_v;
	int flat = 0;
	assert_near(u->period, 200, 1e-9);
	assert_near(u->across, 200 * sqrt(3), 1e-9);
	assert_int_equal(u->lane_count, 4);
	for (size_t k = 0; k < u->lane_count; k++)
		flat += !u->lanes[k].is_slanted;
	assert_int_equal(flat, 2);
	for (size_t k = 0; k < v->lane_count; k++)
		assert_true(v->lanes[k].is_slanted);
	assert_false(joint_rows_of(module, true).are_straight);
	assert_false(joint_rows_of(module, false).are_straight);
}

/* 254 to 101, joints included: it takes more cells to come back than a wall would show. */
static void test_too_long(void **state)
{
	(void)state;
	const struct module *module =
		module_from_lay(arena, lay_of_tile(arena, PLAN_PATTERN_HERRINGBONE, 251, 98, 3));
	assert_int_equal(module->lanes_u->lane_count, 0);
	assert_false(joint_rows_of(module, true).are_straight);
	assert_int_equal(joint_rows_of(module, true).count, 1);
}

static void test_cell_at(void **state)
{
	(void)state;
	const struct module *module =
		module_from_lay(arena, lay_of_tile(arena, PLAN_PATTERN_HERRINGBONE, 197, 97, 3));
	const struct lanes *lanes = module->lanes_u;
	const struct lane *lane = &lanes->lanes[0]; /* the lying tile begins at 0 */
	double offset;
	const struct lane_cell *cell = lane_cell_at(lanes, lane, -350, false, &offset);
	assert_near(cell->to - cell->from, 200, 1e-9);
	assert_near(offset, 50, 1e-9);
	/* On a border: the tile that begins there, or the one that ends there. */
	cell = lane_cell_at(lanes, lane, 400, false, &offset);
	assert_near(cell->to - cell->from, 200, 1e-9);
	assert_near(offset, 0, 1e-9);
	cell = lane_cell_at(lanes, lane, 400, true, &offset);
	assert_near(cell->to - cell->from, 100, 1e-9);
	assert_near(offset, 100, 1e-9);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_herringbone), cmocka_unit_test(test_basketweave),
		cmocka_unit_test(test_hexagons),    cmocka_unit_test(test_too_long),
		cmocka_unit_test(test_cell_at),
	};
	return cmocka_run_group_tests(tests, set_up, tear_down);
}

/* Whether a period fills the plane: where it does not, and which size would close it. */
#include "support/program.h"

#include "pattern/period_proof.h"
#include "support/lays.h"
#include "support/seed.h"

static const int64_t MM = 1000000;

static struct period_proof prove(struct arena *arena, const struct plan_lay *lay)
{
	return period_prove(arena, period_from_lay(arena, lay));
}

/* Herringbone and pinwheel fill the plane whatever the sizes. */
static void test_always_filled(void **state)
{
	(void)state;
	struct seed seed = seed_start("test_period_proof");
	struct arena *arena = arena_new();
	for (int k = 0; k < 200; k++) {
		int wide = 5 + seed_below(&seed, 300), more = seed_below(&seed, 900);
		struct plan_lay *lay = lay_of_tile(arena, PLAN_PATTERN_HERRINGBONE, wide + more,
		                                   wide, 1 + seed_below(&seed, 6));
		lay->in_pairs = 1 + seed_below(&seed, 2);
		assert_int_equal(prove(arena, lay).fault, PERIOD_FILLS);
		lay->pattern = PLAN_PATTERN_PINWHEEL;
		int small = 5 + seed_below(&seed, 300);
		lay_add_tile(arena, lay, small + seed_below(&seed, 300), small);
		assert_int_equal(prove(arena, lay).fault, PERIOD_FILLS);
	}
	arena_free(arena);
}

/* As many tiles with their joints as one is long: else a gap, and the long side that closes. */
static void test_basketweave(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	for (int tiles = 2; tiles <= 4; tiles++)
		for (int off = -9; off <= 9; off += 3) {
			int closes = tiles * 100 - 3;
			struct plan_lay *lay =
				lay_of_tile(arena, PLAN_PATTERN_BASKETWEAVE, closes + off, 97, 3);
			struct period_proof proof = prove(arena, lay);
			struct period_cure cure;
			assert_int_equal(proof.fault, off == 0 ? PERIOD_FILLS : PERIOD_GAPS);
			if (off == 0)
				continue;
			assert_int_equal(proof.size_nm, abs(off) * MM);
			assert_true(period_find_cure(arena, lay, proof, &cure));
			assert_int_equal(cure.side, PERIOD_LONG);
			assert_int_equal(cure.size_nm, closes * MM);
		}
	arena_free(arena);
}

/* Two squares beside a rectangle: fills the plane where both are 97. */
static struct plan_lay *module_of_three(struct arena *arena, int tile_long, int small)
{
	struct plan_lay *lay = lay_of_tile(arena, PLAN_PATTERN_MODULE, tile_long, 197, 3);
	lay_add_tile(arena, lay, small, small);
	lay_set_module(arena, lay, 400, 0, 0, 200);
	lay_add_piece(arena, lay, 0, 0, 0, false);
	lay_add_piece(arena, lay, 1, 300, 0, false);
	lay_add_piece(arena, lay, 1, 300, 100, false);
	return lay;
}

static void test_gap_in_a_module(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct plan_lay *lay = module_of_three(arena, 293, 97);
	struct period_proof proof = prove(arena, lay);
	struct period_cure cure;
	assert_int_equal(proof.fault, PERIOD_GAPS);
	assert_int_equal(proof.first, 0);
	assert_int_equal(proof.size_nm, 4 * MM);
	assert_int_equal(proof.x, 296 * MM);
	assert_true(period_find_cure(arena, lay, proof, &cure));
	assert_int_equal(cure.tile, 0);
	assert_int_equal(cure.size_nm, 297 * MM);
	arena_free(arena);
}

static void test_overlap_in_a_module(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct plan_lay *lay = module_of_three(arena, 297, 102);
	struct period_proof proof = prove(arena, lay);
	struct period_cure cure;
	assert_int_equal(proof.fault, PERIOD_OVERLAPS);
	assert_int_equal(proof.size_nm, 5 * MM);
	assert_true(period_find_cure(arena, lay, proof, &cure));
	assert_int_equal(cure.side, PERIOD_WIDE); /* a square stays one */
	assert_int_equal(cure.tile, 1);
	assert_int_equal(cure.size_nm, 97 * MM);
	arena_free(arena);
}

/* A nanometre is enough: nothing is rounded. */
static void test_exact(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct plan_lay *lay = module_of_three(arena, 297, 97);
	assert_int_equal(prove(arena, lay).fault, PERIOD_FILLS);
	lay->module->steps[0].x_nm += 1;
	assert_int_equal(prove(arena, lay).fault, PERIOD_GAPS);
	assert_int_equal(prove(arena, lay).size_nm, 1);
	lay->module->steps[0].x_nm -= 2;
	assert_int_equal(prove(arena, lay).fault, PERIOD_OVERLAPS);
	assert_int_equal(prove(arena, lay).size_nm, 1);
	arena_free(arena);
}

static void test_flat(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct plan_lay *lay = lay_of_tile(arena, PLAN_PATTERN_MODULE, 297, 197, 3);
	lay_set_module(arena, lay, 300, 200, -900, -600);
	lay_add_piece(arena, lay, 0, 0, 0, false);
	assert_int_equal(prove(arena, lay).fault, PERIOD_FLAT);
	arena_free(arena);
}

/* One nail through every whole millimetre of a square: in just one cell each, or the proof
 * says that it is not so. The nails stand at half millimetres, between all borders. */
static int nails_amiss(const struct period *period, int side)
{
	int amiss = 0;
	for (int x = 0; x < side; x++)
		for (int y = 0; y < side; y++) {
			int hit = 0;
			for (size_t c = 0; c < period->count; c++)
				for (int i = -9; i <= 9; i++)
					for (int j = -9; j <= 9; j++) {
						const struct period_cell *cell = &period->cells[c];
						int64_t left =
							cell->x + i * period->a.x + j * period->b.x;
						int64_t low =
							cell->y + i * period->a.y + j * period->b.y;
						int64_t nx = x * MM + MM / 2, ny = y * MM + MM / 2;
						hit += nx > left && nx < left + cell->wide &&
						       ny > low && ny < low + cell->deep;
					}
			amiss += hit != 1;
		}
	return amiss;
}

/* Small modules with one number changed at random, against nails. */
static void test_against_nails(void **state)
{
	(void)state;
	struct seed seed = seed_start("test_period_proof, nails");
	int filled = 0, not_filled = 0;
	for (int k = 0; k < 60; k++) {
		struct arena *arena = arena_new();
		struct plan_lay *lay = lay_of_tile(arena, PLAN_PATTERN_MODULE, 7, 3, 1);
		int off[4] = {0, 0, 0, 0};
		off[seed_below(&seed, 4)] = seed_below(&seed, 5) - 2;
		lay_add_tile(arena, lay, 3, 3);
		lay_set_module(arena, lay, 12 + off[0], 0, 4 + off[1], 4 + off[2]);
		lay_add_piece(arena, lay, 0, 0, 0, false);
		lay_add_piece(arena, lay, 1, 8 + off[3], 0, false);
		const struct period *period = period_from_lay(arena, lay);
		bool is_filled = period_prove(arena, period).fault == PERIOD_FILLS;
		assert_int_equal(is_filled, nails_amiss(period, 16) == 0);
		filled += is_filled;
		not_filled += !is_filled;
		arena_free(arena);
	}
	assert_true(filled > 5 && not_filled > 5);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_always_filled),   cmocka_unit_test(test_basketweave),
		cmocka_unit_test(test_gap_in_a_module), cmocka_unit_test(test_overlap_in_a_module),
		cmocka_unit_test(test_exact),           cmocka_unit_test(test_flat),
		cmocka_unit_test(test_against_nails),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

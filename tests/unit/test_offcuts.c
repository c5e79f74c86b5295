/* Cut pieces: which come out of one tile, and how much cutting they are. */
#include "count/offcuts.h"

#include "count/cuts.h"
#include "support/laid.h"
#include "support/program.h"
#include "support/seed.h"

static struct arena *arena;

static int start(void **state)
{
	(void)state;
	arena = arena_new();
	return 0;
}

static int end(void **state)
{
	(void)state;
	arena_free(arena);
	return 0;
}

static void two_of_one_tile_where_they_fit(void **state)
{
	(void)state;
	double sizes[] = {100, 100, 197, 200};
	/* 200 and 100 are 300 without a kerf: with one they do not fit into 300. */
	assert_int_equal(offcuts_pairs_of(sizes, 4, 300, 3), 3);
	assert_int_equal(offcuts_pairs_of(sizes, 4, 303, 3), 2);
	assert_int_equal(offcuts_pairs_of(sizes, 0, 300, 3), 0);
	double halves[] = {150, 150};
	assert_int_equal(offcuts_pairs_of(halves, 2, 300, 3), 2);
	assert_int_equal(offcuts_pairs_of(halves, 2, 300, 0), 1);
}

static void one_of_either_side_where_tile_has_a_direction(void **state)
{
	(void)state;
	double low[] = {100, 100}, none[] = {0};
	assert_int_equal(offcuts_pairs_between(low, 2, none, 0, 300, 3), 2);
	double high[] = {190, 250};
	assert_int_equal(offcuts_pairs_between(low, 2, high, 2, 300, 3), 3);
}

/* Every way to pair, for lists short enough. */
static size_t least_bins(const double *sizes, unsigned left, size_t count, double room, double kerf)
{
	size_t first = 0, least;
	while (first < count && !(left & 1u << first))
		first++;
	if (first == count)
		return 0;
	left &= ~(1u << first);
	least = 1 + least_bins(sizes, left, count, room, kerf);
	for (size_t k = first + 1; k < count; k++) {
		if (!(left & 1u << k) || sizes[first] + sizes[k] + kerf > room + 1e-7)
			continue;
		size_t bins = 1 + least_bins(sizes, left & ~(1u << k), count, room, kerf);
		least = bins < least ? bins : least;
	}
	return least;
}

static void pairing_is_the_least_there_is(void **state)
{
	(void)state;
	struct seed seed = seed_start("pairing");
	for (int round = 0; round < 200; round++) {
		double sizes[8], copy[8];
		size_t count = 1 + (size_t)seed_below(&seed, 8);
		for (size_t k = 0; k < count; k++)
			copy[k] = sizes[k] = 10 + seed_below(&seed, 290);
		assert_int_equal(offcuts_pairs_of(copy, count, 300, 3),
		                 least_bins(sizes, (1u << count) - 1, count, 300, 3));
	}
}

/* 2400 x 1500 of 300 mm tile that starts 100 in: 7 whole and two cuts of 297 less the gap a
 * row; corners take a tile each. */
static void a_room_is_paired_by_its_walls(void **state)
{
	(void)state;
	const struct placed_lay *lay = laid_room(arena, 2400, 1500, 300, "", "");
	struct offcut_total total = offcuts_pair(lay, 0, 3);
	long pieces = 0;
	double area = 0;
	for (size_t p = 0; p < lay->tiling->panel_count; p++) {
		pieces += (long)lay->tiling->panels[p].piece_count;
		for (size_t i = 0; i < lay->tiling->panels[p].piece_count; i++)
			area += lay->tiling->panels[p].pieces[i].area_mm2;
	}
	assert_int_equal(total.pieces, pieces);
	assert_true(total.tiles < total.pieces);
	assert_true(total.tiles >= total.bound);
	assert_true(total.bound >= (long)(area / total.face_mm2));
	assert_true(total.tiles >= 4);
}

static struct tile_piece piece_of(struct point *points, size_t count)
{
	return (struct tile_piece){.ring = {points, count}};
}

static void cutting_is_told_by_kind(void **state)
{
	(void)state;
	struct point tile[] = {{0, 0}, {300, 0}, {300, 300}, {0, 300}};
	struct ring face = {tile, 4};
	struct point straight[] = {{0, 0}, {100, 0}, {100, 300}, {0, 300}};
	struct point taper[] = {{0, 0}, {100, 0}, {140, 300}, {0, 300}};
	struct point notch[] = {{0, 0}, {300, 0}, {300, 300}, {200, 300}, {200, 200}, {0, 200}};
	struct point hole[] = {{100, 100}, {100, 150}, {150, 150}, {150, 100}};
	struct ring holes[] = {{hole, 4}};
	struct cut_total total = {0};
	struct tile_piece piece = piece_of(straight, 4);
	cuts_add_piece(&total, face, &piece);
	assert_near(total.length[CUT_STRAIGHT], 300, 1e-9);
	piece = piece_of(taper, 4);
	cuts_add_piece(&total, face, &piece);
	assert_near(total.length[CUT_TAPER], 302.6549, 1e-4);
	piece = piece_of(notch, 6);
	cuts_add_piece(&total, face, &piece);
	assert_near(total.length[CUT_NOTCH], 300, 1e-9);
	piece = piece_of(tile, 4);
	piece.holes = holes;
	piece.hole_count = 1;
	cuts_add_piece(&total, face, &piece);
	assert_near(total.length[CUT_HOLE], 200, 1e-9);
	assert_near(total.length[CUT_STRAIGHT], 300, 1e-9);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(two_of_one_tile_where_they_fit),
		cmocka_unit_test(one_of_either_side_where_tile_has_a_direction),
		cmocka_unit_test(pairing_is_the_least_there_is),
		cmocka_unit_test(a_room_is_paired_by_its_walls),
		cmocka_unit_test(cutting_is_told_by_kind),
	};
	return cmocka_run_group_tests(tests, start, end);
}

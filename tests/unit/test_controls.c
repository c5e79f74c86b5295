/* Control lines: on tile edges, square to each other, clear, measured from named walls. */
#include "support/program.h"

#include <string.h>

#include "geometry/clip.h"
#include "geometry/tolerance.h"
#include "support/laid.h"

struct sample {
	const char *what;
	const char *more, *cracks;
	int wide, deep, tile;
};

static const struct sample SAMPLES[] = {
	{"plain", "", "", 3200, 2400, 297},
	{"large tile", "", "", 6000, 4100, 597},
	{"narrow", "", "", 1100, 4000, 297},
	{"column in the middle",
         "<obstacle id='C1' kind='column' x='1600' y='1200' wide='500' deep='500'/>", "", 3200,
         2400, 297},
	{"hold in the middle", "",
         "<crack id='K1' width='1mm' step='2mm'><at x='1450' y='1050'/>"
         "<at x='1750' y='1350'/></crack>",
         3200, 3600, 297},
	{"doorway", "<doorway id='D1' wall='west' from='500' width='900'/>", "", 3200, 2400, 297},
};
enum { SAMPLE_COUNT = sizeof SAMPLES / sizeof *SAMPLES };

static const struct placed_lay *lay_sample(struct arena *arena, const struct sample *sample)
{
	return laid_room(arena, sample->wide, sample->deep, sample->tile, sample->more,
	                 sample->cracks);
}

static double clear_share(struct arena *arena, const struct placed_lay *lay, struct segment line)
{
	size_t count;
	double share = 0;
	const struct stretch *on = clip_segment(arena, line, &lay->field->ground, &count);
	for (size_t k = 0; k < count; k++)
		share += on[k].to - on[k].from;
	for (size_t h = 0; h < lay->cracks->hold_count; h++) {
		on = clip_segment(arena, line, &lay->cracks->holds[h].region, &count);
		for (size_t k = 0; k < count; k++)
			share -= on[k].to - on[k].from;
	}
	return share;
}

/* L1 and L5: the crossing is a corner of the first tile, on the side away from the work. */
static void check_first(struct arena *arena, const struct placed_lay *lay, const char *what)
{
	const struct first_tile *first = &lay->controls->firsts[0];
	struct tile_ref tile = {first->panel, first->tile, NULL};
	struct box box = ring_box(tile_ref_ring(arena, lay->tiling, tile));
	if (!panel_has_tile(&lay->tiling->panels[first->panel], first->tile))
		fail_msg("%s: the first tile is none", what);
	assert_near(first->at.x, first->towards_u ? box.x0 : box.x1, TOLERANCE_SAME);
	assert_near(first->at.y, first->towards_v ? box.y0 : box.y1, TOLERANCE_SAME);
	for (size_t h = 0; h < lay->cracks->hold_count; h++)
		assert_false(region_holds(&lay->cracks->holds[h].region, first->at));
}

/* L4: both offsets are square to the wall they name and end on the line. */
static void check_offsets(const struct control *control)
{
	struct segment line = {control->from, control->to};
	assert_int_equal(control->offset_count, 2);
	for (size_t k = 0; k < 2; k++) {
		const struct control_offset *offset = &control->offsets[k];
		assert_near(segment_distance(line, offset->at_line), 0, 1e-6);
		assert_near(point_distance(offset->at_wall, offset->at_line), offset->distance,
		            1e-6);
		struct point way = point_sub(offset->at_line, offset->at_wall);
		assert_near(control->along_u ? way.x : way.y, 0, 1e-6);
	}
	assert_true(point_distance(control->offsets[0].at_line, control->offsets[1].at_line) > 300);
}

/* L1, L2, L4, L5. Each of these rooms has tile edges that are clear from wall to wall. */
static void test_samples(void **state)
{
	(void)state;
	for (size_t s = 0; s < SAMPLE_COUNT; s++) {
		struct arena *arena = arena_new();
		const struct placed_lay *lay = lay_sample(arena, &SAMPLES[s]);
		assert_int_equal(lay->controls->control_count, 2);
		assert_int_equal(lay->controls->first_count, 1);
		check_first(arena, lay, SAMPLES[s].what);
		const struct point at = lay->controls->firsts[0].at;
		for (size_t k = 0; k < 2; k++) {
			const struct control *control = &lay->controls->controls[k];
			struct segment line = {control->from, control->to};
			assert_int_equal(control->along_u, k == 0);
			assert_near(segment_distance(line, at), 0, 1e-6);
			if (clear_share(arena, lay, line) < 1 - 1e-6)
				fail_msg("%s: %s is not clear", SAMPLES[s].what, control->id);
			check_offsets(control);
		}
		arena_free(arena);
	}
}

/* L2: 24 in from a wall beside it where the room allows; in a narrow room nothing does. */
static void test_clear_of_walls(void **state)
{
	(void)state;
	for (size_t s = 0; s < SAMPLE_COUNT; s++) {
		struct arena *arena = arena_new();
		const struct placed_lay *lay = lay_sample(arena, &SAMPLES[s]);
		struct point at = lay->controls->firsts[0].at;
		double beside = fmin(at.x, SAMPLES[s].wide - at.x);
		if (strcmp(SAMPLES[s].what, "narrow") == 0)
			assert_true(beside > 300);
		else
			assert_true(beside >= 24 * 25.4 - 1e-6);
		assert_true(fmin(at.y, SAMPLES[s].deep - at.y) >= 24 * 25.4 - 1e-6);
		arena_free(arena);
	}
}

/* The largest triangle: one step more fits nowhere on the two lines. */
static void test_square(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = lay_sample(arena, &SAMPLES[0]);
	const struct first_tile *first = &lay->controls->firsts[0];
	double u = fmax(first->at.x, 3200 - first->at.x), v = fmax(first->at.y, 2400 - first->at.y);
	double most = fmax(fmin(u / 3, v / 4), fmin(u / 4, v / 3));
	assert_near(first->square_side, floor(most / 300) * 300, 1e-6);
	assert_near(point_distance(first->square_u, first->square_v), 5 * first->square_side, 1e-6);
	arena_free(arena);
}

static void test_towards_exit(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct placed_lay *lay = lay_sample(arena, &SAMPLES[SAMPLE_COUNT - 1]);
	/* The west wall runs south: its doorway lies from y 1000 to 1900. */
	assert_false(lay->controls->firsts[0].towards_u);
	assert_true(lay->controls->firsts[0].towards_v);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_samples),
		cmocka_unit_test(test_clear_of_walls),
		cmocka_unit_test(test_square),
		cmocka_unit_test(test_towards_exit),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

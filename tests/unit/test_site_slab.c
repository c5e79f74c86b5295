/* Slabs with a region of their own under a room of 6 m by 4 m. */
#include "support/program.h"

#include "support/sketch.h"

static void test_own_slab_everywhere(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	sketch_add_slab(s, 9000, 0, 1000, 1000);
	const struct site *site = sketch_build_sound(s);
	const struct site_room *room = &site->rooms[0];
	assert_int_equal(room->slab_part_count, 1);
	assert_ptr_equal(room->slab_parts[0].slab, &s->slabs[0]);
	assert_near(region_area(&room->slab_parts[0].ground), 24e6, 1e-3);
	assert_true(site_room_is_on(room, &s->slabs[0]));
	assert_false(site_room_is_on(room, &s->slabs[1]));
	sketch_free(s);
}

/* An infill across the room, and one that takes the rest of it but for a corner. */
static void test_parts_on_their_slabs(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(true);
	sketch_add_slab(s, 2000, -500, 600, 5000)->exposure = PLAN_EXPOSURE_OUTDOOR;
	sketch_add_slab(s, 2600, 1000, 9000, 3000)->heated = true;
	const struct site *site = sketch_build_sound(s);
	const struct site_room *room = &site->rooms[0];
	assert_int_equal(room->slab_part_count, 3);
	const double areas[] = {600.0 * 4000, 3400.0 * 3000, 2000.0 * 4000 + 3400.0 * 1000};
	const size_t slabs[] = {1, 2, 0};
	for (size_t i = 0; i < 3; i++) {
		assert_ptr_equal(room->slab_parts[i].slab, &s->slabs[slabs[i]]);
		assert_near(region_area(&room->slab_parts[i].ground), areas[i], 1e-3);
		assert_int_equal(room->slab_parts[i].heated, i == 1);
	}
	assert_ptr_equal(site_slab_at(site, room, (struct point){2300, 50}), &s->slabs[1]);
	assert_ptr_equal(site_slab_at(site, room, (struct point){4000, 1500}), &s->slabs[2]);
	assert_ptr_equal(site_slab_at(site, room, (struct point){4000, 500}), &s->slabs[0]);
	assert_true(site_room_is_exposed(room, PLAN_EXPOSURE_OUTDOOR));
	assert_true(site_room_is_exposed(room, PLAN_EXPOSURE_INDOOR));
	assert_false(site_room_is_exposed(room, PLAN_EXPOSURE_WET));
	sketch_free(s);
}

/* What the room says of itself holds on each of its slabs. */
static void test_room_overrides_its_slabs(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	sketch_add_slab(s, 0, 0, 1000, 4000)->exposure = PLAN_EXPOSURE_OUTDOOR;
	s->slabs[1].heated = true;
	s->room.exposure = PLAN_EXPOSURE_WET;
	s->room.has_own_heated = true;
	const struct site_room *room = &sketch_build_sound(s)->rooms[0];
	assert_int_equal(room->slab_part_count, 2);
	for (size_t i = 0; i < 2; i++) {
		assert_int_equal(room->slab_parts[i].exposure, PLAN_EXPOSURE_WET);
		assert_false(room->slab_parts[i].heated);
	}
	sketch_free(s);
}

static void test_slab_over_slab(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	sketch_add_slab(s, 0, 0, 1000, 4000);
	sketch_add_slab(s, 1000, 0, 1000, 4000);
	sketch_build_sound(s);
	sketch_free(s);
	s = sketch_of_rectangle(false);
	sketch_add_slab(s, 0, 0, 1001, 4000);
	sketch_add_slab(s, 1000, 0, 1000, 4000);
	sketch_build_broken(s, 72, "lies over slab \"S1\"");
	sketch_free(s);
}

static void test_slab_that_meets_itself(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	sketch_add_slab(s, 0, 0, 1000, 4000);
	s->slabs[1].corners[1].x_nm = SKETCH_NM(-3000);
	s->slabs[1].corners[1].y_nm = SKETCH_NM(2000);
	sketch_build_broken(s, 71, "meets its side");
	sketch_free(s);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_own_slab_everywhere),
		cmocka_unit_test(test_parts_on_their_slabs),
		cmocka_unit_test(test_room_overrides_its_slabs),
		cmocka_unit_test(test_slab_over_slab),
		cmocka_unit_test(test_slab_that_meets_itself),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

/* Seeded: E-S1, brute force over one lattice cell finds no better position than the search;
 * E-S2, no wall moved by the tolerance shows a cut below smallest-cut-worst; E-S3, opposite
 * cuts of a plain rectangle in grid are alike and at least half a tile. */
#include <stdlib.h>
#include <string.h>

#include "layout/position.h"
#include "support/program.h"
#include "support/rooms.h"
#include "units/number.h"

/* 20 rooms in make test, 200 in make test-long. */
static int rooms_to_try(void)
{
	return getenv("JURYSTICK_LONG") ? 200 : 20;
}

/* The position with the grid pinned, on a plan that is otherwise the same. */
static const struct position *pinned(struct arena *arena, const struct site *site,
                                     const struct rules *rules, const struct module *module,
                                     const struct field *field, double u, double v)
{
	(void)site;
	struct point at = frame_out(field->frame, (struct point){u, v});
	struct plan_start start = {.x_nm = llround(at.x * 1e6), .y_nm = llround(at.y * 1e6)};
	struct plan_lay *lay = ARENA_NEW(arena, struct plan_lay);
	struct field *copy = ARENA_NEW(arena, struct field);
	*lay = *field->lay;
	lay->start = &start;
	*copy = *field;
	copy->lay = lay;
	return position_search(arena, copy, module, rules);
}

static void brute_force(const struct random_room *room)
{
	struct arena *arena = arena_new();
	const struct site *site = site_from_text(arena, random_room_text(arena, room, ""));
	const struct rules *rules = rules_for_tests(arena);
	const struct plan_lay *lay = &site->plan->lays[0];
	const struct field *field = field_place(arena, site, rules, lay, NULL);
	const struct module *module = module_from_lay(arena, lay);
	const struct position *best = position_search(arena, field, module, rules);
	struct point corner = frame_in(field->frame, site->rooms[0].outline.points[0]);
	/* Printed positions are whole millimetres from the first corner to a face's edge. */
	for (double u = 0; u < module->pitch; u += 1)
		for (double v = 0; v < module->course; v += 1) {
			struct arena *scratch = arena_new();
			const struct position *other = pinned(scratch, site, rules, module, field,
			                                      corner.x + u - module->joint / 2,
			                                      corner.y + v - module->joint / 2);
			if (position_key_compare(other->key, best->key) < 0)
				fail_msg("u %.1f v %.1f is better: small %.6f under %.6f, balance "
				         "%.6f under %.6f",
				         u, v, other->key.small, best->key.small,
				         other->key.balance, best->key.balance);
			arena_free(scratch);
		}
	arena_free(arena);
}

static void test_brute_force_finds_nothing_better(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_setting_out E-S1");
	for (int i = 0; i < rooms_to_try(); i++) {
		struct random_room room = random_room(&seed, i, 75);
		brute_force(&room);
	}
}

/* Moves the wall from corner i to the next out of the room (or into it) by `by`. */
static void move_wall(struct random_room *room, size_t i, double by)
{
	size_t next = (i + 1) % room->corner_count;
	struct point along = point_unit(point_sub(room->corners[next], room->corners[i]));
	struct point out = point_scale(point_left(along), -by);
	room->corners[i] = point_add(room->corners[i], out);
	room->corners[next] = point_add(room->corners[next], out);
}

static const struct position *position_of_room(struct arena *arena, const struct random_room *room,
                                               const char *start, struct point *out_start)
{
	const struct site *site = site_from_text(arena, random_room_text(arena, room, start));
	const struct rules *rules = rules_for_tests(arena);
	const struct plan_lay *lay = &site->plan->lays[0];
	const struct field *field = field_place(arena, site, rules, lay, NULL);
	const struct position *position =
		position_search(arena, field, module_from_lay(arena, lay), rules);
	*out_start = frame_out(field->frame, position->parts[0]);
	return position;
}

static void test_moved_walls_keep_the_worst_cut(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_setting_out E-S2");
	const double tolerance = 3; /* of random_room_text */
	for (int i = 0; i < rooms_to_try(); i++) {
		struct random_room room =
			random_room(&seed, i % 4, 300); /* the fifth shape has a skew wall */
		struct arena *arena = arena_new();
		struct point at, ignored;
		double worst = position_of_room(arena, &room, "", &at)->smallest_cut_worst;
		const char *start =
			arena_printf(arena, "<start x=\"%s\" y=\"%s\"/>",
		                     number_text(arena, at.x, 6), number_text(arena, at.y, 6));
		for (size_t wall = 0; wall < room.corner_count; wall++)
			for (int way = -1; way <= 1; way += 2) {
				struct random_room moved = room;
				move_wall(&moved, wall, way * tolerance);
				double cut = position_of_room(arena, &moved, start, &ignored)
				                     ->smallest_cut;
				if (cut < worst - 1e-3)
					fail_msg("room %d, wall %zu moved by %+.0f: cut %.3f "
					         "under %.3f\n%s",
					         i, wall, way * tolerance, cut, worst,
					         random_room_text(arena, &moved, start));
			}
		arena_free(arena);
	}
}

static void test_plain_rectangle_is_balanced(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_setting_out E-S3");
	for (int i = 0; i < rooms_to_try(); i++) {
		struct random_room room = random_room(&seed, 0, 300);
		room.pattern = "pattern=\"grid\"";
		struct arena *arena = arena_new();
		struct point ignored;
		const struct position *position = position_of_room(arena, &room, "", &ignored);
		assert_int_equal(position->cut_count, 4);
		for (size_t wall = 0; wall < 2; wall++) {
			const struct border_cut *a = &position->cuts[wall],
						*b = &position->cuts[wall + 2];
			assert_near(a->least, b->least, 1); /* the printed step */
			assert_true(a->least >= a->whole / 2 - 1);
		}
		arena_free(arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_brute_force_finds_nothing_better),
		cmocka_unit_test(test_moved_walls_keep_the_worst_cut),
		cmocka_unit_test(test_plain_rectangle_is_balanced),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

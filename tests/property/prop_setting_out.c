/* Seeded: E-S1, brute force over one lattice cell finds no better position than the search;
 * E-S2, no wall moved by the tolerance shows a cut below smallest-cut-worst; E-S3, opposite
 * cuts of a plain rectangle in grid are alike and at least half a tile. */
#include <stdlib.h>
#include <string.h>

#include "base/strbuf.h"
#include "layout/position.h"
#include "pattern/lanes.h"
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

/* Every printed position of one lattice cell, and more where `period` spans several. Printed
 * positions are whole millimetres from the first corner to a face's edge. */
static void brute_force(const char *text, struct point (*period)(const struct module *))
{
	struct arena *arena = arena_new();
	const struct site *site = site_from_text(arena, text);
	const struct rules *rules = rules_for_tests(arena);
	const struct plan_lay *lay = &site->plan->lays[0];
	const struct field *field = field_place(arena, site, rules, lay, NULL);
	const struct module *module = module_from_lay(arena, lay);
	const struct position *best = position_search(arena, field, module, rules);
	struct point corner = frame_in(field->frame, site->rooms[0].outline.points[0]);
	struct point cell = period(module);
	for (double u = 0; u < cell.x; u += 1)
		for (double v = 0; v < cell.y; v += 1) {
			struct arena *scratch = arena_new();
			const struct position *other = pinned(scratch, site, rules, module, field,
			                                      corner.x + u - module->joint / 2,
			                                      corner.y + v - module->joint / 2);
			if (position_key_compare(other->key, best->key) < 0)
				fail_msg("u %.1f v %.1f is better: small %.6f under %.6f, balance "
				         "%.6f under %.6f\n%s",
				         u, v, other->key.small, best->key.small,
				         other->key.balance, best->key.balance, text);
			arena_free(scratch);
		}
	arena_free(arena);
}

static struct point period_of_courses(const struct module *module)
{
	return (struct point){module->pitch, module->course};
}

static struct point period_of_lanes(const struct module *module)
{
	const struct lanes *u = module_lanes(module, true), *v = module_lanes(module, false);
	assert_true(u->lane_count > 0 && v->lane_count > 0);
	return (struct point){u->period, v->period};
}

static void test_brute_force_finds_nothing_better(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_setting_out E-S1");
	for (int i = 0; i < rooms_to_try(); i++) {
		struct random_room room = random_room(&seed, i, 75);
		struct arena *arena = arena_new();
		brute_force(random_room_text(arena, &room, ""), period_of_courses);
		arena_free(arena);
	}
}

/* ---- patterns without courses ---- */

static const struct {
	const char *tiles, *lay;
} PATTERNS[] = {
	{"<tile id='A' kind='stone' wide='17' long='37' thick='9'/>",
         "tile='A' pattern='herringbone'"},
	{"<tile id='A' kind='stone' wide='12' long='42' thick='9'/>",
         "tile='A' pattern='herringbone' in-pairs='2'"},
	{"<tile id='A' kind='stone' wide='17' long='57' thick='9'/>",
         "tile='A' pattern='basketweave'"},
	{"<tile id='A' kind='stone' wide='37' thick='9'/>"
         "<tile id='B' kind='stone' wide='17' thick='9'/>",
         "tile='A B' pattern='pinwheel'"},
	{"<tile id='A' kind='stone' wide='27' long='37' thick='9'/>"
         "<tile id='B' kind='stone' wide='17' thick='9'/>"
         "<module id='P'><piece tile='A' x='0' y='0'/><piece tile='B' x='40' y='0'/>"
         "<piece tile='B' x='40' y='20'/><step x='60' y='0'/><step x='20' y='40'/></module>",
         "tile='A B' pattern='module' module='P'"},
};
enum { PATTERN_COUNT = sizeof PATTERNS / sizeof *PATTERNS };

static const char *text_of_pattern(struct arena *arena, const struct random_room *room, int pattern,
                                   const char *start)
{
	struct strbuf text = strbuf_in(arena);
	strbuf_add(&text, "<floor version='1' unit='mm'><slab id='S' thickness='150' "
	                  "support='ground' exposure='indoor'/><room id='R' slab='S'><corners>");
	for (size_t i = 0; i < room->corner_count; i++)
		strbuf_printf(&text, "<corner x='%s' y='%s'/>",
		              number_text(arena, room->corners[i].x, 6),
		              number_text(arena, room->corners[i].y, 6));
	strbuf_printf(&text,
	              "</corners></room>%s<lay id='L' rooms='R' joint='3' tolerance='3' %s>%s"
	              "</lay></floor>",
	              PATTERNS[pattern].tiles, PATTERNS[pattern].lay, start);
	return text.text;
}

static void test_nor_in_patterns_without_courses(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_setting_out E-S1 patterns");
	int rooms = getenv("JURYSTICK_LONG") ? 20 : 1;
	for (int i = 0; i < rooms * PATTERN_COUNT; i++) {
		struct random_room room = random_room(&seed, i, 75);
		struct arena *arena = arena_new();
		brute_force(text_of_pattern(arena, &room, i % PATTERN_COUNT, ""), period_of_lanes);
		arena_free(arena);
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

static const struct position *position_of_text(struct arena *arena, const char *text,
                                               struct point *out_start)
{
	const struct site *site = site_from_text(arena, text);
	const struct rules *rules = rules_for_tests(arena);
	const struct plan_lay *lay = &site->plan->lays[0];
	const struct field *field = field_place(arena, site, rules, lay, NULL);
	const struct position *position =
		position_search(arena, field, module_from_lay(arena, lay), rules);
	*out_start = frame_out(field->frame, position->parts[0]);
	return position;
}

typedef const char *text_of_room(struct arena *, const struct random_room *, int pattern,
                                 const char *start);

static const char *text_of_courses(struct arena *arena, const struct random_room *room, int pattern,
                                   const char *start)
{
	(void)pattern;
	return random_room_text(arena, room, start);
}

/* Every wall alone, out and in. */
static void move_each_wall(const struct random_room *room, text_of_room *text_of, int pattern)
{
	const double tolerance = 3; /* of the texts */
	struct arena *arena = arena_new();
	struct point at, ignored;
	double worst =
		position_of_text(arena, text_of(arena, room, pattern, ""), &at)->smallest_cut_worst;
	const char *start = arena_printf(arena, "<start x=\"%s\" y=\"%s\"/>",
	                                 number_text(arena, at.x, 6), number_text(arena, at.y, 6));
	for (size_t wall = 0; wall < room->corner_count; wall++)
		for (int way = -1; way <= 1; way += 2) {
			struct random_room moved = *room;
			move_wall(&moved, wall, way * tolerance);
			const char *text = text_of(arena, &moved, pattern, start);
			double cut = position_of_text(arena, text, &ignored)->smallest_cut;
			if (cut < worst - 1e-3)
				fail_msg("wall %zu moved by %+.0f: cut %.3f under %.3f\n%s", wall,
				         way * tolerance, cut, worst, text);
		}
	arena_free(arena);
}

static void test_moved_walls_keep_the_worst_cut(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_setting_out E-S2");
	for (int i = 0; i < rooms_to_try(); i++) {
		struct random_room room =
			random_room(&seed, i % 4, 300); /* the fifth shape has a skew wall */
		move_each_wall(&room, text_of_courses, 0);
	}
}

static void test_moved_walls_in_patterns(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_setting_out E-S2 patterns");
	for (int i = 0; i < rooms_to_try(); i++) {
		struct random_room room = random_room(&seed, i % 4, 150);
		move_each_wall(&room, text_of_pattern, i % PATTERN_COUNT);
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
		const struct position *position =
			position_of_text(arena, random_room_text(arena, &room, ""), &ignored);
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
		cmocka_unit_test(test_nor_in_patterns_without_courses),
		cmocka_unit_test(test_moved_walls_keep_the_worst_cut),
		cmocka_unit_test(test_moved_walls_in_patterns),
		cmocka_unit_test(test_plain_rectangle_is_balanced),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

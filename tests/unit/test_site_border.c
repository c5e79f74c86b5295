/* What a room shows to the layout, and all errors of a plan at once. */
#include "support/program.h"

#include "support/sketch.h"

#define COUNT(array) (sizeof(array) / sizeof *(array))

static void assert_at(struct point p, double x, double y)
{
	assert_near(p.x, x, 1e-9);
	assert_near(p.y, y, 1e-9);
}

/* ---- all errors at once ---- */

static void test_every_error_of_a_plan(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(true);
	sketch_add_box(s, 9000, 9000, 300, 300, 0);
	sketch_add_doorway(s, "bay.1", 3500, 900);
	sketch_add_doorway(s, "bay.2", 1000, 900);
	sketch_add_doorway(s, "bay.2", 1500, 900);
	sketch_add_crack(s, (const struct point[]){{1000, 1000}, {7000, 1000}}, 2);
	sketch_add_crack(s, (const struct point[]){{1000, 1000}, {1000, 1000}}, 2);
	sketch_add_joint(s, (const struct point[]){{1000, 1000}, {2000, 1000}}, 2);
	s->joints[0].points[1] = (struct plan_at){.line = 61, .on_wall = true, .wall = "Bay.1"};
	diag_error(&s->diags, 61, "told by the reader");
	static const int LINES[] = {61, 40, 42, 30, 50, 51};
	sketch_build(s);
	assert_int_equal(s->status, STATUS_INPUT);
	assert_int_equal(s->diags.diags.count, COUNT(LINES));
	for (size_t i = 0; i < COUNT(LINES); i++)
		assert_int_equal(s->diags.diags.items[i].line, LINES[i]);
	sketch_free(s);
}

/* What the reader has told is not told again as an error of geometry; the rest is. */
static void test_nothing_is_told_twice(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	sketch_add_doorway(s, "bay.1", 9000, 900)->given = PLAN_FAULTY;
	sketch_add_box(s, 9000, 9000, 300, 300, 0)->given = PLAN_FAULTY;
	sketch_add_box(s, 9000, 9000, 300, 300, 0);
	diag_error(&s->diags, 31, "told by the reader");
	sketch_add_crack(s, (const struct point[]){{-900, 0}, {900, 0}}, 2)->given = PLAN_FAULTY;
	sketch_add_crack(s, (const struct point[]){{-900, 0}, {900, 0}}, 2)->points[0].given =
		PLAN_FAULTY;
	sketch_add_crack(s, (const struct point[]){{-900, 0}, {900, 0}}, 2);
	sketch_build(s);
	assert_int_equal(s->status, STATUS_INPUT);
	assert_int_equal(s->diags.diags.count, 2);
	assert_int_equal(s->diags.diags.items[1].line, 52);
	sketch_free(s);
}

/* Of a room whose boundary is in error nothing is told but what the reader told. */
static void test_faulty_boundary(void **state)
{
	(void)state;
	const struct point bow[] = {{0, 0}, {6000, 4000}, {6000, 0}, {0, 4000}};
	for (int k = 0; k < 4; k++) {
		struct sketch *s = sketch_of_corners(bow, 4);
		sketch_add_box(s, 9000, 9000, 300, 300, 0);
		if (k == 0)
			s->room.given = PLAN_FAULTY;
		else if (k == 1)
			s->walls[2].given = PLAN_FAULTY;
		else if (k == 2)
			s->walls[2].id = NULL;
		else
			s->room.wall_count = 2;
		diag_error(&s->diags, k == 2 ? 13 : 99, "told by the reader");
		sketch_build(s);
		assert_int_equal(s->status, STATUS_INPUT);
		assert_int_equal(s->diags.diags.count, 1);
		sketch_free(s);
	}
}

/* ---- borders ---- */

static void test_borders(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	struct plan_doorway *doorway = sketch_add_doorway(s, "bay.1", 3000, 900);
	doorway->deep_nm = SKETCH_NM(100);
	doorway->stop = PLAN_STOP_FAR;
	sketch_add_doorway(s, "bay.1", 0, 1000);
	sketch_add_box(s, 3000, 2000, 400, 400, 0);
	sketch_add_obstacle(s, PLAN_OBSTACLE_DRAIN)->across_nm = SKETCH_NM(0.2);
	s->obstacles[1].x_nm = s->obstacles[1].y_nm = SKETCH_NM(1000);
	static const struct {
		const char *id;
		enum site_edge_kind kind;
		enum site_edge_base base;
		struct point from, to;
		int line;
	} EXPECTED[] = {
		{"D2", SITE_EDGE_STOP, SITE_BASE_NONE, {0, 0}, {1000, 0}, 41},
		{"bay.1", SITE_EDGE_WALL, SITE_BASE_COVERS, {1000, 0}, {3000, 0}, 11},
		{"D1", SITE_EDGE_JAMB, SITE_BASE_COVERS, {3000, 0}, {3000, -100}, 40},
		{"D1", SITE_EDGE_STOP, SITE_BASE_NONE, {3000, -100}, {3900, -100}, 40},
		{"D1", SITE_EDGE_JAMB, SITE_BASE_COVERS, {3900, -100}, {3900, 0}, 40},
		{"bay.1", SITE_EDGE_WALL, SITE_BASE_COVERS, {3900, 0}, {6000, 0}, 11},
		{"bay.2", SITE_EDGE_WALL, SITE_BASE_COVERS, {6000, 0}, {6000, 4000}, 12},
		{"bay.3", SITE_EDGE_WALL, SITE_BASE_COVERS, {6000, 4000}, {0, 4000}, 13},
		{"bay.4", SITE_EDGE_WALL, SITE_BASE_COVERS, {0, 4000}, {0, 0}, 14},
		{"C1", SITE_EDGE_OBSTACLE, SITE_BASE_NONE, {2800, 1800}, {2800, 2200}, 30},
		{"C1", SITE_EDGE_OBSTACLE, SITE_BASE_NONE, {2800, 2200}, {3200, 2200}, 30},
		{"C1", SITE_EDGE_OBSTACLE, SITE_BASE_NONE, {3200, 2200}, {3200, 1800}, 30},
		{"C1", SITE_EDGE_OBSTACLE, SITE_BASE_NONE, {3200, 1800}, {2800, 1800}, 30},
		{"C2", SITE_EDGE_DRAIN, SITE_BASE_NONE, {1000.1, 1000}, {1000, 999.9}, 31},
	};
	size_t count;
	struct site_edge *borders =
		site_room_borders(s->arena, &sketch_build_sound(s)->rooms[0], &count);
	assert_int_equal(count, COUNT(EXPECTED) + 3);
	for (size_t i = 0; i < COUNT(EXPECTED); i++) {
		assert_string_equal(borders[i].id, EXPECTED[i].id);
		assert_int_equal(borders[i].kind, EXPECTED[i].kind);
		assert_int_equal(borders[i].base, EXPECTED[i].base);
		assert_at(borders[i].from, EXPECTED[i].from.x, EXPECTED[i].from.y);
		assert_at(borders[i].to, EXPECTED[i].to.x, EXPECTED[i].to.y);
		assert_int_equal(borders[i].line, EXPECTED[i].line);
		assert_true(borders[i].show);
	}
	sketch_free(s);
}

/* Doorways that share a jamb leave one recess. */
static void test_ground_of_neighbouring_doorways(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	for (int i = 0; i < 2; i++) {
		struct plan_doorway *doorway = sketch_add_doorway(s, "bay.1", 1000 + 900 * i, 900);
		doorway->deep_nm = SKETCH_NM(100);
		doorway->stop = PLAN_STOP_FAR;
	}
	struct region ground = site_room_ground(s->arena, &sketch_build_sound(s)->rooms[0]);
	assert_int_equal(ground.count, 1);
	assert_near(region_area(&ground), 24e6 + 180000, 1e-6);
	sketch_free(s);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_every_error_of_a_plan),
		cmocka_unit_test(test_nothing_is_told_twice),
		cmocka_unit_test(test_faulty_boundary),
		cmocka_unit_test(test_borders),
		cmocka_unit_test(test_ground_of_neighbouring_doorways),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

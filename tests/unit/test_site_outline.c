/* Outlines from corners and tape runs, and the doorways in their walls. */
#include "support/program.h"

#include "support/sketch.h"

#define COUNT(array) (sizeof(array) / sizeof *(array))

static void assert_at(struct point p, double x, double y)
{
	assert_near(p.x, x, 1e-9);
	assert_near(p.y, y, 1e-9);
}

/* ---- outlines ---- */

static void test_outline_either_way(void **state)
{
	(void)state;
	for (int clockwise = 0; clockwise < 2; clockwise++) {
		struct sketch *s = sketch_of_rectangle(clockwise);
		s->walls[1].kind = PLAN_WALL_GLASS;
		s->walls[1].base = PLAN_BASE_NONE;
		s->walls[1].show = false;
		const struct site_room *room = &sketch_build_sound(s)->rooms[0];
		assert_near(ring_area(room->outline), 24e6, 0);
		assert_int_equal(room->edge_count, 4);
		for (size_t i = 0; i < 4; i++) {
			const struct site_edge *edge = &room->edges[i];
			size_t wall = clockwise ? 3 - i : i;
			assert_string_equal(edge->id, s->walls[wall].id);
			assert_int_equal(edge->line, 11 + wall);
			assert_int_equal(edge->reversed, clockwise);
			assert_int_equal(edge->kind, wall == 1 ? SITE_EDGE_GLASS : SITE_EDGE_WALL);
			assert_int_equal(edge->base, wall == 1 ? SITE_BASE_NONE : SITE_BASE_COVERS);
			assert_int_equal(edge->show, wall != 1);
			struct point next = room->outline.points[(i + 1) % 4];
			assert_at(edge->from, room->outline.points[i].x, room->outline.points[i].y);
			assert_at(edge->to, next.x, next.y);
		}
		sketch_free(s);
	}
}

/* Wall bay.2 runs north along x = 6000 written one way, east along y = 4000 the other. */
static void test_tape_follows_the_written_way(void **state)
{
	(void)state;
	for (int clockwise = 0; clockwise < 2; clockwise++) {
		struct sketch *s = sketch_of_rectangle(clockwise);
		struct plan_crack *crack =
			sketch_add_crack(s, (const struct point[]){{0, 0}, {3000, 2000}}, 2);
		crack->points[0] = (struct plan_at){.on_wall = true,
		                                    .wall = "bay.2",
		                                    .along_nm = SKETCH_NM(1000),
		                                    .out_nm = SKETCH_NM(300)};
		const struct site *site = sketch_build_sound(s);
		struct point start = site->cracks[0].line.points[0];
		if (clockwise)
			assert_at(start, 1000, 3700);
		else
			assert_at(start, 5700, 1000);
		sketch_free(s);
	}
}

static void test_run_closes(void **state)
{
	(void)state;
	/* 3 mm too long to the north over 20 m: 1 in 6667. */
	struct sketch *s = sketch_of_run((const double[]){6000, 4003, 6000, 4000}, 4);
	s->run.x_nm = SKETCH_NM(1000);
	const struct site_room *room = &sketch_build_sound(s)->rooms[0];
	assert_near(room->closing_error, 3, 1e-9);
	assert_at(room->outline.points[0], 1000, 0);
	assert_at(room->outline.points[1], 7000, -3 * 6000 / 20003.0);
	assert_at(room->outline.points[2], 7000, 4003 - 3 * 10003 / 20003.0);
	assert_at(room->outline.points[3], 1000, 4003 - 3 * 16003 / 20003.0);
	sketch_free(s);
}

static void test_run_at_its_limit(void **state)
{
	(void)state;
	/* Perimeter 20 m and a bit; 1 in 500 of 20040 is 40.08. */
	struct sketch *s = sketch_of_run((const double[]){6000, 4040, 6000, 4000}, 4);
	sketch_build_sound(s);
	sketch_free(s);
	s = sketch_of_run((const double[]){6000, 4041, 6000, 4000}, 4);
	sketch_build_broken(s, 10, "1 in 489");
	sketch_free(s);
	s = sketch_of_run((const double[]){6000, 4041, 6000, 4000}, 4);
	s->run.closing = (struct share){1, 480};
	sketch_build_sound(s);
	sketch_free(s);
}

static void test_walls_that_cross(void **state)
{
	(void)state;
	const struct point bow[] = {{0, 0}, {6000, 4000}, {6000, 0}, {0, 4000}};
	struct sketch *s = sketch_of_corners(bow, 4);
	/* Nothing is said about what hangs on an outline that does not stand. */
	sketch_add_doorway(s, "bay.1", 9000, 900);
	sketch_add_box(s, 50000, 50000, 300, 300, 0);
	sketch_add_crack(s, (const struct point[]){{-9000, 0}, {9000, 0}}, 2);
	sketch_build_broken(s, 13, "\"bay.3\" meets wall \"bay.1\"");
	sketch_free(s);
}

/* ---- doorways ---- */

struct doorway_case {
	bool clockwise;
	const char *wall;
	double from, width, deep;
	enum plan_stop stop;
	struct point jambs[2], stops[2];
	double recess_area;
};

static const struct doorway_case DOORWAYS[] = {
	{false,
         "bay.1",
         1000,
         900,
         0,
         PLAN_STOP_MIDDLE,
         {{1000, 0}, {1900, 0}},
         {{1000, 0}, {1900, 0}},
         0},
	{false,
         "bay.1",
         1000,
         900,
         120,
         PLAN_STOP_NEAR,
         {{1000, 0}, {1900, 0}},
         {{1000, 0}, {1900, 0}},
         0},
	{false,
         "bay.1",
         1000,
         900,
         120,
         PLAN_STOP_MIDDLE,
         {{1000, 0}, {1900, 0}},
         {{1000, -60}, {1900, -60}},
         54000},
	{false,
         "bay.1",
         0,
         6000,
         120,
         PLAN_STOP_FAR,
         {{0, 0}, {6000, 0}},
         {{0, -120}, {6000, -120}},
         720000},
	{false,
         "bay.2",
         1000,
         900,
         100,
         PLAN_STOP_FAR,
         {{6000, 1000}, {6000, 1900}},
         {{6100, 1000}, {6100, 1900}},
         90000},
	/* Clockwise, bay.4 runs west along y = 0: the tape starts at the east end. */
	{true,
         "bay.4",
         1000,
         900,
         100,
         PLAN_STOP_FAR,
         {{4100, 0}, {5000, 0}},
         {{4100, -100}, {5000, -100}},
         90000},
};

static void test_doorways(void **state)
{
	(void)state;
	for (size_t k = 0; k < COUNT(DOORWAYS); k++) {
		const struct doorway_case *c = &DOORWAYS[k];
		struct sketch *s = sketch_of_rectangle(c->clockwise);
		struct plan_doorway *plan = sketch_add_doorway(s, c->wall, c->from, c->width);
		plan->deep_nm = SKETCH_NM(c->deep);
		plan->stop = c->stop;
		const struct site_room *room = &sketch_build_sound(s)->rooms[0];
		assert_int_equal(room->doorway_count, 1);
		const struct site_doorway *doorway = &room->doorways[0];
		assert_string_equal(room->edges[doorway->edge].id, c->wall);
		assert_at(doorway->from, c->jambs[0].x, c->jambs[0].y);
		assert_at(doorway->to, c->jambs[1].x, c->jambs[1].y);
		assert_at(doorway->stop_from, c->stops[0].x, c->stops[0].y);
		assert_at(doorway->stop_to, c->stops[1].x, c->stops[1].y);
		assert_near(ring_area(doorway->recess), c->recess_area, 1e-6);
		struct region ground = site_room_ground(s->arena, room);
		assert_int_equal(ground.count, 1);
		assert_near(region_area(&ground), 24e6 + c->recess_area, 1e-6);
		sketch_free(s);
	}
}

static void test_doorways_past_the_wall(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	sketch_add_doorway(s, "bay.2", 3100, 900.000001);
	sketch_build_broken(s, 40, "expected within its");
	sketch_free(s);
}

/* A jamb at the end of a wall as taped stays at its end after closing. */
static void test_doorway_to_the_end_of_a_taped_wall(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_run((const double[]){6006, 4000, 6000, 4000}, 4);
	sketch_add_doorway(s, "bay.1", 5006, 1000);
	const struct site_room *room = &sketch_build_sound(s)->rooms[0];
	struct point corner = room->outline.points[1];
	assert_at(room->doorways[0].to, corner.x, corner.y);
	sketch_free(s);
}

static void test_doorways_over_each_other(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	sketch_add_doorway(s, "bay.1", 2000, 900);
	sketch_add_doorway(s, "bay.1", 1100, 900); /* jamb to jamb is no overlap */
	sketch_add_doorway(s, "bay.3", 2000, 900);
	sketch_build_sound(s);
	sketch_free(s);
	s = sketch_of_rectangle(false);
	sketch_add_doorway(s, "bay.1", 2000, 900);
	sketch_add_doorway(s, "bay.1", 4000, 900);
	sketch_add_doorway(s, "bay.1", 1100, 900.001);
	sketch_build_broken(s, 42, "\"D3\" lies over doorway \"D1\"");
	sketch_free(s);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_outline_either_way),
		cmocka_unit_test(test_tape_follows_the_written_way),
		cmocka_unit_test(test_run_closes),
		cmocka_unit_test(test_run_at_its_limit),
		cmocka_unit_test(test_walls_that_cross),
		cmocka_unit_test(test_doorways),
		cmocka_unit_test(test_doorways_past_the_wall),
		cmocka_unit_test(test_doorway_to_the_end_of_a_taped_wall),
		cmocka_unit_test(test_doorways_over_each_other),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

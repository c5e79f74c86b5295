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

/* ---- diagonals ---- */

/* SQ3: sides 6 and 4 m at 89.9 degrees, taped as if square, with one diagonal. */
static void test_diagonal_leans_the_room(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_run((const double[]){6000, 4000, 6000, 4000}, 4);
	sketch_add_diagonal(s, "bay.1", "bay.3", 7216.909);
	const struct site_room *room = &sketch_build_sound(s)->rooms[0];
	assert_near(room->closing_error, 0, 1e-6);
	assert_near(room->outline.points[1].x, 6000, 1e-3);
	assert_near(room->outline.points[1].y, 0, 1e-9);
	assert_near(room->outline.points[3].x, 6.98, 0.01);
	assert_near(point_distance(room->outline.points[1], room->outline.points[3]), 7205.291,
	            1e-3);
	sketch_free(s);
}

/* Printed trilaterations (docs/sources.md, survey): a quadrilateral anticlockwise, `ties` to its
 * third corner as printed, the rest taped as the known points lie; and where it is printed. */
static const struct trilateration {
	const char *name;
	struct point known[3], found; /* first, second and fourth corner; the third */
	double ties[3];               /* from the second, the fourth, the first */
	double mm, near;              /* of a printed unit; units */
} TRILATERATIONS[] = {
	{"TR2", {{1, 1}, {2, 2}, {1, 2}}, {2, 3}, {1.0, 1.414, 2.236}, 1000, 1e-3},
	{"TR4",
         {{-12.123, -98.001}, {973.23, -123.221}, {-176.92, 0}},
         {12.345, 892.234},
         {1398.016, 912.087, 990.537},
         10,
         5e-3},
	/* LR from P1 and FP, over P2: printed distances, the rest from printed places. */
	{"TR5",
         {{2435.613, 463.846}, {1811.082, 480.951}, {2000, 1000}},
         {1450.051, 836.445},
         {506.679, 573.754, 1053.642},
         10,
         2e-2},
};

static struct plan_wall *aim(struct sketch *s, size_t wall, struct point from, struct point to,
                             struct point then, double length, double mm)
{
	struct point way = point_sub(to, from), next = point_sub(then, to);
	double turn = atan2(point_cross(way, next), point_dot(way, next));
	s->walls[wall].length_nm = SKETCH_NM(length * mm);
	s->walls[wall].turn_deg = nearbyint(turn * 180 / acos(-1));
	return &s->walls[wall];
}

static void test_trilaterations(void **state)
{
	(void)state;
	for (size_t i = 0; i < COUNT(TRILATERATIONS); i++) {
		const struct trilateration *t = &TRILATERATIONS[i];
		const struct point *k = t->known;
		struct sketch *s = sketch_of_run((const double[]){1, 1, 1, 1}, 4);
		struct point first = point_sub(k[1], k[0]);
		s->run.x_nm = SKETCH_NM(k[0].x * t->mm);
		s->run.y_nm = SKETCH_NM(k[0].y * t->mm);
		s->run.heading_deg = atan2(first.y, first.x) * 180 / acos(-1);
		s->run.closing = (struct share){1, 20}; /* turns are whole degrees */
		aim(s, 0, k[0], k[1], t->found, point_distance(k[0], k[1]), t->mm);
		aim(s, 1, k[1], t->found, k[2], t->ties[0], t->mm);
		aim(s, 2, t->found, k[2], k[0], t->ties[1], t->mm);
		aim(s, 3, k[2], k[0], k[1], point_distance(k[2], k[0]), t->mm);
		sketch_add_diagonal(s, "bay.1", "bay.3", t->ties[2] * t->mm);
		sketch_add_diagonal(s, "bay.2", "bay.4", point_distance(k[1], k[2]) * t->mm);
		const struct site_room *room = &sketch_build_sound(s)->rooms[0];
		struct point found = point_scale(room->outline.points[2], 1 / t->mm);
		if (point_distance(found, t->found) > t->near)
			fail_msg("%s: %.4f,%.4f", t->name, found.x, found.y);
		sketch_free(s);
	}
}

/* Two diagonals as if square, 12 mm apart: no shape fits, the misfit is spread and kept. */
static void test_diagonals_that_disagree(void **state)
{
	(void)state;
	const double across = 7211.10255;
	struct sketch *s = sketch_of_run((const double[]){6000, 4000, 6000, 4000}, 4);
	sketch_add_diagonal(s, "bay.1", "bay.3", across + 12);
	sketch_add_diagonal(s, "bay.2", "bay.4", across + 12);
	const struct site_room *room = &sketch_build_sound(s)->rooms[0];
	/* It stays a rectangle, sides A and B, diagonal D: with sides a and b longer the
	 * diagonals are (A a + B b) / D longer. The squares 2 a a + 2 b b + 2 (12 - that)^2 are
	 * least for a = 12 A / 2 D, b = 12 B / 2 D: the diagonals give half. */
	double longer = 12 * 6000 / (2 * across), diagonal = 6;
	assert_near(point_distance(room->outline.points[0], room->outline.points[1]), 6000 + longer,
	            0.05);
	assert_near(point_distance(room->outline.points[0], room->outline.points[2]),
	            across + diagonal, 0.05);
	assert_near(room->closing_error, 12 - diagonal, 0.05);
	sketch_free(s);

	s = sketch_of_run((const double[]){6000, 4000, 6000, 4000}, 4);
	sketch_add_diagonal(s, "bay.1", "bay.3", across + 120);
	sketch_add_diagonal(s, "bay.2", "bay.4", across + 120);
	sketch_build_broken(s, 10, "do not fit");
	sketch_free(s);
}

/* ---- arcs ---- */

/* Wall bay.2 runs from (6000, 0) to (6000, 4000): 1000 to the right is radius 2500. */
static void test_arc_is_one_wall(void **state)
{
	(void)state;
	for (int inward = 0; inward < 2; inward++) {
		struct sketch *s = sketch_of_run((const double[]){6000, 4000, 6000, 4000}, 4);
		s->walls[1].rise_nm = SKETCH_NM(inward ? 1000 : -1000);
		const struct site_room *room = &sketch_build_sound(s)->rooms[0];
		size_t end = site_wall_end(room, 1);
		assert_true(end > 10);
		assert_int_equal(room->edge_count, end + 2);
		double side = inward ? 1 : -1;
		for (size_t i = 1; i < end; i++) {
			assert_string_equal(room->edges[i].id, "bay.2");
			assert_ptr_equal(room->edges[i].wall, &s->walls[1]);
			assert_near(point_distance(room->edges[i].to,
			                           (struct point){6000 + side * 1500, 2000}),
			            2500, 1e-9);
		}
		assert_string_equal(room->edges[end].id, "bay.3");
		/* Segment of the circle: r r (t - sin t) / 2, cos(t/2) = 0.6. */
		double segment = 2500.0 * 2500 * (1.854590436 - 0.96) / 2;
		assert_near(ring_area(room->outline), 24e6 - side * segment, 600);
		sketch_free(s);
	}
}

static void test_tape_lies_on_the_chord(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_run((const double[]){6000, 4000, 6000, 4000}, 4);
	s->walls[1].rise_nm = SKETCH_NM(-1000);
	struct plan_crack *crack =
		sketch_add_crack(s, (const struct point[]){{0, 0}, {3000, 2000}}, 2);
	crack->points[1] = (struct plan_at){.on_wall = true,
	                                    .wall = "bay.2",
	                                    .along_nm = SKETCH_NM(1500),
	                                    .out_nm = SKETCH_NM(300)};
	struct point end = sketch_build_sound(s)->cracks[0].line.points[1];
	assert_at(end, 5700, 1500);
	sketch_free(s);
}

static void test_no_doorway_in_an_arc(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_run((const double[]){6000, 4000, 6000, 4000}, 4);
	s->walls[1].rise_nm = SKETCH_NM(-1000);
	sketch_add_doorway(s, "bay.2", 1000, 900);
	sketch_build_broken(s, 40, "curved wall");
	sketch_free(s);
}

/* An arc into the room that reaches the wall across. */
static void test_arc_that_meets_a_wall(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_run((const double[]){1800, 4000, 1800, 4000}, 4);
	s->walls[1].rise_nm = SKETCH_NM(1900);
	sketch_build_broken(s, 14, "\"bay.4\" meets wall \"bay.2\"");
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
		cmocka_unit_test(test_diagonal_leans_the_room),
		cmocka_unit_test(test_trilaterations),
		cmocka_unit_test(test_diagonals_that_disagree),
		cmocka_unit_test(test_arc_is_one_wall),
		cmocka_unit_test(test_tape_lies_on_the_chord),
		cmocka_unit_test(test_no_doorway_in_an_arc),
		cmocka_unit_test(test_arc_that_meets_a_wall),
		cmocka_unit_test(test_walls_that_cross),
		cmocka_unit_test(test_doorways),
		cmocka_unit_test(test_doorways_past_the_wall),
		cmocka_unit_test(test_doorway_to_the_end_of_a_taped_wall),
		cmocka_unit_test(test_doorways_over_each_other),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

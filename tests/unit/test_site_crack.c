/* Obstacles, cracks and slab joints on the ground. */
#include "support/program.h"

#include "support/sketch.h"

#define COUNT(array) (sizeof(array) / sizeof *(array))

static void assert_at(struct point p, double x, double y)
{
	assert_near(p.x, x, 1e-9);
	assert_near(p.y, y, 1e-9);
}

/* ---- obstacles ---- */

static void test_obstacles(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	sketch_add_box(s, 1000, 1000, 400, 200, 90);
	struct plan_obstacle *pipe = sketch_add_obstacle(s, PLAN_OBSTACLE_PIPE);
	pipe->x_nm = SKETCH_NM(3000);
	pipe->y_nm = SKETCH_NM(3980); /* reaches into the wall */
	pipe->across_nm = SKETCH_NM(100);
	struct plan_obstacle *drain = sketch_add_obstacle(s, PLAN_OBSTACLE_DRAIN);
	drain->corners = sketch_points(
		s, (const struct point[]){{4000, 1000}, {4000, 1150}, {4150, 1150}, {4150, 1000}},
		4, 33);
	drain->corner_count = 4;
	const struct site_room *room = &sketch_build_sound(s)->rooms[0];
	assert_int_equal(room->obstacle_count, 3);
	assert_at(room->obstacles[0].ring.points[0], 1100, 800);
	assert_near(ring_area(room->obstacles[0].ring), 80000, 1e-6);
	assert_near(ring_area(room->obstacles[1].ring), 7854, 40);
	assert_near(ring_area(room->obstacles[2].ring), 22500, 1e-6);
	assert_true(room->obstacles[2].is_drain && !room->obstacles[1].is_drain);
	sketch_free(s);
}

static void test_obstacle_outside(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	sketch_add_box(s, -150, 2000, 300, 300, 0); /* back to back with the wall */
	sketch_build_broken(s, 30, "wholly outside");
	sketch_free(s);
	s = sketch_of_rectangle(false);
	sketch_add_box(s, -149, 2000, 300, 300, 0);
	sketch_build_sound(s);
	sketch_free(s);
	s = sketch_of_rectangle(false);
	struct plan_doorway *doorway = sketch_add_doorway(s, "bay.1", 1000, 900);
	doorway->deep_nm = SKETCH_NM(300);
	doorway->stop = PLAN_STOP_FAR;
	sketch_add_box(s, 1500, -150, 100, 100, 0); /* stands in the doorway */
	sketch_build_sound(s);
	sketch_free(s);
}

static void test_obstacle_that_crosses_itself(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	struct plan_obstacle *island = sketch_add_obstacle(s, PLAN_OBSTACLE_ISLAND);
	island->corners = sketch_points(
		s, (const struct point[]){{1000, 1000}, {2000, 2000}, {2000, 1000}, {1000, 2000}},
		4, 33);
	island->corner_count = 4;
	sketch_build_broken(s, 33, "side 3 of \"C1\" meets its side 1");
	sketch_free(s);
}

/* ---- cracks and joints ---- */

struct crack_case {
	const char *what;
	struct point drawn[3];
	size_t count;
	struct point start, end;
};

/* In a room with a column at (3000,2000), 400 square, and a joint along x = 4500. */
static const struct crack_case CRACKS[] = {
	{"stays", {{1000, 1000}, {2000, 2500}}, 2, {1000, 1000}, {2000, 2500}},
	{"wall to wall", {{1000, 25}, {1500, 3975}}, 2, {1000, 0}, {1500, 4000}},
	{"not quite", {{1000, 25.1}, {1500, 3974.9}}, 2, {1000, 25.1}, {1500, 3974.9}},
	{"from outside", {{1000, -25}, {2000, 1000}}, 2, {1000, 0}, {2000, 1000}},
	{"middle outside",
         {{1000, 1000}, {-20, 1500}, {1000, 2000}},
         3,
         {1000, 1000},
         {1000, 2000}},
	{"to the column", {{1000, 2100}, {2780, 2100}}, 2, {1000, 2100}, {2800, 2100}},
	{"into the column", {{1000, 2100}, {2820, 2100}}, 2, {1000, 2100}, {2800, 2100}},
	{"to the joint", {{4000, 1000}, {4480, 1200}}, 2, {4000, 1000}, {4500, 1200}},
	{"over the joint", {{4000, 1000}, {4520, 1200}}, 2, {4000, 1000}, {4500, 1200}},
	{"wall before joint", {{4000, 1000}, {4490, 20}}, 2, {4000, 1000}, {4490, 0}},
};

static void test_crack_ends(void **state)
{
	(void)state;
	for (size_t k = 0; k < COUNT(CRACKS); k++) {
		const struct crack_case *c = &CRACKS[k];
		struct sketch *s = sketch_of_rectangle(false);
		sketch_add_box(s, 3000, 2000, 400, 400, 0);
		sketch_add_joint(s, (const struct point[]){{4500, 0}, {4500, 4000}}, 2);
		sketch_add_crack(s, c->drawn, c->count);
		struct line line = sketch_build_sound(s)->cracks[0].line;
		struct point start = line.points[0], end = line.points[line.count - 1];
		if (point_distance(start, c->start) > 1e-9 || point_distance(end, c->end) > 1e-9)
			fail_msg("%s: (%g,%g) to (%g,%g)", c->what, start.x, start.y, end.x, end.y);
		sketch_free(s);
	}
}

static void test_crack_on_crack(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	sketch_add_crack(s, (const struct point[]){{1000, 1000}, {5000, 1000}}, 2);
	sketch_add_crack(s, (const struct point[]){{2000, 1020}, {2000, 3000}}, 2);
	const struct site *site = sketch_build_sound(s);
	assert_at(site->cracks[1].line.points[0], 2000, 1000);
	assert_at(site->cracks[0].line.points[0], 1000, 1000);
	assert_near(site->cracks[0].width, 1, 0);
	assert_near(site->cracks[0].wander, 12, 0);
	sketch_free(s);
}

static void test_crack_outside(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	sketch_add_crack(s, (const struct point[]){{1000, -25.001}, {2000, 1000}}, 2);
	sketch_build_broken(s, 50, "outside room \"bay\"");
	sketch_free(s);
	/* An inch where the plan is in inches. */
	s = sketch_of_rectangle(false);
	s->plan.unit = PLAN_UNIT_FT;
	sketch_add_crack(s, (const struct point[]){{1000, -25.4}, {2000, 1000}}, 2);
	assert_at(sketch_build_sound(s)->cracks[0].line.points[0], 1000, 0);
	sketch_free(s);
	/* Of no room in particular: it may run on under a wall. */
	s = sketch_of_rectangle(false);
	sketch_add_crack(s, (const struct point[]){{1000, -500}, {2000, 1000}}, 2)->room = NULL;
	const struct site *site = sketch_build_sound(s);
	assert_null(site->cracks[0].room);
	assert_at(site->cracks[0].line.points[0], 1000, -500);
	sketch_free(s);
}

static void test_line_without_length(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	sketch_add_crack(s, (const struct point[]){{1000, 1000}, {1000, 1000}}, 2);
	sketch_build_broken(s, 50, "no length");
	sketch_free(s);
	s = sketch_of_rectangle(false);
	sketch_add_joint(s, (const struct point[]){{1000, 1000}, {1000, 1000}, {1000, 1000}}, 3);
	sketch_build_broken(s, 60, "no length");
	sketch_free(s);
}

static void test_closed_joint_stays(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	const struct point diamond[] = {{10, 10}, {500, 10}, {500, 500}, {10, 10}};
	sketch_add_joint(s, diamond, 4);
	struct line line = sketch_build_sound(s)->slab_joints[0].line;
	assert_int_equal(line.count, 4);
	assert_at(line.points[0], 10, 10);
	assert_at(line.points[3], 10, 10);
	sketch_free(s);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_obstacles),
		cmocka_unit_test(test_obstacle_outside),
		cmocka_unit_test(test_obstacle_that_crosses_itself),
		cmocka_unit_test(test_crack_ends),
		cmocka_unit_test(test_crack_on_crack),
		cmocka_unit_test(test_crack_outside),
		cmocka_unit_test(test_line_without_length),
		cmocka_unit_test(test_closed_joint_stays),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

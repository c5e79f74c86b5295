/* From plan to site: outlines, doorways, obstacles, cracks, joints, borders. */
#include "support/program.h"

#include <string.h>

#include "base/array.h"
#include "geometry/overlay.h"
#include "site/site.h"

#define MM(length) ((int64_t)((length)*1e6 + ((length) < 0 ? -0.5 : 0.5)))
#define COUNT(array) (sizeof(array) / sizeof *(array))

enum { POINTS_MOST = 8, LINES_MOST = 4 };

/* A plan of one room, made up by the tests; line numbers as a file might have them:
 * room 10, walls 11 and on, obstacles 30, doorways 40, cracks 50, joints 60. */
struct sketch {
	struct arena *arena;
	struct plan plan;
	struct plan_room room;
	struct plan_run run;
	struct plan_wall walls[POINTS_MOST];
	struct plan_obstacle obstacles[LINES_MOST];
	struct plan_doorway doorways[LINES_MOST];
	struct plan_crack cracks[LINES_MOST];
	struct plan_slab_joint joints[LINES_MOST];
	struct diag_list diags;
	enum status status;
};

static struct plan_wall *add_wall(struct sketch *s)
{
	size_t i = s->room.wall_count++;
	s->walls[i] = (struct plan_wall){
		.line = 11 + (int)i,
		.id = arena_printf(s->arena, "bay.%zu", i + 1),
		.turn_deg = 90,
		.show = true,
	};
	return &s->walls[i];
}

static struct sketch *sketch_new(void)
{
	struct arena *arena = arena_new();
	struct sketch *s = ARENA_NEW(arena, struct sketch);
	s->arena = arena;
	s->diags = diag_list_in(arena, "floor.xml");
	s->room = (struct plan_room){.line = 10, .id = "bay", .walls = s->walls};
	s->room.obstacles = s->obstacles;
	s->room.doorways = s->doorways;
	s->plan = (struct plan){.rooms = &s->room, .room_count = 1};
	s->plan.cracks = s->cracks;
	s->plan.slab_joints = s->joints;
	return s;
}

static struct sketch *sketch_of_corners(const struct point *corners, size_t count)
{
	struct sketch *s = sketch_new();
	for (size_t i = 0; i < count; i++) {
		struct plan_wall *wall = add_wall(s);
		wall->x_nm = MM(corners[i].x);
		wall->y_nm = MM(corners[i].y);
	}
	return s;
}

static struct sketch *sketch_of_run(const double *lengths, size_t count)
{
	struct sketch *s = sketch_new();
	s->run = (struct plan_run){.line = 10, .closing = {1, 500}};
	s->room.run = &s->run;
	for (size_t i = 0; i < count; i++)
		add_wall(s)->length_nm = MM(lengths[i]);
	return s;
}

/* 6 m by 4 m. */
static struct sketch *sketch_of_rectangle(bool clockwise)
{
	static const struct point ROUND[] = {{0, 0}, {6000, 0}, {6000, 4000}, {0, 4000}};
	static const struct point BACK[] = {{0, 0}, {0, 4000}, {6000, 4000}, {6000, 0}};
	return sketch_of_corners(clockwise ? BACK : ROUND, 4);
}

static struct plan_doorway *add_doorway(struct sketch *s, const char *wall, double from,
                                        double width)
{
	size_t i = s->room.doorway_count++;
	s->doorways[i] = (struct plan_doorway){
		.line = 40 + (int)i,
		.id = arena_printf(s->arena, "D%zu", i + 1),
		.wall = wall,
		.from_nm = MM(from),
		.width_nm = MM(width),
	};
	return &s->doorways[i];
}

static struct plan_obstacle *add_obstacle(struct sketch *s, enum plan_obstacle_kind kind)
{
	size_t i = s->room.obstacle_count++;
	s->obstacles[i] = (struct plan_obstacle){
		.line = 30 + (int)i,
		.id = arena_printf(s->arena, "C%zu", i + 1),
		.kind = kind,
	};
	return &s->obstacles[i];
}

static void add_box(struct sketch *s, double x, double y, double wide, double deep, double turn)
{
	struct plan_obstacle *box = add_obstacle(s, PLAN_OBSTACLE_COLUMN);
	box->x_nm = MM(x);
	box->y_nm = MM(y);
	box->wide_nm = MM(wide);
	box->deep_nm = MM(deep);
	box->turn_deg = turn;
}

static struct plan_at *points_at(struct sketch *s, const struct point *points, size_t count,
                                 int line)
{
	struct plan_at *at = ARENA_ARRAY(s->arena, struct plan_at, count);
	for (size_t i = 0; i < count; i++)
		at[i] = (struct plan_at){.line = line,
		                         .x_nm = MM(points[i].x),
		                         .y_nm = MM(points[i].y)};
	return at;
}

static struct plan_crack *add_crack(struct sketch *s, const struct point *points, size_t count)
{
	size_t i = s->plan.crack_count++;
	s->cracks[i] = (struct plan_crack){
		.line = 50 + (int)i,
		.id = arena_printf(s->arena, "K%zu", i + 1),
		.room = &s->room,
		.width_nm = MM(1),
		.wander_nm = MM(12),
		.points = points_at(s, points, count, 50 + (int)i),
		.point_count = count,
	};
	return &s->cracks[i];
}

static void add_joint(struct sketch *s, const struct point *points, size_t count)
{
	size_t i = s->plan.slab_joint_count++;
	s->joints[i] = (struct plan_slab_joint){
		.line = 60 + (int)i,
		.id = arena_printf(s->arena, "J%zu", i + 1),
		.width_nm = MM(10),
		.points = points_at(s, points, count, 60 + (int)i),
		.point_count = count,
	};
}

static const struct site *build(struct sketch *s)
{
	const struct site *site = NULL;
	s->status = site_build(s->arena, &s->plan, &s->diags, &site);
	assert_non_null(site);
	return site;
}

static const struct site *build_sound(struct sketch *s)
{
	const struct site *site = build(s);
	for (size_t i = 0; i < s->diags.diags.count; i++)
		fail_msg("line %d: %s", s->diags.diags.items[i].line, s->diags.diags.items[i].text);
	assert_int_equal(s->status, STATUS_OK);
	return site;
}

/* Exactly one error, on `line`, that says `what`. */
static void build_broken(struct sketch *s, int line, const char *what)
{
	build(s);
	assert_int_equal(s->status, STATUS_INPUT);
	assert_int_equal(s->diags.diags.count, 1);
	assert_int_equal(s->diags.diags.items[0].line, line);
	if (!strstr(s->diags.diags.items[0].text, what))
		fail_msg("'%s' does not say '%s'", s->diags.diags.items[0].text, what);
}

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
		const struct site_room *room = &build_sound(s)->rooms[0];
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
		arena_free(s->arena);
	}
}

/* Wall bay.2 runs north along x = 6000 written one way, east along y = 4000 the other. */
static void test_tape_follows_the_written_way(void **state)
{
	(void)state;
	for (int clockwise = 0; clockwise < 2; clockwise++) {
		struct sketch *s = sketch_of_rectangle(clockwise);
		struct plan_crack *crack =
			add_crack(s, (const struct point[]){{0, 0}, {3000, 2000}}, 2);
		crack->points[0] = (struct plan_at){.on_wall = true,
		                                    .wall = "bay.2",
		                                    .along_nm = MM(1000),
		                                    .out_nm = MM(300)};
		const struct site *site = build_sound(s);
		struct point start = site->cracks[0].line.points[0];
		if (clockwise)
			assert_at(start, 1000, 3700);
		else
			assert_at(start, 5700, 1000);
		arena_free(s->arena);
	}
}

static void test_run_closes(void **state)
{
	(void)state;
	/* 3 mm too long to the north over 20 m: 1 in 6667. */
	struct sketch *s = sketch_of_run((const double[]){6000, 4003, 6000, 4000}, 4);
	s->run.x_nm = MM(1000);
	const struct site_room *room = &build_sound(s)->rooms[0];
	assert_near(room->closing_error, 3, 1e-9);
	assert_at(room->outline.points[0], 1000, 0);
	assert_at(room->outline.points[1], 7000, -3 * 6000 / 20003.0);
	assert_at(room->outline.points[2], 7000, 4003 - 3 * 10003 / 20003.0);
	assert_at(room->outline.points[3], 1000, 4003 - 3 * 16003 / 20003.0);
	arena_free(s->arena);
}

static void test_run_at_its_limit(void **state)
{
	(void)state;
	/* Perimeter 20 m and a bit; 1 in 500 of 20040 is 40.08. */
	struct sketch *s = sketch_of_run((const double[]){6000, 4040, 6000, 4000}, 4);
	build_sound(s);
	arena_free(s->arena);
	s = sketch_of_run((const double[]){6000, 4041, 6000, 4000}, 4);
	build_broken(s, 10, "1 in 489");
	arena_free(s->arena);
	s = sketch_of_run((const double[]){6000, 4041, 6000, 4000}, 4);
	s->run.closing = (struct share){1, 480};
	build_sound(s);
	arena_free(s->arena);
}

static void test_walls_that_cross(void **state)
{
	(void)state;
	const struct point bow[] = {{0, 0}, {6000, 4000}, {6000, 0}, {0, 4000}};
	struct sketch *s = sketch_of_corners(bow, 4);
	/* Nothing is said about what hangs on an outline that does not stand. */
	add_doorway(s, "bay.1", 9000, 900);
	add_box(s, 50000, 50000, 300, 300, 0);
	add_crack(s, (const struct point[]){{-9000, 0}, {9000, 0}}, 2);
	build_broken(s, 13, "'bay.3' meets wall 'bay.1'");
	arena_free(s->arena);
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
		struct plan_doorway *plan = add_doorway(s, c->wall, c->from, c->width);
		plan->deep_nm = MM(c->deep);
		plan->stop = c->stop;
		const struct site_room *room = &build_sound(s)->rooms[0];
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
		arena_free(s->arena);
	}
}

static void test_doorways_past_the_wall(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	add_doorway(s, "bay.2", 3100, 900.000001);
	build_broken(s, 40, "expected within its");
	arena_free(s->arena);
	s = sketch_of_rectangle(false);
	add_doorway(s, "bay.9", 100, 900);
	build_broken(s, 40, "no wall is called 'bay.9'");
	arena_free(s->arena);
}

/* A jamb at the end of a wall as taped stays at its end after closing. */
static void test_doorway_to_the_end_of_a_taped_wall(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_run((const double[]){6006, 4000, 6000, 4000}, 4);
	add_doorway(s, "bay.1", 5006, 1000);
	const struct site_room *room = &build_sound(s)->rooms[0];
	struct point corner = room->outline.points[1];
	assert_at(room->doorways[0].to, corner.x, corner.y);
	arena_free(s->arena);
}

static void test_doorways_over_each_other(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	add_doorway(s, "bay.1", 2000, 900);
	add_doorway(s, "bay.1", 1100, 900); /* jamb to jamb is no overlap */
	add_doorway(s, "bay.3", 2000, 900);
	build_sound(s);
	arena_free(s->arena);
	s = sketch_of_rectangle(false);
	add_doorway(s, "bay.1", 2000, 900);
	add_doorway(s, "bay.1", 4000, 900);
	add_doorway(s, "bay.1", 1100, 900.001);
	build_broken(s, 42, "'D3' lies over doorway 'D1'");
	arena_free(s->arena);
}

/* ---- obstacles ---- */

static void test_obstacles(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	add_box(s, 1000, 1000, 400, 200, 90);
	struct plan_obstacle *pipe = add_obstacle(s, PLAN_OBSTACLE_PIPE);
	pipe->x_nm = MM(3000);
	pipe->y_nm = MM(3980); /* reaches into the wall */
	pipe->across_nm = MM(100);
	struct plan_obstacle *drain = add_obstacle(s, PLAN_OBSTACLE_DRAIN);
	drain->corners = points_at(
		s, (const struct point[]){{4000, 1000}, {4000, 1150}, {4150, 1150}, {4150, 1000}},
		4, 33);
	drain->corner_count = 4;
	const struct site_room *room = &build_sound(s)->rooms[0];
	assert_int_equal(room->obstacle_count, 3);
	assert_at(room->obstacles[0].ring.points[0], 1100, 800);
	assert_near(ring_area(room->obstacles[0].ring), 80000, 1e-6);
	assert_near(ring_area(room->obstacles[1].ring), 7854, 40);
	assert_near(ring_area(room->obstacles[2].ring), 22500, 1e-6);
	assert_true(room->obstacles[2].is_drain && !room->obstacles[1].is_drain);
	arena_free(s->arena);
}

static void test_obstacle_outside(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	add_box(s, -150, 2000, 300, 300, 0); /* back to back with the wall */
	build_broken(s, 30, "wholly outside");
	arena_free(s->arena);
	s = sketch_of_rectangle(false);
	add_box(s, -149, 2000, 300, 300, 0);
	build_sound(s);
	arena_free(s->arena);
	s = sketch_of_rectangle(false);
	struct plan_doorway *doorway = add_doorway(s, "bay.1", 1000, 900);
	doorway->deep_nm = MM(300);
	doorway->stop = PLAN_STOP_FAR;
	add_box(s, 1500, -150, 100, 100, 0); /* stands in the doorway */
	build_sound(s);
	arena_free(s->arena);
}

static void test_obstacle_that_crosses_itself(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	struct plan_obstacle *island = add_obstacle(s, PLAN_OBSTACLE_ISLAND);
	island->corners = points_at(
		s, (const struct point[]){{1000, 1000}, {2000, 2000}, {2000, 1000}, {1000, 2000}},
		4, 33);
	island->corner_count = 4;
	build_broken(s, 33, "side 3 of 'C1' meets its side 1");
	arena_free(s->arena);
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
		add_box(s, 3000, 2000, 400, 400, 0);
		add_joint(s, (const struct point[]){{4500, 0}, {4500, 4000}}, 2);
		add_crack(s, c->drawn, c->count);
		struct line line = build_sound(s)->cracks[0].line;
		struct point start = line.points[0], end = line.points[line.count - 1];
		if (point_distance(start, c->start) > 1e-9 || point_distance(end, c->end) > 1e-9)
			fail_msg("%s: (%g,%g) to (%g,%g)", c->what, start.x, start.y, end.x, end.y);
		arena_free(s->arena);
	}
}

static void test_crack_on_crack(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	add_crack(s, (const struct point[]){{1000, 1000}, {5000, 1000}}, 2);
	add_crack(s, (const struct point[]){{2000, 1020}, {2000, 3000}}, 2);
	const struct site *site = build_sound(s);
	assert_at(site->cracks[1].line.points[0], 2000, 1000);
	assert_at(site->cracks[0].line.points[0], 1000, 1000);
	assert_near(site->cracks[0].width, 1, 0);
	assert_near(site->cracks[0].wander, 12, 0);
	arena_free(s->arena);
}

static void test_crack_outside(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	add_crack(s, (const struct point[]){{1000, -25.001}, {2000, 1000}}, 2);
	build_broken(s, 50, "outside room 'bay'");
	arena_free(s->arena);
	/* An inch where the plan is in inches. */
	s = sketch_of_rectangle(false);
	s->plan.unit = PLAN_UNIT_FT;
	add_crack(s, (const struct point[]){{1000, -25.4}, {2000, 1000}}, 2);
	assert_at(build_sound(s)->cracks[0].line.points[0], 1000, 0);
	arena_free(s->arena);
	/* Of no room in particular: it may run on under a wall. */
	s = sketch_of_rectangle(false);
	add_crack(s, (const struct point[]){{1000, -500}, {2000, 1000}}, 2)->room = NULL;
	const struct site *site = build_sound(s);
	assert_null(site->cracks[0].room);
	assert_at(site->cracks[0].line.points[0], 1000, -500);
	arena_free(s->arena);
}

static void test_line_without_length(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	add_crack(s, (const struct point[]){{1000, 1000}, {1000, 1000}}, 2);
	build_broken(s, 50, "no length");
	arena_free(s->arena);
	s = sketch_of_rectangle(false);
	add_joint(s, (const struct point[]){{1000, 1000}, {1000, 1000}, {1000, 1000}}, 3);
	build_broken(s, 60, "no length");
	arena_free(s->arena);
}

static void test_closed_joint_stays(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	const struct point diamond[] = {{10, 10}, {500, 10}, {500, 500}, {10, 10}};
	add_joint(s, diamond, 4);
	struct line line = build_sound(s)->slab_joints[0].line;
	assert_int_equal(line.count, 4);
	assert_at(line.points[0], 10, 10);
	assert_at(line.points[3], 10, 10);
	arena_free(s->arena);
}

/* ---- all errors at once ---- */

static void test_every_error_of_a_plan(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(true);
	add_box(s, 9000, 9000, 300, 300, 0);
	add_doorway(s, "bay.1", 3500, 900);
	add_doorway(s, "bay.2", 1000, 900);
	add_doorway(s, "bay.2", 1500, 900);
	add_crack(s, (const struct point[]){{1000, 1000}, {7000, 1000}}, 2);
	add_crack(s, (const struct point[]){{1000, 1000}, {1000, 1000}}, 2);
	add_joint(s, (const struct point[]){{1000, 1000}, {2000, 1000}}, 2);
	s->joints[0].points[1] = (struct plan_at){.line = 61, .on_wall = true, .wall = "Bay.1"};
	static const int LINES[] = {40, 42, 30, 61, 50, 51};
	build(s);
	assert_int_equal(s->status, STATUS_INPUT);
	assert_int_equal(s->diags.diags.count, COUNT(LINES));
	for (size_t i = 0; i < COUNT(LINES); i++)
		assert_int_equal(s->diags.diags.items[i].line, LINES[i]);
	arena_free(s->arena);
}

/* ---- borders ---- */

static void test_borders(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	struct plan_doorway *doorway = add_doorway(s, "bay.1", 3000, 900);
	doorway->deep_nm = MM(100);
	doorway->stop = PLAN_STOP_FAR;
	add_doorway(s, "bay.1", 0, 1000);
	add_box(s, 3000, 2000, 400, 400, 0);
	add_obstacle(s, PLAN_OBSTACLE_DRAIN)->across_nm = MM(0.2);
	s->obstacles[1].x_nm = s->obstacles[1].y_nm = MM(1000);
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
	struct site_edge *borders = site_room_borders(s->arena, &build_sound(s)->rooms[0], &count);
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
	arena_free(s->arena);
}

/* Doorways that share a jamb leave one recess. */
static void test_ground_of_neighbouring_doorways(void **state)
{
	(void)state;
	struct sketch *s = sketch_of_rectangle(false);
	for (int i = 0; i < 2; i++) {
		struct plan_doorway *doorway = add_doorway(s, "bay.1", 1000 + 900 * i, 900);
		doorway->deep_nm = MM(100);
		doorway->stop = PLAN_STOP_FAR;
	}
	struct region ground = site_room_ground(s->arena, &build_sound(s)->rooms[0]);
	assert_int_equal(ground.count, 1);
	assert_near(region_area(&ground), 24e6 + 180000, 1e-6);
	arena_free(s->arena);
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
		cmocka_unit_test(test_obstacles),
		cmocka_unit_test(test_obstacle_outside),
		cmocka_unit_test(test_obstacle_that_crosses_itself),
		cmocka_unit_test(test_crack_ends),
		cmocka_unit_test(test_crack_on_crack),
		cmocka_unit_test(test_crack_outside),
		cmocka_unit_test(test_line_without_length),
		cmocka_unit_test(test_closed_joint_stays),
		cmocka_unit_test(test_every_error_of_a_plan),
		cmocka_unit_test(test_borders),
		cmocka_unit_test(test_ground_of_neighbouring_doorways),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

#include "support/sketch.h"

#include <string.h>

#include "support/program.h"

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

static struct sketch *start(void)
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
	s->plan.slabs = s->slabs;
	s->slabs[0] = (struct plan_slab){.line = 9, .id = "S0", .exposure = PLAN_EXPOSURE_INDOOR};
	s->plan.slab_count = 1;
	s->room.slab = &s->slabs[0];
	return s;
}

struct sketch *sketch_of_corners(const struct point *corners, size_t count)
{
	struct sketch *s = start();
	for (size_t i = 0; i < count; i++) {
		struct plan_wall *wall = add_wall(s);
		wall->x_nm = SKETCH_NM(corners[i].x);
		wall->y_nm = SKETCH_NM(corners[i].y);
	}
	return s;
}

struct sketch *sketch_of_run(const double *lengths, size_t count)
{
	struct sketch *s = start();
	s->run = (struct plan_run){.line = 10, .closing = {1, 500}};
	s->room.run = &s->run;
	for (size_t i = 0; i < count; i++)
		add_wall(s)->length_nm = SKETCH_NM(lengths[i]);
	return s;
}

void sketch_add_diagonal(struct sketch *s, const char *from, const char *to, double length)
{
	s->run.diagonals = s->diagonals;
	s->diagonals[s->run.diagonal_count++] = (struct plan_diagonal){
		.line = 20, .from = from, .to = to, .length_nm = SKETCH_NM(length)};
}

struct sketch *sketch_of_rectangle(bool clockwise)
{
	static const struct point ROUND[] = {{0, 0}, {6000, 0}, {6000, 4000}, {0, 4000}};
	static const struct point BACK[] = {{0, 0}, {0, 4000}, {6000, 4000}, {6000, 0}};
	return sketch_of_corners(clockwise ? BACK : ROUND, 4);
}

struct plan_doorway *sketch_add_doorway(struct sketch *s, const char *wall, double from,
                                        double width)
{
	size_t i = s->room.doorway_count++;
	s->doorways[i] = (struct plan_doorway){
		.line = 40 + (int)i,
		.id = arena_printf(s->arena, "D%zu", i + 1),
		.wall = wall,
		.from_nm = SKETCH_NM(from),
		.width_nm = SKETCH_NM(width),
	};
	return &s->doorways[i];
}

struct plan_obstacle *sketch_add_obstacle(struct sketch *s, enum plan_obstacle_kind kind)
{
	size_t i = s->room.obstacle_count++;
	s->obstacles[i] = (struct plan_obstacle){
		.line = 30 + (int)i,
		.id = arena_printf(s->arena, "C%zu", i + 1),
		.kind = kind,
	};
	return &s->obstacles[i];
}

struct plan_obstacle *sketch_add_box(struct sketch *s, double x, double y, double wide, double deep,
                                     double turn)
{
	struct plan_obstacle *box = sketch_add_obstacle(s, PLAN_OBSTACLE_COLUMN);
	box->x_nm = SKETCH_NM(x);
	box->y_nm = SKETCH_NM(y);
	box->wide_nm = SKETCH_NM(wide);
	box->deep_nm = SKETCH_NM(deep);
	box->turn_deg = turn;
	return box;
}

struct plan_slab *sketch_add_slab(struct sketch *s, double x, double y, double wide, double deep)
{
	const struct point corners[] = {{x, y}, {x + wide, y}, {x + wide, y + deep}, {x, y + deep}};
	size_t i = s->plan.slab_count++;
	s->slabs[i] = (struct plan_slab){
		.line = 70 + (int)i,
		.id = arena_printf(s->arena, "S%zu", i),
		.exposure = PLAN_EXPOSURE_INDOOR,
		.corners = sketch_points(s, corners, 4, 70 + (int)i),
		.corner_count = 4,
	};
	return &s->slabs[i];
}

struct plan_at *sketch_points(struct sketch *s, const struct point *points, size_t count, int line)
{
	struct plan_at *at = ARENA_ARRAY(s->arena, struct plan_at, count);
	for (size_t i = 0; i < count; i++)
		at[i] = (struct plan_at){.line = line,
		                         .x_nm = SKETCH_NM(points[i].x),
		                         .y_nm = SKETCH_NM(points[i].y)};
	return at;
}

struct plan_crack *sketch_add_crack(struct sketch *s, const struct point *points, size_t count)
{
	size_t i = s->plan.crack_count++;
	s->cracks[i] = (struct plan_crack){
		.line = 50 + (int)i,
		.id = arena_printf(s->arena, "K%zu", i + 1),
		.room = &s->room,
		.width_nm = SKETCH_NM(1),
		.wander_nm = SKETCH_NM(12),
		.points = sketch_points(s, points, count, 50 + (int)i),
		.point_count = count,
	};
	return &s->cracks[i];
}

struct plan_slab_joint *sketch_add_joint(struct sketch *s, const struct point *points, size_t count)
{
	size_t i = s->plan.slab_joint_count++;
	s->joints[i] = (struct plan_slab_joint){
		.line = 60 + (int)i,
		.id = arena_printf(s->arena, "J%zu", i + 1),
		.width_nm = SKETCH_NM(10),
		.points = sketch_points(s, points, count, 60 + (int)i),
		.point_count = count,
	};
	return &s->joints[i];
}

const struct site *sketch_build(struct sketch *s)
{
	const struct site *site = NULL;
	s->status = site_build(s->arena, &s->plan, &s->diags, &site);
	assert_non_null(site);
	return site;
}

const struct site *sketch_build_sound(struct sketch *s)
{
	const struct site *site = sketch_build(s);
	for (size_t i = 0; i < s->diags.diags.count; i++)
		fail_msg("line %d: %s", s->diags.diags.items[i].line, s->diags.diags.items[i].text);
	assert_int_equal(s->status, STATUS_OK);
	return site;
}

void sketch_build_broken(struct sketch *s, int line, const char *what)
{
	sketch_build(s);
	assert_int_equal(s->status, STATUS_INPUT);
	assert_int_equal(s->diags.diags.count, 1);
	assert_int_equal(s->diags.diags.items[0].line, line);
	if (!strstr(s->diags.diags.items[0].text, what))
		fail_msg("'%s' does not say '%s'", s->diags.diags.items[0].text, what);
}

void sketch_free(struct sketch *s)
{
	arena_free(s->arena);
}

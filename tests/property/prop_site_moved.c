/* Seeded: a plan moved or turned gives the same site, moved or turned. */
#include "geometry/frame.h"
#include "support/program.h"
#include "support/seed.h"
#include "support/sketch.h"

enum { CORNERS = 6, ROUNDS = 300 };

/* Where a floor lies on its paper. */
struct pose {
	struct point shift;
	double turn_deg;
};

static struct point posed(struct pose pose, struct point p)
{
	return point_add(pose.shift, frame_out(frame_from_deg(pose.turn_deg), p));
}

/* Numbers that describe one floor, whatever its pose: whole millimetres, but for the lines,
 * whose ends must not lie within a hair of what decides. */
struct floor_figures {
	double lengths[CORNERS]; /* an L, taped with an error */
	double door_from, door_width, door_deep;
	struct point column, crack[3], joint[2];
	double column_turn;
	double crack_along;
};

static struct floor_figures random_figures(struct seed *seed)
{
	double wide = 4000 + seed_below(seed, 3000), deep = 3000 + seed_below(seed, 3000);
	double notch_wide = 500 + seed_below(seed, 1500), notch_deep = 500 + seed_below(seed, 1500);
	struct floor_figures f = {
		.lengths = {wide, deep - notch_deep, notch_wide, notch_deep,
	                    wide - notch_wide + seed_below(seed, 9) - 4, deep},
		.door_from = seed_below(seed, 1500),
		.door_width = 600 + seed_below(seed, 1000),
		.door_deep = seed_below(seed, 3) * 60,
		.column = {400 + seed_below(seed, 1500), 400 + seed_below(seed, 1500)},
		.column_turn = seed_below(seed, 90),
		.crack = {{500 + seed_below(seed, 1000), 500 + seed_below(seed, 1500)},
	                  {1500 + seed_below(seed, 500), 600 + seed_below(seed, 800)},
	                  {2000 + seed_below(seed, 500), seed_below(seed, 60) + 0.37}},
		.crack_along = seed_below(seed, 3000),
	};
	f.joint[0] = (struct point){2600 + seed_below(seed, 40), seed_below(seed, 50) + 0.37};
	f.joint[1] = (struct point){2600 + seed_below(seed, 40), deep - notch_deep - 100};
	return f;
}

static const struct site *site_of(const struct floor_figures *f, struct pose pose,
                                  struct sketch **out_sketch)
{
	static const double TURNS[] = {90, 90, -90, 90, 90, 90};
	struct sketch *s = *out_sketch = sketch_of_run(f->lengths, CORNERS);
	s->run.x_nm = SKETCH_NM(pose.shift.x);
	s->run.y_nm = SKETCH_NM(pose.shift.y);
	s->run.heading_deg = pose.turn_deg;
	for (size_t i = 0; i < CORNERS; i++)
		s->walls[i].turn_deg = TURNS[i];
	struct plan_doorway *doorway = sketch_add_doorway(s, "bay.6", f->door_from, f->door_width);
	doorway->deep_nm = SKETCH_NM(f->door_deep);
	doorway->stop = PLAN_STOP_FAR;
	struct point column = posed(pose, f->column);
	sketch_add_box(s, column.x, column.y, 300, 200, f->column_turn + pose.turn_deg);
	struct point crack[3], joint[2];
	for (size_t i = 0; i < 3; i++)
		crack[i] = posed(pose, f->crack[i]);
	for (size_t i = 0; i < 2; i++)
		joint[i] = posed(pose, f->joint[i]);
	sketch_add_crack(s, crack, 3)->points[1] = (struct plan_at){
		.on_wall = true,
		.wall = "bay.1",
		.along_nm = SKETCH_NM(f->crack_along),
		.out_nm = SKETCH_NM(800),
	};
	sketch_add_joint(s, joint, 2);
	return sketch_build_sound(s);
}

/* Coordinates of a posed plan are whole nanometres: 1e-6 mm, and what an end makes of it. */
static const double CLOSE = 1e-4;

static void assert_posed(struct pose pose, struct point p, struct point moved)
{
	assert_near(point_distance(posed(pose, p), moved), 0, CLOSE);
}

static void assert_lines_posed(struct pose pose, struct line line, struct line moved)
{
	assert_int_equal(line.count, moved.count);
	for (size_t i = 0; i < line.count; i++)
		assert_posed(pose, line.points[i], moved.points[i]);
}

static void assert_site_posed(struct arena *arena, struct pose pose, const struct site *site,
                              const struct site *moved)
{
	const struct site_room *a = &site->rooms[0], *b = &moved->rooms[0];
	assert_near(a->closing_error, b->closing_error, CLOSE);
	size_t count, moved_count;
	struct site_edge *borders = site_room_borders(arena, a, &count);
	struct site_edge *moved_borders = site_room_borders(arena, b, &moved_count);
	assert_int_equal(count, moved_count);
	for (size_t i = 0; i < count; i++) {
		assert_posed(pose, borders[i].from, moved_borders[i].from);
		assert_posed(pose, borders[i].to, moved_borders[i].to);
		assert_string_equal(borders[i].id, moved_borders[i].id);
		assert_int_equal(borders[i].kind, moved_borders[i].kind);
	}
	assert_lines_posed(pose, site->cracks[0].line, moved->cracks[0].line);
	assert_lines_posed(pose, site->slab_joints[0].line, moved->slab_joints[0].line);
}

static void test_site_moves_with_its_plan(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_site_moved");
	for (int round = 0; round < ROUNDS; round++) {
		struct floor_figures figures = random_figures(&seed);
		struct pose pose = {{seed_below(&seed, 30000) - 15000, seed_below(&seed, 9000)}, 0};
		pose.turn_deg = round % 2 ? 90 * (round / 2 % 4) : seed_below(&seed, 360);
		struct sketch *sketch, *moved_sketch;
		const struct site *site = site_of(&figures, (struct pose){{0, 0}, 0}, &sketch);
		const struct site *moved = site_of(&figures, pose, &moved_sketch);
		assert_site_posed(sketch->arena, pose, site, moved);
		sketch_free(moved_sketch);
		sketch_free(sketch);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_site_moves_with_its_plan),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

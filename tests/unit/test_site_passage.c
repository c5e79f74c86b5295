/* Doorways from room to room: two rectangles, `bay` of 6 m by 4 m and `den` to the east of it. */
#include "support/program.h"

#include <string.h>

#include "support/sketch.h"

struct house {
	struct sketch *sketch;
	struct plan_room rooms[2];
	struct plan_wall walls[4];
	const struct plan_room *laid[2];
	struct plan_lay lays[2];
};

/* The den's west wall runs from (6000 + gap, 0) to (6000 + gap + lean, 4000). */
static struct house *house_with(double gap, double lean, bool clockwise)
{
	struct sketch *s = sketch_of_rectangle(clockwise);
	struct house *h = ARENA_NEW(s->arena, struct house);
	const struct point corners[] = {{6000 + gap, 0},
	                                {9000, 0},
	                                {9000, 4000},
	                                {6000 + gap + lean, 4000}};
	h->sketch = s;
	for (size_t i = 0; i < 4; i++)
		h->walls[i] = (struct plan_wall){
			.line = 81 + (int)i,
			.id = arena_printf(s->arena, "den.%zu", i + 1),
			.x_nm = SKETCH_NM(corners[i].x),
			.y_nm = SKETCH_NM(corners[i].y),
			.show = true,
		};
	h->rooms[0] = s->room;
	h->rooms[1] =
		(struct plan_room){.line = 80, .id = "den", .walls = h->walls, .wall_count = 4};
	h->rooms[1].slab = s->room.slab;
	s->plan.rooms = h->rooms;
	s->plan.room_count = 2;
	return h;
}

/* In the bay's east wall, 900 wide, its south jamb at y = 1000. */
static struct plan_doorway *add_doorway(struct house *h, bool clockwise)
{
	const char *wall = clockwise ? "bay.3" : "bay.2";
	struct plan_doorway *doorway =
		sketch_add_doorway(h->sketch, wall, clockwise ? 2100 : 1000, 900);
	h->rooms[0].doorway_count++;
	doorway->to = &h->rooms[1];
	return doorway;
}

static void lay_apart(struct house *h)
{
	h->laid[0] = &h->rooms[0];
	h->laid[1] = &h->rooms[1];
	h->lays[0] = (struct plan_lay){.rooms = &h->laid[0], .room_count = 1};
	h->lays[1] = (struct plan_lay){.rooms = &h->laid[1], .room_count = 1};
	h->sketch->plan.lays = h->lays;
	h->sketch->plan.lay_count = 2;
}

static void assert_at(struct point p, double x, double y)
{
	assert_near(p.x, x, 1e-9);
	assert_near(p.y, y, 1e-9);
}

static void test_patch_is_of_the_room_that_declares_it(void **state)
{
	(void)state;
	for (int clockwise = 0; clockwise < 2; clockwise++) {
		struct house *h = house_with(120, 40, clockwise);
		add_doorway(h, clockwise);
		const struct site *site = sketch_build_sound(h->sketch);
		const struct site_room *bay = &site->rooms[0], *den = &site->rooms[1];
		assert_int_equal(bay->doorway_count, 1);
		assert_int_equal(den->doorway_count, 1);
		const struct site_doorway *out = &bay->doorways[0], *in = &den->doorways[0];
		assert_int_equal(out->end, SITE_EDGE_OPEN);
		assert_int_equal(in->end, SITE_EDGE_OPEN);
		assert_ptr_equal(out->beyond, den);
		assert_ptr_equal(in->beyond, bay);
		assert_at(out->from, 6000, 1000);
		assert_at(out->stop_from, 6130, 1000);
		assert_at(out->stop_to, 6139, 1900);
		assert_near(ring_area(out->recess), 900 * 134.5, 1e-6);
		assert_int_equal(in->recess.count, 0);
		assert_true(memcmp(&in->from, &out->stop_to, sizeof in->from) == 0);
		assert_true(memcmp(&in->to, &out->stop_from, sizeof in->to) == 0);
		sketch_free(h->sketch);
	}
}

/* No gap along the crossing lines; a gap along the jambs. */
static void test_borders_of_both_rooms(void **state)
{
	(void)state;
	struct house *h = house_with(120, 0, false);
	add_doorway(h, false);
	const struct site *site = sketch_build_sound(h->sketch);
	const size_t jambs[] = {2, 0};
	for (size_t r = 0; r < 2; r++) {
		size_t count, open = 0, jamb = 0;
		struct site_edge *edges =
			site_room_borders(h->sketch->arena, &site->rooms[r], &count);
		for (size_t i = 0; i < count; i++) {
			open += edges[i].kind == SITE_EDGE_OPEN;
			jamb += edges[i].kind == SITE_EDGE_JAMB;
			assert_at(edges[i].to, edges[(i + 1) % count].from.x,
			          edges[(i + 1) % count].from.y);
		}
		assert_int_equal(open, 1);
		assert_int_equal(jamb, jambs[r]);
	}
	struct region ground = site_room_ground(h->sketch->arena, &site->rooms[0]);
	assert_near(region_area(&ground), 24e6 + 900 * 120, 1e-3);
	sketch_free(h->sketch);
}

static void test_two_lays_meet_at_the_stop_line(void **state)
{
	(void)state;
	const double shares[] = {
		[PLAN_STOP_MIDDLE] = 0.5, [PLAN_STOP_NEAR] = 0, [PLAN_STOP_FAR] = 1};
	for (int stop = 0; stop < 3; stop++) {
		struct house *h = house_with(120, 0, false);
		add_doorway(h, false)->stop = (enum plan_stop)stop;
		lay_apart(h);
		const struct site *site = sketch_build_sound(h->sketch);
		const struct site_doorway *out = &site->rooms[0].doorways[0];
		const struct site_doorway *in = &site->rooms[1].doorways[0];
		assert_int_equal(out->end, SITE_EDGE_STOP);
		assert_int_equal(in->end, SITE_EDGE_STOP);
		assert_at(out->stop_from, 6000 + 120 * shares[stop], 1000);
		assert_at(in->stop_to, 6000 + 120 * shares[stop], 1000);
		double own = out->recess.count ? ring_area(out->recess) : 0;
		double back = in->recess.count ? ring_area(in->recess) : 0;
		assert_near(own, 900 * 120 * shares[stop], 1e-6);
		assert_near(back, 900 * 120 * (1 - shares[stop]), 1e-6);
		sketch_free(h->sketch);
	}
}

/* 600 mm and 5 degrees: 349.9 over 4 m. */
static void test_facing_wall_at_its_limits(void **state)
{
	(void)state;
	const struct {
		double gap, lean;
		bool faces;
	} cases[] = {
		{600, 0, true},  {600.001, 0, false}, {0.001, 0, true},  {0, 0, false},
		{50, 349, true}, {50, 351, false},    {430, -349, true}, {430, -351, false},
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct house *h = house_with(cases[i].gap, cases[i].lean, false);
		add_doorway(h, false);
		if (cases[i].faces)
			sketch_build_sound(h->sketch);
		else
			sketch_build_broken(h->sketch, 40, "no wall of room \"den\" faces it");
		sketch_free(h->sketch);
	}
}

/* The same opening declared from both sides is two doorways in one place. */
static void test_declared_once(void **state)
{
	(void)state;
	struct house *h = house_with(120, 0, false);
	add_doorway(h, false);
	struct plan_doorway back = {.line = 90, .id = "D9", .wall = "den.4", .to = &h->rooms[0]};
	back.from_nm = SKETCH_NM(2100);
	back.width_nm = SKETCH_NM(900);
	h->rooms[1].doorways = &back;
	h->rooms[1].doorway_count = 1;
	sketch_build(h->sketch);
	assert_int_equal(h->sketch->diags.diags.count, 2);
	assert_int_equal(h->sketch->diags.diags.items[0].line, 90);
	sketch_free(h->sketch);
}

/* A crack through the opening is one line; its end on the crossing line does not land. */
static void test_crack_through_the_opening(void **state)
{
	(void)state;
	struct house *h = house_with(120, 0, false);
	add_doorway(h, false);
	struct plan_crack *crack =
		sketch_add_crack(h->sketch, (const struct point[]){{5000, 1500}, {6010, 1500}}, 2);
	crack->room = NULL;
	struct line line = sketch_build_sound(h->sketch)->cracks[0].line;
	assert_at(line.points[1], 6010, 1500);
	sketch_free(h->sketch);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_patch_is_of_the_room_that_declares_it),
		cmocka_unit_test(test_borders_of_both_rooms),
		cmocka_unit_test(test_two_lays_meet_at_the_stop_line),
		cmocka_unit_test(test_facing_wall_at_its_limits),
		cmocka_unit_test(test_declared_once),
		cmocka_unit_test(test_crack_through_the_opening),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

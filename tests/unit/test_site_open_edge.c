/* Open edges: two rectangles, `bay` of 6 m by 4 m and `den` to the east of it, open to each
 * other along x = 6000. */
#include "support/program.h"

#include "support/sketch.h"

struct pair {
	struct sketch *sketch;
	struct plan_room rooms[2];
	struct plan_wall den[4];
	const struct plan_room *laid[2];
	struct plan_lay lays[2];
};

/* The den's west wall runs down from (6000 + off, 4000) to (6000 + off, 0). */
static struct pair *pair_with(double off)
{
	struct sketch *s = sketch_of_rectangle(false);
	struct pair *p = ARENA_NEW(s->arena, struct pair);
	const struct point corners[] = {{6000 + off, 0},
	                                {9000, 0},
	                                {9000, 4000},
	                                {6000 + off, 4000}};
	p->sketch = s;
	for (size_t i = 0; i < 4; i++)
		p->den[i] = (struct plan_wall){
			.line = 81 + (int)i,
			.id = arena_printf(s->arena, "den.%zu", i + 1),
			.x_nm = SKETCH_NM(corners[i].x),
			.y_nm = SKETCH_NM(corners[i].y),
			.show = true,
		};
	p->rooms[0] = s->room;
	p->rooms[1] = (struct plan_room){.line = 80, .id = "den", .walls = p->den, .wall_count = 4};
	p->rooms[1].slab = s->room.slab;
	s->plan.rooms = p->rooms;
	s->plan.room_count = 2;
	p->rooms[0].walls[1].kind = p->den[3].kind = PLAN_WALL_OPEN;
	p->rooms[0].walls[1].to = &p->rooms[1];
	p->den[3].to = &p->rooms[0];
	for (size_t i = 0; i < 2; i++) {
		p->laid[i] = &p->rooms[i];
		p->lays[i] = (struct plan_lay){.rooms = &p->laid[i], .room_count = 1};
		p->lays[i].tolerance_nm = SKETCH_NM(5);
	}
	return p;
}

static void lay_together(struct pair *p)
{
	p->lays[0].room_count = 2;
	p->sketch->plan.lays = p->lays;
	p->sketch->plan.lay_count = 1;
}

static void lay_apart(struct pair *p)
{
	p->sketch->plan.lays = p->lays;
	p->sketch->plan.lay_count = 2;
}

static const struct site_edge *edge_at(const struct site_room *room, double x)
{
	for (size_t i = 0; i < room->edge_count; i++)
		if (room->edges[i].from.x == x && room->edges[i].to.x == x)
			return &room->edges[i];
	return NULL;
}

/* The later room moves, whichever side it lies off to; its neighbours go with it. */
static void test_corners_move(void **state)
{
	(void)state;
	const double offs[] = {0, 5, -5};
	for (size_t i = 0; i < 3; i++) {
		struct pair *p = pair_with(offs[i]);
		lay_together(p);
		const struct site *site = sketch_build_sound(p->sketch);
		assert_near(ring_area(site->rooms[0].outline), 24e6, 1e-6);
		assert_near(ring_area(site->rooms[1].outline), 12e6, 1e-6);
		const struct site_edge *own = edge_at(&site->rooms[0], 6000);
		const struct site_edge *like = edge_at(&site->rooms[1], 6000);
		assert_int_equal(own->kind, SITE_EDGE_OPEN);
		assert_int_equal(like->kind, SITE_EDGE_OPEN);
		assert_near(site->rooms[1].edges[0].from.x, 6000, 0);
		assert_near(site->rooms[1].edges[2].to.x, 6000, 0);
		sketch_free(p->sketch);
	}
}

/* Past the lay's tolerance; the later of the two is told of. */
static void test_too_far(void **state)
{
	(void)state;
	struct pair *p = pair_with(5.001);
	lay_together(p);
	sketch_build_broken(p->sketch, 84, "no open edge of room \"bay\" leads back to \"den\"");
	sketch_free(p->sketch);
}

static void test_other_side_is_a_wall(void **state)
{
	(void)state;
	struct pair *p = pair_with(0);
	lay_together(p);
	p->den[3].kind = PLAN_WALL_WALL;
	sketch_build_broken(p->sketch, 12, "no open edge of room \"den\" leads back to \"bay\"");
	sketch_free(p->sketch);
}

static void test_two_lays_stop(void **state)
{
	(void)state;
	struct pair *p = pair_with(3);
	lay_apart(p);
	const struct site *site = sketch_build_sound(p->sketch);
	for (size_t r = 0; r < 2; r++) {
		const struct site_edge *edge = edge_at(&site->rooms[r], 6000);
		assert_int_equal(edge->kind, SITE_EDGE_STOP);
		assert_int_equal(edge->base, SITE_BASE_NONE);
	}
	sketch_free(p->sketch);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_corners_move),
		cmocka_unit_test(test_too_far),
		cmocka_unit_test(test_other_side_is_a_wall),
		cmocka_unit_test(test_two_lays_stop),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

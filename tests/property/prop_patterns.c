/* Seeded, every pattern in random rooms, pinned: E-T1, the cells of a panel make it up; E-T2, a
 * lattice step changes nothing; E-T3, neither does turning and moving the plan. */
#include <math.h>
#include <stdlib.h>

#include "base/strbuf.h"
#include "support/program.h"
#include "support/rooms.h"
#include "units/number.h"

struct way {
	const char *tiles, *lay;
};

static const struct way WAYS[] = {
	{"<tile id='A' kind='stone' wide='97' long='197' thick='9'/>",
         "tile='A' pattern='herringbone'"},
	{"<tile id='A' kind='stone' wide='78' long='251' thick='9'/>",
         "tile='A' pattern='herringbone' in-pairs='2'"},
	{"<tile id='A' kind='stone' wide='97' long='297' thick='9'/>",
         "tile='A' pattern='basketweave'"},
	{"<tile id='A' kind='stone' wide='197' thick='9'/>"
         "<tile id='B' kind='stone' wide='91' thick='9'/>",
         "tile='A B' pattern='pinwheel'"},
	{"<tile id='A' kind='stone' wide='150' thick='9' shape='hexagon'/>",
         "tile='A' pattern='hexagon'"},
	{"<tile id='A' kind='stone' wide='197' long='297' thick='9'/>"
         "<tile id='B' kind='stone' wide='97' thick='9'/>"
         "<module id='P'><piece tile='A' x='0' y='0'/><piece tile='B' x='300' y='0'/>"
         "<piece tile='B' x='300' y='100'/><step x='400' y='0'/><step x='100' y='200'/></module>",
         "tile='A B' pattern='module' module='P'"},
};
enum { WAY_COUNT = sizeof WAYS / sizeof *WAYS };

/* The plan as it is seen after it was turned about the origin, then moved. */
struct motion {
	double angle, c, s, x, y;
};

static struct point moved(const struct motion *m, struct point p)
{
	return (struct point){m->c * p.x - m->s * p.y + m->x, m->s * p.x + m->c * p.y + m->y};
}

static const struct placed_lay *lay_room(struct arena *arena, struct ring room,
                                         const struct way *way, struct point start,
                                         const struct motion *motion)
{
	struct strbuf text = strbuf_in(arena);
	strbuf_add(&text, "<floor version='1' unit='mm'><slab id='S' thickness='150' "
	                  "support='ground' exposure='indoor'/><room id='R' slab='S'><corners>");
	for (size_t i = 0; i < room.count; i++) {
		struct point p = moved(motion, room.points[i]);
		strbuf_printf(&text, "<corner x='%s' y='%s'/>", number_text(arena, p.x, 6),
		              number_text(arena, p.y, 6));
	}
	struct point at = moved(motion, start);
	strbuf_printf(&text,
	              "</corners></room>%s<lay id='L' rooms='R' joint='3' angle='%s' %s>"
	              "<start x='%s' y='%s'/></lay></floor>",
	              way->tiles, number_text(arena, motion->angle, 9), way->lay,
	              number_text(arena, at.x, 6), number_text(arena, at.y, 6));
	const struct site *site = site_from_text(arena, text.text);
	return &placed_from_site(arena, site, rules_for_tests(arena))->lays[0];
}

/* What is left of a ring on the left of a line: for areas, also where it falls apart. */
static struct ring cut_by(struct arena *arena, struct ring ring, struct point from, struct point to)
{
	struct ring left = {ARENA_ARRAY(arena, struct point, 2 * ring.count + 2), 0};
	for (size_t i = 0; i < ring.count; i++) {
		struct point a = ring.points[i], b = ring.points[(i + 1) % ring.count];
		double da = point_cross(point_sub(to, from), point_sub(a, from));
		double db = point_cross(point_sub(to, from), point_sub(b, from));
		if (da >= 0)
			left.points[left.count++] = a;
		if ((da >= 0) != (db >= 0))
			left.points[left.count++] = point_between(a, b, da / (da - db));
	}
	return left;
}

static double area_in_cell(struct arena *arena, struct ring ground, struct ring cell)
{
	for (size_t k = 0; k < cell.count && ground.count > 0; k++)
		ground = cut_by(arena, ground, cell.points[k], cell.points[(k + 1) % cell.count]);
	return ground.count > 2 ? ring_area(ground) : 0;
}

/* All cells of a lattice patch that surely covers the panel. */
static double area_of_cells(const struct placed_lay *lay, const struct panel *panel)
{
	const struct module *m = lay->module;
	struct box box = ring_box(panel->ground.outline);
	double area = point_cross(m->a, m->b), sum = 0;
	int i0 = INT32_MAX, i1 = INT32_MIN, j0 = INT32_MAX, j1 = INT32_MIN;
	for (int k = 0; k < 4; k++) {
		struct point corner = {k & 1 ? box.x1 : box.x0, k & 2 ? box.y1 : box.y0};
		struct point way = point_sub(corner, panel->position);
		int i = (int)floor(point_cross(way, m->b) / area);
		int j = (int)floor(point_cross(m->a, way) / area);
		i0 = i < i0 ? i : i0, i1 = i > i1 ? i : i1;
		j0 = j < j0 ? j : j0, j1 = j > j1 ? j : j1;
	}
	enum { BEYOND = 4 };
	for (int f = 0; f < (int)m->face_count; f++)
		for (int j = j0 - BEYOND; j <= j1 + BEYOND; j++)
			for (int i = i0 - BEYOND; i <= i1 + BEYOND; i++) {
				struct arena *scratch = arena_new();
				struct ring cell =
					module_cell_at(scratch, m, (struct address){f, i, j},
				                       panel->position);
				sum += area_in_cell(scratch, panel->ground.outline, cell);
				arena_free(scratch);
			}
	return sum;
}

static void assert_same(const struct placed_lay *a, const struct placed_lay *b)
{
	assert_int_equal(a->tiling->panel_count, b->tiling->panel_count);
	for (size_t p = 0; p < a->tiling->panel_count; p++) {
		const struct panel *x = &a->tiling->panels[p], *y = &b->tiling->panels[p];
		assert_int_equal(x->whole_count, y->whole_count);
		assert_int_equal(x->piece_count, y->piece_count);
		assert_near(x->tile_mm2, y->tile_mm2, 1);
		assert_near(x->lost_mm2, y->lost_mm2, 1);
		assert_near(x->area_mm2, y->area_mm2, 1);
	}
}

static void check_room(struct seed *seed, struct ring room, const struct way *way,
                       struct point start)
{
	const struct motion still = {.c = 1};
	const struct motion turned = {53.130102354, 0.6, 0.8, 1234.5, -777.25};
	const struct motion quarter = {90, 0, 1, -50, 19};
	struct arena *arena = arena_new();
	const struct placed_lay *lay = lay_room(arena, room, way, start, &still);
	for (size_t p = 0; p < lay->tiling->panel_count; p++) {
		const struct panel *panel = &lay->tiling->panels[p];
		assert_near(area_of_cells(lay, panel), panel->area_mm2, 1);
	}
	const struct module *m = lay->module;
	int i = seed_below(seed, 5) - 2, j = seed_below(seed, 5) - 2;
	assert_same(lay,
	            lay_room(arena, room, way, point_add(start, module_step(m, i, j)), &still));
	assert_same(lay, lay_room(arena, room, way, start, &quarter));
	assert_same(lay, lay_room(arena, room, way, start, &turned));
	arena_free(arena);
}

static void test_every_pattern(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_patterns E-T1 E-T2 E-T3");
	int rooms = getenv("JURYSTICK_LONG") ? 100 : 10;
	for (int w = 0; w < WAY_COUNT; w++)
		for (int shape = 0; shape < rooms; shape++) {
			struct random_room room = random_room(&seed, shape, 200);
			struct point start = {seed_between(&seed, 20, 200),
			                      seed_between(&seed, 20, 200)};
			check_room(&seed, (struct ring){room.corners, room.corner_count}, &WAYS[w],
			           start);
		}
}

/* Walls on joint lines, corners on corners of tile: all in steps of the module's 100 mm. */
static void test_walls_on_joints(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_patterns walls on joints");
	const double gap = 6, joint = 3; /* the default; of lay_room */
	const double offsets[] = {0, gap, gap + joint / 2, gap + joint, -joint / 2};
	for (int w = 0; w < WAY_COUNT; w++)
		for (size_t k = 0; k < sizeof offsets / sizeof *offsets; k++) {
			struct point room[] = {{0, 0},      {1800, 0},    {1800, 900},
			                       {1200, 900}, {1200, 1500}, {0, 1500}};
			check_room(&seed, (struct ring){room, 6}, &WAYS[w],
			           (struct point){offsets[k], offsets[k]});
		}
}

/* A ragged round of a thousand corners, each some millimetres from the next. */
static void test_a_thousand_corners(void **state)
{
	(void)state;
	enum { CORNERS = 1000 };
	struct seed seed = seed_start("prop_patterns a thousand corners");
	struct point *corners = calloc(CORNERS, sizeof *corners);
	assert_non_null(corners);
	for (int w = 0; w < WAY_COUNT; w++) {
		for (int i = 0; i < CORNERS; i++) {
			double radius = 1500 + seed_between(&seed, -6, 6);
			struct frame way = frame_from_deg(360.0 * i / CORNERS);
			/* Whole hundredths: what a plan can say. */
			corners[i] = (struct point){round(way.cos * radius * 100) / 100,
			                            round(way.sin * radius * 100) / 100};
		}
		check_room(&seed, (struct ring){corners, CORNERS}, &WAYS[w],
		           (struct point){seed_between(&seed, 20, 200), 7});
	}
	free(corners);
}

/* ---- mirrored ---- */

/* What a lay is across a wall of glass: courses that step to the right step to the left. */
static const struct {
	struct way way, mirrored;
} TWINS[] = {
	{{"<tile id='A' kind='stone' wide='97' long='197' thick='9'/>", "tile='A' pattern='grid'"},
         {"<tile id='A' kind='stone' wide='97' long='197' thick='9'/>", "tile='A' pattern='grid'"}},
	{{"<tile id='A' kind='stone' wide='97' long='197' thick='9'/>",
          "tile='A' pattern='running' shift='1/3'"},
         {"<tile id='A' kind='stone' wide='97' long='197' thick='9'/>",
          "tile='A' pattern='running' shift='2/3'"}},
	{{"<tile id='A' kind='stone' wide='97' long='197' thick='9'/>",
          "tile='A' pattern='running' shift='1/4'"},
         {"<tile id='A' kind='stone' wide='97' long='197' thick='9'/>",
          "tile='A' pattern='running' shift='3/4'"}},
};
enum { TWIN_COUNT = sizeof TWINS / sizeof *TWINS };

static void test_mirrored(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_patterns mirrored");
	const struct motion still = {.c = 1};
	const double course = 100; /* its lower border is its upper one in the glass */
	for (int shape = 0; shape < 5 * TWIN_COUNT; shape++) {
		struct random_room room = random_room(&seed, shape, 200);
		struct ring corners = {room.corners, room.corner_count};
		struct point start = {seed_between(&seed, 20, 200), seed_between(&seed, 20, 200)};
		struct arena *arena = arena_new();
		const struct placed_lay *lay =
			lay_room(arena, corners, &TWINS[shape % TWIN_COUNT].way, start, &still);
		for (size_t i = 0; i < corners.count; i++)
			corners.points[i].y = -corners.points[i].y;
		start.y = -start.y - course;
		assert_same(lay, lay_room(arena, corners, &TWINS[shape % TWIN_COUNT].mirrored,
		                          start, &still));
		arena_free(arena);
	}
}

/* ---- what it costs ---- */

/* Faces looked at and things stored, over all panels. */
static double effort_of(const struct placed_lay *lay)
{
	double effort = 0;
	for (size_t p = 0; p < lay->tiling->panel_count; p++) {
		const struct panel *panel = &lay->tiling->panels[p];
		effort += (double)(panel->work.faces + panel->work.rows + panel->work.edges) +
		          (double)(panel->run_count + panel->piece_count);
	}
	return effort;
}

/* E-T5: tile of a tenth of the side is a hundred times as many, and ten times the trouble. */
static void test_whole_tile_costs_nothing(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_patterns E-T5");
	const struct motion still = {.c = 1};
	const struct way coarse = {"<tile id='A' kind='stone' wide='97' thick='9'/>",
	                           "tile='A' pattern='grid'"};
	const struct way fine = {"<tile id='A' kind='stone' wide='7' thick='9'/>",
	                         "tile='A' pattern='grid'"};
	const double side_ratio = 10, slack = 2;
	for (int shape = 0; shape < 10; shape++) {
		struct random_room room = random_room(&seed, shape, 200);
		struct ring corners = {room.corners, room.corner_count};
		struct arena *arena = arena_new();
		struct point start = {50, 50};
		double few = effort_of(lay_room(arena, corners, &coarse, start, &still));
		double many = effort_of(lay_room(arena, corners, &fine, start, &still));
		if (many > side_ratio * slack * few)
			fail_msg("room %d: %.0f for coarse tile, %.0f for fine", shape, few, many);
		arena_free(arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_every_pattern),
		cmocka_unit_test(test_walls_on_joints),
		cmocka_unit_test(test_a_thousand_corners),
		cmocka_unit_test(test_mirrored),
		cmocka_unit_test(test_whole_tile_costs_nothing),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

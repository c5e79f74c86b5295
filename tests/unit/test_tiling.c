/* Whole and cut tile of rooms small enough to count by hand. */
#include "geometry/overlay.h"
#include "layout/placed.h"
#include "support/program.h"
#include "support/rooms.h"

/* One room of millimetre corners, tile 100 x 100, joint 4, grid pinned at (-2, -2), so that
 * with the gap of 0 a whole tile starts at both walls through the origin. */
static const struct tiling *tiling_of(struct arena *arena, const char *corners, const char *inside,
                                      const char *lay)
{
	const char *text = arena_printf(
		arena,
		"<floor version=\"1\" unit=\"mm\">"
		"<slab id=\"S\" thickness=\"100\" support=\"ground\" exposure=\"indoor\"/>"
		"<room id=\"R\" slab=\"S\"><corners>%s</corners>%s</room>"
		"<tile id=\"T\" kind=\"porcelain\" wide=\"100\" thick=\"8\"/>"
		"<lay id=\"L\" rooms=\"R\" tile=\"T\" joint=\"4\" pattern=\"grid\" gap=\"0\" "
		"gap-max=\"6\" "
		"%s><start x=\"-2\" y=\"-2\"/></lay></floor>",
		corners, inside, lay);
	const struct site *site = site_from_text(arena, text);
	return placed_from_site(arena, site, rules_for_tests(arena))->lays[0].tiling;
}

#define SQUARE(side)                                                                 \
	"<corner x=\"0\" y=\"0\"/><corner x=\"" side "\" y=\"0\"/><corner x=\"" side \
	"\" y=\"" side "\"/><corner x=\"0\" y=\"" side "\"/>"

/* A wall at 45 degrees across the corner of the last tile, at 516, 516. */
#define SLANTED(y, x)                                                                         \
	"<corner x=\"0\" y=\"0\"/><corner x=\"520\" y=\"0\"/><corner x=\"520\" y=\"" y "\"/>" \
	"<corner x=\"" x "\" y=\"520\"/><corner x=\"0\" y=\"520\"/>"

static const struct {
	const char *name, *corners, *inside, *lay;
	long whole;
	size_t pieces;
	double lost_mm2;
} ROOMS[] = {
	{"five by five, flush", SQUARE("516"), "", "", 25, 0, 0},
	{"a rim of half a tile", SQUARE("570"), "", "", 25, 11, 0},
	{"a rim of 5 mm is no tile", SQUARE("525"), "", "", 25, 0, 5 * 100 * 10 + 25},
	{"two walls 0.03 mm inside the tile", SQUARE("515.97"), "", "", 25, 0, 0},
	{"two walls 0.04 mm inside, the corner 0.057", SQUARE("515.96"), "", "", 24, 1, 0},
	{"two walls 0.06 mm inside the tile", SQUARE("515.94"), "", "", 16, 9, 0},
	{"a corner 0.048 mm behind a slant", SLANTED("511.932", "511.932"), "", "", 25, 0, 0},
	{"a corner 0.052 mm behind a slant", SLANTED("511.926", "511.926"), "", "", 24, 1, 0},
	{"a pipe inside one tile", SQUARE("516"),
         "<obstacle id=\"P\" kind=\"drain\" x=\"258\" y=\"258\" across=\"40\"/>", "", 24, 1, 0},
	{"a column on four tiles", SQUARE("516"),
         "<obstacle id=\"C\" kind=\"drain\" x=\"206\" y=\"206\" wide=\"60\" deep=\"60\"/>", "", 21,
         4, 0},
	{"a bar that cuts tiles in two", SQUARE("516"),
         "<obstacle id=\"B\" kind=\"drain\" x=\"258\" y=\"258\" wide=\"20\" deep=\"400\"/>", "", 20,
         8, 0},
	{"turned a quarter", SQUARE("516"), "", "angle=\"90\"", 25, 0, 0},
};

static void test_counts(void **state)
{
	(void)state;
	for (size_t i = 0; i < sizeof ROOMS / sizeof *ROOMS; i++) {
		struct arena *arena = arena_new();
		const struct tiling *tiling =
			tiling_of(arena, ROOMS[i].corners, ROOMS[i].inside, ROOMS[i].lay);
		const struct panel *panel = &tiling->panels[0];
		if (panel->whole_count != ROOMS[i].whole || panel->piece_count != ROOMS[i].pieces)
			fail_msg("%s: whole %ld, expected %ld; pieces %zu, expected %zu",
			         ROOMS[i].name, panel->whole_count, ROOMS[i].whole,
			         panel->piece_count, ROOMS[i].pieces);
		assert_near(panel->lost_mm2, ROOMS[i].lost_mm2, 1e-6);
		arena_free(arena);
	}
}

/* E-T1: cells fill their panel. The whole lattice is laid out and cut by the overlay. */
static double area_by_overlay(struct arena *arena, const struct tiling *tiling,
                              const struct panel *panel)
{
	struct region ground = {(struct polygon *)&panel->ground, 1};
	double area = 0;
	for (int i = -30; i < 30; i++)
		for (int j = -30; j < 30; j++) {
			struct ring face =
				module_face_at(arena, tiling->module, (struct address){0, i, j},
			                       panel->position);
			struct region one = region_from_ring(arena, face);
			struct region seen = overlay_intersection(arena, &one, &ground);
			area += region_area(&seen);
		}
	return area;
}

static void test_areas_against_the_overlay(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct tiling *tiling = tiling_of(
		arena,
		"<corner x=\"0\" y=\"0\"/><corner x=\"1500\" y=\"40\"/><corner x=\"1340\" "
		"y=\"900\"/>"
		"<corner x=\"700\" y=\"610\"/><corner x=\"-90\" y=\"1200\"/>",
		"<obstacle id=\"P\" kind=\"drain\" x=\"600\" y=\"300\" across=\"260\"/>",
		"angle=\"30\"");
	const struct panel *panel = &tiling->panels[0];
	assert_near(panel->tile_mm2 + panel->lost_mm2, area_by_overlay(arena, tiling, panel), 1e-3);
	assert_true(panel->piece_count > 20 && panel->whole_count > 40);
	arena_free(arena);
}

static void test_near_a_line(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct tiling *tiling = tiling_of(arena, SQUARE("516"), "", "");
	struct point ends[] = {{50, 50}, {50, 470}};
	size_t count;
	tiling_near(arena, tiling, (struct line){ends, 2}, 0, &count);
	assert_int_equal(count, 5); /* one column */
	tiling_near(arena, tiling, (struct line){ends, 2}, 53.9, &count);
	assert_int_equal(count, 5); /* the next face begins at 104 */
	tiling_near(arena, tiling, (struct line){ends, 2}, 54.1, &count);
	assert_int_equal(count, 10);
	struct point single[] = {{102, 102}};
	tiling_near(arena, tiling, (struct line){single, 1}, 3, &count);
	assert_int_equal(count, 4); /* a crossing of joints */
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_counts),
		cmocka_unit_test(test_areas_against_the_overlay),
		cmocka_unit_test(test_near_a_line),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

/* The teaching examples of the trade: what balancing two slivers gives (docs/sources.md
 * R-T01, R-T02), a third of offset (R-T10), and what a wall's phase makes of its cut. */
#include "layout/cut_profile.h"
#include "layout/position.h"
#include "support/program.h"
#include "support/rooms.h"

static const double IN = 25.4;

static const struct position *position_of(struct arena *arena, const char *text)
{
	const struct site *site = site_from_text(arena, text);
	const struct rules *rules = rules_for_tests(arena);
	const struct plan_lay *lay = &site->plan->lays[0];
	const struct field *field = field_place(arena, site, rules, lay, NULL);
	return position_search(arena, field, module_from_lay(arena, lay), rules);
}

/* A room `wide` inches along u between its gaps, exactly nine tiles deep, square tile. */
static const char *room_of_width(struct arena *arena, const char *wide, const char *tile,
                                 const char *joint, const char *more)
{
	return arena_printf(
		arena,
		"<floor version=\"1\" unit=\"in\">"
		"<slab id=\"S\" thickness=\"4in\" support=\"ground\" exposure=\"indoor\"/>"
		"<room id=\"R\" slab=\"S\"><walls x=\"0\" y=\"0\" heading=\"0\">"
		"<wall length=\"%s\" id=\"south\"/><wall length=\"10ft\" id=\"east\"/>"
		"<wall length=\"%s\"/><wall length=\"10ft\" id=\"west\"/></walls></room>"
		"<tile id=\"T\" kind=\"porcelain\" wide=\"%s\" thick=\"3/8in\"/>"
		"<lay id=\"L\" rooms=\"R\" tile=\"T\" joint=\"%s\" pattern=\"grid\" gap=\"0in\" "
		"gap-max=\"0in\" tolerance=\"0in\" %s/></floor>",
		wide, wide, tile, joint, more);
}

/* Borders run south, east, north, west. */
enum { SOUTH, EAST, NORTH, WEST };

static void test_full_tile_and_sliver(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	/* Four full 24 in tiles, four joints of 1/8 in, a cut of 1 1/2 in: 98 in. */
	const char *text = room_of_width(arena, "98in", "24in", "1/8in", "");
	const struct position *position = position_of(arena, text);
	assert_near(position->cuts[EAST].least, 12.75 * IN, 1.0 / 16 * IN);
	assert_near(position->cuts[WEST].least, 12.75 * IN, 1.0 / 16 * IN);
	arena_free(arena);
}

static void test_two_slivers(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	/* 1 3/4 in, five tiles of 11 3/4 in, 1 1/4 in, six joints of 1/16 in: 62 1/8 in. The
	 * example leaves the joints out: half of one is allowed beside the printed step. */
	const char *text = room_of_width(arena, "62 1/8in", "11 3/4in", "1/16in", "");
	const struct position *position = position_of(arena, text);
	assert_near(position->cuts[EAST].least, 7.375 * IN, 1.5 / 16 * IN);
	assert_near(position->cuts[WEST].least, 7.375 * IN, 1.5 / 16 * IN);
	arena_free(arena);
}

static void test_full_at_holds_a_whole_tile(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const char *text = room_of_width(arena, "98in", "24in", "1/8in", "full-at=\"west\"");
	const struct position *position = position_of(arena, text);
	assert_null(position->unmet);
	assert_near(position->cuts[WEST].least, 24 * IN, 1e-6);
	assert_near(position->cuts[EAST].least, 1.5 * IN, 1e-6);
	arena_free(arena);
}

static void test_the_first_of_two_that_exclude_each_other(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const char *text = room_of_width(arena, "98in", "24in", "1/8in", "full-at=\"east west\"");
	const struct position *position = position_of(arena, text);
	assert_non_null(position->unmet);
	assert_string_equal(position->unmet->id, "west");
	assert_near(position->cuts[EAST].least, 24 * IN, 1e-6);
	assert_near(position->key.unmet, 1, 0);
	arena_free(arena);
}

static void test_centre_on(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const char *text = room_of_width(arena, "98in", "24in", "1/8in", "centre-on=\"south\"");
	const struct position *position = position_of(arena, text);
	assert_null(position->unmet);
	double phase = fmod(position->parts[0].x - 49 * IN, 24.125 * IN / 2);
	assert_near(fmin(fabs(phase), 24.125 * IN / 2 - fabs(phase)), 0, 1.0 / 32 * IN);
	arena_free(arena);
}

/* A third of offset against a wall that runs 3 mm out over 3 m: worked by hand from where the
 * joints of each course lie, 600 mm apart. */
static void test_course_ends_at_a_wall_out_of_true(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct position *position = position_of(
		arena, "<floor version=\"1\" unit=\"mm\">"
		       "<slab id=\"S\" thickness=\"100\" support=\"ground\" exposure=\"indoor\"/>"
		       "<room id=\"R\" slab=\"S\"><corners><corner x=\"0\" y=\"0\"/>"
		       "<corner x=\"3103\" y=\"0\"/><corner x=\"3100\" y=\"3000\"/>"
		       "<corner x=\"0\" y=\"3000\"/></corners></room>"
		       "<tile id=\"T\" kind=\"porcelain\" wide=\"298\" long=\"598\" thick=\"9\"/>"
		       "<lay id=\"L\" rooms=\"R\" tile=\"T\" joint=\"2\" "
		       "pattern=\"running\" shift=\"1/3\" gap=\"0\" gap-max=\"0\">"
		       "<start x=\"0\" y=\"0\" at=\"corner\"/></lay></floor>");
	static const double from[] = {102, 501.7, 301.4}, to[] = {99, 499.6, 299.3};
	const struct border_cut *east = &position->cuts[EAST];
	assert_int_equal(east->course_count, 3);
	for (size_t i = 0; i < 3; i++) {
		assert_near(east->courses[i], from[i], 0.01);
		assert_near(east->courses_to[i], to[i], 0.01);
	}
	/* Courses run along the south wall: it has none. */
	assert_int_equal(position->cuts[SOUTH].course_count, 0);
	arena_free(arena);
}

static void test_profile(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	const struct rules *rules = rules_for_tests(arena);
	/* Tile 100, joint 4, remainders up to 6 are no tile, walls true. */
	struct cut_profile profile = cut_profile_from(rules, 104, 4, 6, 0, 1);
	static const struct {
		double phase, cut;
	} rows[] = {
		{0, 100},                                 /* in the joint: the next tile is whole */
		{2, 100},                                 /* at the tile's edge */
		{12, 90},   {52, 50}, {95, 7}, {96, 100}, /* a remainder of 6 */
		{103, 100},
	};
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
		assert_near(cut_profile_cut(&profile, rows[i].phase), rows[i].cut, 1e-9);
	assert_near(cut_profile_penalty(&profile, 50), 0, 0);
	assert_true(cut_profile_penalty(&profile, 49) > 0);
	/* Convex: steeper below two thirds of the small cut. */
	double gentle = cut_profile_penalty(&profile, 40) - cut_profile_penalty(&profile, 41);
	double steep = cut_profile_penalty(&profile, 20) - cut_profile_penalty(&profile, 21);
	assert_true(steep > gentle);
	arena_free(arena);
}

/* The closed form of the mean against a plain sum over many phases. */
static void test_mean_penalty(void **state)
{
	(void)state;
	struct seed seed = seed_start("test_setting_out mean");
	struct arena *arena = arena_new();
	const struct rules *rules = rules_for_tests(arena);
	for (int round = 0; round < 200; round++) {
		double tolerance = seed_below(&seed, 8);
		struct cut_profile profile = cut_profile_from(rules, 104, 4, 6, tolerance, 1);
		double from = seed_between(&seed, -300, 300),
		       to = from + seed_between(&seed, 1, 500);
		const int steps = 20000;
		double sum = 0;
		for (int i = 0; i < steps; i++) {
			double at = from + (i + 0.5) / steps * (to - from);
			sum += cut_profile_worst_penalty(&profile, cut_profile_phase(&profile, at));
		}
		assert_near(cut_profile_mean_penalty(&profile, from, to), sum / steps, 2e-3);
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_full_tile_and_sliver),
		cmocka_unit_test(test_two_slivers),
		cmocka_unit_test(test_full_at_holds_a_whole_tile),
		cmocka_unit_test(test_the_first_of_two_that_exclude_each_other),
		cmocka_unit_test(test_centre_on),
		cmocka_unit_test(test_course_ends_at_a_wall_out_of_true),
		cmocka_unit_test(test_profile),
		cmocka_unit_test(test_mean_penalty),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

/* A floor divided into parts: nothing is left out, nothing is shown twice over, and match
 * lines keep off what lies along them. */
#include "support/program.h"

#include "sheets/floor_plan.h"
#include "sheets/lay_view.h"
#include "sheets/parts.h"
#include "support/laid.h"
#include "support/rooms.h"

struct fixture {
	struct arena *arena;
	struct draft draft;
	struct margin margin;
};

static const struct paper_box DRAWING = {0, 0, 280, 200};

/* An L of 20 m by 12 m, its upper right quarter missing; a column and a slab joint in its
 * very middle, where a match line would stand. */
static struct fixture fixture_of(struct arena *arena, const char *inside, const char *beside)
{
	const char *text = arena_printf(
		arena,
		"<floor version='1' unit='mm'>"
		"<slab id='S1' thickness='125mm' support='ground' exposure='indoor'/>"
		"<room id='hall' slab='S1'><corners><corner x='0' y='0'/><corner x='20000' y='0'/>"
		"<corner x='20000' y='4000'/><corner x='9000' y='4000'/>"
		"<corner x='9000' y='12000'/><corner x='0' y='12000'/></corners>%s</room>%s"
		"</floor>",
		inside, beside);
	struct fixture f = {.arena = arena};
	const struct site *site = site_from_text(arena, text);
	f.draft = (struct draft){.arena = arena,
	                         .site = site,
	                         .placed = placed_from_site(arena, site, rules_for_tests(arena))};
	f.margin =
		(struct margin){.window = floor_plan_window(arena, site), .need = {15, 15, 15, 15}};
	return f;
}

static struct parts divide(const struct fixture *f, double scale, size_t most)
{
	return parts_divide(&f->draft, &f->margin, DRAWING, scale, "install-hall", most);
}

static double box_area(struct box b)
{
	return (b.x1 - b.x0) * (b.y1 - b.y0);
}

static bool is_within(struct box inner, struct box outer)
{
	return inner.x0 >= outer.x0 && inner.y0 >= outer.y0 && inner.x1 <= outer.x1 &&
	       inner.y1 <= outer.y1;
}

static void test_parts_cover_the_ground_once(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct fixture f = fixture_of(arena, "", "");
	struct parts parts = divide(&f, 20, 50);
	double ground = 0;
	assert_true(parts.count > 4);
	for (size_t i = 0; i < parts.count; i++) {
		struct box core = parts.list[i].core;
		struct view view = {.scale = 1, .window = &core};
		struct region seen = view_ground(arena, &view, &f.draft.site->rooms[0]);
		ground += region_area(&seen);
		assert_true(is_within(core, parts.list[i].window));
		assert_true(box_area(core) < box_area(parts.list[i].window));
		for (size_t k = 0; k < i; k++) {
			struct box other = parts.list[k].core;
			assert_true(core.x0 >= other.x1 || other.x0 >= core.x1 ||
			            core.y0 >= other.y1 || other.y0 >= core.y1);
		}
	}
	assert_near(ground, 9000.0 * 12000 + 11000.0 * 4000, 1);
	/* The missing quarter has no sheet. */
	assert_true(parts.count < (size_t)parts.columns * (size_t)parts.rows);
	arena_free(arena);
}

static void test_every_part_fits_its_sheet(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct fixture f = fixture_of(arena, "", "");
	static const double SCALES[] = {10, 20, 50};
	for (size_t s = 0; s < sizeof SCALES / sizeof *SCALES; s++) {
		struct parts parts = divide(&f, SCALES[s], 400);
		assert_true(parts.count > 1);
		for (size_t i = 0; i < parts.count; i++) {
			struct view view = parts_view(&parts, i);
			struct box w = parts.list[i].window;
			struct paper_point a = view_point(&view, (struct point){w.x0, w.y1});
			struct paper_point b = view_point(&view, (struct point){w.x1, w.y0});
			assert_true(a.x >= 15 - 1e-6 && a.y >= 15 - 1e-6);
			assert_true(b.x <= 265 + 1e-6 && b.y <= 185 + 1e-6);
		}
	}
	arena_free(arena);
}

static void test_what_fits_is_one_part_and_too_many_are_none(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct fixture f = fixture_of(arena, "", "");
	struct parts one = divide(&f, 100, 16);
	assert_int_equal(one.count, 1);
	assert_string_equal(one.list[0].name, "install-hall");
	assert_int_equal(divide(&f, 10, 16).count, 0);
	arena_free(arena);
}

static void test_neighbours_know_each_other(void **state)
{
	(void)state;
	static const enum side BACK[] = {[SIDE_LEFT] = SIDE_RIGHT,
	                                 [SIDE_RIGHT] = SIDE_LEFT,
	                                 [SIDE_TOP] = SIDE_BOTTOM,
	                                 [SIDE_BOTTOM] = SIDE_TOP};
	struct arena *arena = arena_new();
	struct fixture f = fixture_of(arena, "", "");
	struct parts parts = divide(&f, 20, 50);
	size_t met = 0;
	for (size_t i = 0; i < parts.count; i++)
		for (int side = 0; side < SIDE_COUNT; side++) {
			const struct part *next =
				parts_next_to(&parts, &parts.list[i], (enum side)side);
			if (!next)
				continue;
			met++;
			assert_ptr_equal(parts_next_to(&parts, next, BACK[side]), &parts.list[i]);
		}
	assert_true(met >= 2 * (parts.count - 1));
	assert_null(parts_next_to(&parts, &parts.list[0], SIDE_LEFT));
	arena_free(arena);
}

/* Where the first match line from west to east stands. */
static double first_cut(const struct fixture *f)
{
	return divide(f, 50, 16).list[0].core.x1;
}

static void test_a_match_line_keeps_off_what_lies_along_it(void **state)
{
	(void)state;
	struct arena *arena = arena_new();
	struct fixture plain = fixture_of(arena, "", "");
	double middle = first_cut(&plain);
	assert_near(middle, 10000, 1);
	const char *joint = "<slab-joint id='J1' kind='construction' width='6mm'>"
			    "<at x='10000' y='0'/><at x='10000' y='4000'/></slab-joint>";
	struct fixture jointed = fixture_of(arena, "", joint);
	assert_true(fabs(first_cut(&jointed) - 10000) > 400);
	const char *column = "<obstacle id='C1' kind='column' x='10100' y='2000' wide='600'"
			     " deep='600'/>";
	struct fixture columned = fixture_of(arena, column, "");
	double at = first_cut(&columned);
	assert_true(at < 9800 || at > 10400);
	/* A joint across the match line moves nothing. */
	const char *across = "<slab-joint id='J1' kind='construction' width='6mm'>"
			     "<at x='0' y='2000'/><at x='20000' y='2000'/></slab-joint>";
	struct fixture crossed = fixture_of(arena, "", across);
	assert_near(first_cut(&crossed), middle, 1e-6);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_parts_cover_the_ground_once),
		cmocka_unit_test(test_every_part_fits_its_sheet),
		cmocka_unit_test(test_what_fits_is_one_part_and_too_many_are_none),
		cmocka_unit_test(test_neighbours_know_each_other),
		cmocka_unit_test(test_a_match_line_keeps_off_what_lies_along_it),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

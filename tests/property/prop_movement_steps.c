/* Seeded: E-M3. A field joint lies on a joint of the pattern that runs straight its way; where
 * there is none it is cut through tile, at a head joint, and it is asked about where a stepped
 * one would be cheaper: of all ways from head joint to head joint beside it, by trying them. */
#include "support/program.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "findings/finding.h"
#include "support/rooms.h"

enum { FLOORS = 200, FLOORS_LONG = 5000, COURSES_MOST = 256, JOINTS_MOST = 4 };
static const double CUT_TILE = 450, TURN = 150, SAME = 0.05;

/* ---- random floors ---- */

static const char *floor_text(struct arena *arena, struct seed *seed)
{
	/* Long flat stairs meet few head joints: there a joint that steps is soon cheaper. */
	static const char *const PATTERNS[] = {
		"grid",
		"running' shift='1/2",
		"running' shift='1/3",
		"running' shift='2/5",
		"running' shift='1/20' stagger='alternate",
		"running' shift='1/8",
		"running' shift='1/10",
		"running' shift='1/12",
	};
	const char *pattern = PATTERNS[seed_below(seed, 8)];
	int side = 90 + seed_below(seed, 300);
	/* Deep enough for every course of a period. */
	int wide = 5000 + seed_below(seed, 13000), deep = 14 * side + seed_below(seed, 6000);
	return arena_printf(
		arena,
		"<floor version='1' unit='mm'>"
		"<slab id='S' thickness='150' support='ground' exposure='indoor'/>"
		"<room id='R' slab='S'><corners><corner x='0' y='0'/><corner x='%d' y='0'/>"
		"<corner x='%d' y='%d'/><corner x='0' y='%d'/></corners></room>"
		"<tile id='T' kind='porcelain' wide='%d' long='%d' thick='10'/>"
		"<lay id='L' rooms='R' tile='T' joint='%d' angle='%d' pattern='%s'>"
		"<start x='%d' y='%d'/></lay></floor>",
		wide, wide, deep, deep, side, side + seed_below(seed, 800), 2 + seed_below(seed, 3),
		90 * seed_below(seed, 4), pattern, seed_below(seed, 500), seed_below(seed, 500));
}

/* ---- the head joints beside a line, read off the tile ---- */

struct course {
	double low, high; /* across the course */
	double beside[JOINTS_MOST];
	size_t count; /* of its head joints within half a tile of the line */
};

struct courses {
	struct course items[COURSES_MOST];
	size_t count;
};

static struct course *course_at(struct courses *courses, struct box cell)
{
	for (size_t i = 0; i < courses->count; i++)
		if (fabs(courses->items[i].low - cell.y0) < SAME)
			return &courses->items[i];
	assert_true(courses->count < COURSES_MOST);
	courses->items[courses->count] = (struct course){.low = cell.y0, .high = cell.y1};
	return &courses->items[courses->count++];
}

static void add_head_joint(struct course *course, double beside)
{
	for (size_t i = 0; i < course->count; i++)
		if (fabs(course->beside[i] - beside) < SAME)
			return;
	assert_true(course->count < JOINTS_MOST);
	course->beside[course->count++] = beside;
}

static int by_low(const void *a, const void *b)
{
	double x = ((const struct course *)a)->low, y = ((const struct course *)b)->low;
	return (x > y) - (x < y);
}

static void find_courses(struct arena *arena, const struct placed_lay *lay,
                         const struct movement_line *line, struct courses *courses)
{
	size_t count;
	const struct module *module = lay->module;
	struct line run = line->runs[0];
	double a = run.points[0].y, b = run.points[1].y;
	const struct tile_ref *tiles =
		tiling_near(arena, lay->tiling, run, 1.5 * module->pitch, &count);
	for (size_t i = 0; i < count; i++) {
		struct box cell = ring_box(tile_ref_cell(arena, lay->tiling, tiles[i]));
		if (cell.y1 < fmin(a, b) + SAME || cell.y0 > fmax(a, b) - SAME)
			continue;
		struct course *course = course_at(courses, cell);
		double ends[] = {cell.x0 - line->centre, cell.x1 - line->centre};
		for (int k = 0; k < 2; k++)
			if (fabs(ends[k]) <= module->pitch / 2 + SAME)
				add_head_joint(course, ends[k]);
	}
	qsort(courses->items, courses->count, sizeof *courses->items, by_low);
}

/* ---- every way ---- */

static double step_cost(double from, double to)
{
	double step = fabs(to - from);
	return step > SAME ? step + 2 * TURN : 0;
}

static double least_steps(const struct courses *courses)
{
	double least[JOINTS_MOST] = {0}, best = INFINITY;
	for (size_t c = 1; c < courses->count; c++) {
		const struct course *from = &courses->items[c - 1], *to = &courses->items[c];
		double next[JOINTS_MOST];
		for (size_t k = 0; k < to->count; k++) {
			next[k] = INFINITY;
			for (size_t i = 0; i < from->count; i++)
				next[k] = fmin(next[k], least[i] + step_cost(from->beside[i],
				                                             to->beside[k]));
		}
		memcpy(least, next, sizeof least);
	}
	for (size_t k = 0; k < courses->items[courses->count - 1].count; k++)
		best = fmin(best, least[k]);
	return best;
}

static int tiles_cut(const struct courses *courses)
{
	int cut = 0;
	for (size_t c = 0; c < courses->count; c++) {
		bool is_met = false;
		for (size_t k = 0; k < courses->items[c].count; k++)
			is_met = is_met || fabs(courses->items[c].beside[k]) < SAME;
		cut += !is_met;
	}
	return cut;
}

/* ---- what is asked ---- */

static bool is_said(const struct findings *findings, const char *rule, const char *about)
{
	for (size_t i = 0; i < findings->count; i++)
		if (strcmp(findings->items[i].rule->name, rule) == 0 &&
		    strcmp(findings->items[i].about, about) == 0)
			return true;
	return false;
}

struct tally {
	int straight, cut, stepped;
};

static void check_cut_line(struct arena *arena, const struct placed_lay *lay,
                           const struct movement_line *line, const struct findings *findings,
                           const char *text, struct tally *tally)
{
	struct courses courses = {.count = 0};
	assert_int_equal(line->run_count, 1);
	find_courses(arena, lay, line, &courses);
	double length = point_distance(line->runs[0].points[0], line->runs[0].points[1]);
	int cut = tiles_cut(&courses);
	if (cut == (int)courses.count)
		fail_msg("%s meets no head joint\n%s", line->id, text);
	double cost_cut = length + cut * CUT_TILE, cost_stepped = length + least_steps(&courses);
	bool is_asked = is_said(findings, "field-joint-stepped", line->id);
	if (is_asked != (cost_stepped < cost_cut))
		fail_msg("%s: cut %.3f, stepped %.3f, asked %d\n%s", line->id, cost_cut,
		         cost_stepped, is_asked, text);
	tally->cut++;
	tally->stepped += is_asked;
}

static void check_floor(struct arena *arena, const char *text, const struct words *words,
                        struct tally *tally)
{
	const struct placed *placed =
		placed_from_site(arena, site_from_text(arena, text), rules_for_tests(arena));
	const struct findings *findings = findings_judge_plainly(arena, placed, words);
	const struct placed_lay *lay = &placed->lays[0];
	for (size_t i = 0; i < lay->movement->line_count; i++) {
		const struct movement_line *line = &lay->movement->lines[i];
		bool runs_straight = line->along_u || lay->module->offset_count == 1;
		assert_int_equal(line->on_joint, runs_straight);
		assert_int_equal(is_said(findings, "field-joint-cut", line->id), !runs_straight);
		tally->straight += runs_straight;
		if (!runs_straight)
			check_cut_line(arena, lay, line, findings, text, tally);
	}
}

static void test_floors(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_movement_steps");
	struct tally tally = {0};
	int floors = getenv("JURYSTICK_LONG") ? FLOORS_LONG : FLOORS;
	for (int i = 0; i < floors; i++) {
		struct arena *arena = arena_new();
		struct diag_list diags = diag_list_in(arena, "words");
		const struct words *words = words_load(arena, "en", &diags);
		check_floor(arena, floor_text(arena, &seed), words, &tally);
		arena_free(arena);
	}
	/* Each kind was met often. */
	assert_true(tally.straight > floors / 4);
	assert_true(tally.cut - tally.stepped > floors / 4);
	assert_true(tally.stepped > floors / 20);
}

int main(void)
{
	const struct CMUnitTest tests[] = {cmocka_unit_test(test_floors)};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

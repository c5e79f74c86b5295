/* Seeded: E-M1, no run of a panel is longer than the limit; E-M2, no fewer lines on the tile
 * joints do, by trying them all; E-M4, tile ends half a joint's width from the middle of a
 * field joint on both sides. */
#include "support/program.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "support/rooms.h"

static int rooms_to_try(void)
{
	return getenv("JURYSTICK_LONG") ? 250 : 25;
}

/* ---- runs, straight from the borders ---- */

enum { RUNS_MOST = 64 };

struct level_runs {
	double at[RUNS_MOST]; /* where the border is crossed, rising */
	size_t count;
};

static double along(struct point p, bool along_u)
{
	return along_u ? p.x : p.y;
}

static int by_value(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;
	return x < y ? -1 : x > y;
}

static void cross_ring(struct ring ring, bool along_u, double level, struct level_runs *runs)
{
	for (size_t i = 0; i < ring.count; i++) {
		struct point a = ring.points[i], b = ring.points[(i + 1) % ring.count];
		double from = along(a, !along_u) - level, to = along(b, !along_u) - level;
		if ((from < 0) == (to < 0))
			continue;
		assert_true(runs->count < RUNS_MOST);
		runs->at[runs->count++] =
			along(a, along_u) +
			from / (from - to) * (along(b, along_u) - along(a, along_u));
	}
}

static struct level_runs runs_at(const struct polygon *polygon, bool along_u, double level)
{
	struct level_runs runs = {.count = 0};
	cross_ring(polygon->outline, along_u, level, &runs);
	for (size_t h = 0; h < polygon->hole_count; h++)
		cross_ring(polygon->holes[h], along_u, level, &runs);
	qsort(runs.at, runs.count, sizeof *runs.at, by_value);
	return runs;
}

/* The longest run between the cuts, looked for beside every corner. */
static double longest_at(const struct polygon *polygon, bool along_u, double level,
                         const double *cuts, size_t cut_count)
{
	struct level_runs runs = runs_at(polygon, along_u, level);
	double longest = 0;
	for (size_t i = 0; i + 1 < runs.count; i += 2) {
		double from = runs.at[i];
		for (size_t k = 0; k < cut_count; k++)
			if (cuts[k] > from && cuts[k] < runs.at[i + 1]) {
				longest = fmax(longest, cuts[k] - from);
				from = cuts[k];
			}
		longest = fmax(longest, runs.at[i + 1] - from);
	}
	return longest;
}

static double longest_of(const struct polygon *polygon, bool along_u, const double *cuts,
                         size_t cut_count)
{
	double longest = 0;
	for (size_t r = 0; r <= polygon->hole_count; r++) {
		struct ring ring = r ? polygon->holes[r - 1] : polygon->outline;
		for (size_t i = 0; i < ring.count; i++)
			for (int side = -1; side <= 1; side += 2) {
				double level = along(ring.points[i], !along_u) + side * 1e-4;
				longest = fmax(longest, longest_at(polygon, along_u, level, cuts,
				                                   cut_count));
			}
	}
	return longest;
}

/* ---- fewer lines ---- */

struct trial {
	const struct polygon *ground;
	bool along_u; /* the lines' own direction */
	double limit, moved, anchor;
	const double *places;
	size_t place_count;
};

/* Lines where the tile that they move puts them. */
static bool serves(const struct trial *trial, const size_t *chosen, size_t count)
{
	double cuts[8];
	size_t before = 0;
	for (size_t k = 0; k < count; k++)
		before += trial->places[chosen[k]] < trial->anchor;
	for (size_t k = 0; k < count; k++)
		cuts[k] = trial->places[chosen[k]] + ((double)k - (double)before) * trial->moved;
	return longest_of(trial->ground, !trial->along_u, cuts, count) <= trial->limit;
}

static bool any_serves(const struct trial *trial, size_t *chosen, size_t done, size_t count)
{
	if (done == count)
		return serves(trial, chosen, count);
	size_t first = done ? chosen[done - 1] + 1 : 0;
	for (size_t p = first; p < trial->place_count; p++) {
		chosen[done] = p;
		if (any_serves(trial, chosen, done + 1, count))
			return true;
	}
	return false;
}

static void fewer_do_not_serve(const struct placed_lay *lay, size_t part, bool along_u,
                               const char *text)
{
	const struct module *module = lay->module;
	struct box box = ring_box(lay->field->region.polygons[part].outline);
	double low = along_u ? box.y0 : box.x0, high = along_u ? box.y1 : box.x1;
	double period = along_u ? module->course : module->pitch;
	double base = along(lay->position->parts[part], !along_u), places[256];
	struct trial trial = {&lay->field->region.polygons[part],
	                      along_u,
	                      lay->movement->limit,
	                      0,
	                      (low + high) / 2,
	                      places,
	                      0};
	size_t count = 0, chosen[8];
	for (size_t i = 0; i < lay->movement->line_count; i++) {
		const struct movement_line *line = &lay->movement->lines[i];
		if (line->part != part || line->along_u != along_u)
			continue;
		count++;
		trial.moved = line->moved;
	}
	for (double k = ceil((low - base) / period); base + k * period < high; k++) {
		assert_true(trial.place_count < 256);
		places[trial.place_count++] = base + k * period;
	}
	assert_true(count < 8);
	if (count > 0 && any_serves(&trial, chosen, 0, count - 1))
		fail_msg("%zu lines serve where %zu were placed\n%s", count - 1, count, text);
}

/* ---- tile beside the lines ---- */

struct beside {
	double left, right; /* from the centre line to the nearest tile */
};

static void look_at(const struct movement_line *line, struct line run, struct ring ring,
                    struct beside *beside)
{
	double from = along(run.points[0], line->along_u),
	       to = along(run.points[run.count - 1], line->along_u);
	for (size_t i = 0; i < ring.count; i++) {
		double at = along(ring.points[i], line->along_u);
		double off = along(ring.points[i], !line->along_u) - line->centre;
		if (at < fmin(from, to) || at > fmax(from, to))
			continue;
		if (off > 0)
			beside->left = fmin(beside->left, off);
		else
			beside->right = fmin(beside->right, -off);
	}
}

static struct beside tile_beside(struct arena *arena, const struct placed_lay *lay,
                                 const struct movement_line *line)
{
	struct beside beside = {INFINITY, INFINITY};
	for (size_t r = 0; r < line->run_count; r++) {
		size_t count;
		const struct tile_ref *tiles =
			tiling_near(arena, lay->tiling, line->runs[r], line->width, &count);
		for (size_t t = 0; t < count; t++)
			look_at(line, line->runs[r], tile_ref_ring(arena, lay->tiling, tiles[t]),
			        &beside);
	}
	return beside;
}

/* ---- ground ---- */

/* Panels, and what lines take from the ground, are the part: all lines cross it square. */
static void panels_make_up_field(const struct placed_lay *lay, const char *text)
{
	double left = lay->field->area_mm2, slack = 1;
	const struct movement *movement = lay->movement;
	for (size_t p = 0; p < lay->tiling->panel_count; p++)
		left -= lay->tiling->panels[p].area_mm2;
	for (size_t i = 0; i < movement->line_count; i++) {
		const struct movement_line *line = &movement->lines[i];
		double taken = line->on_joint ? line->width - lay->module->joint : line->width;
		for (size_t r = 0; r < line->run_count; r++) {
			struct line run = line->runs[r];
			left -= taken * point_distance(run.points[0], run.points[run.count - 1]);
			slack += 2 * taken * taken; /* crossings, skew ends */
		}
	}
	if (fabs(left) > slack)
		fail_msg("%.3f mm2 in neither panel nor line, %.3f allowed\n%s", left, slack, text);
}

/* ---- the rooms ---- */

/* Every third has a column in its first quarter, which all shapes have. */
static const char *room_text(struct arena *arena, struct seed *seed, int i)
{
	struct random_room room = random_room(seed, i, 700);
	const char *text = random_room_text(arena, &room, "");
	const char *end = strstr(text, "</room>");
	if (i % 3 != 2)
		return text;
	return arena_printf(arena,
	                    "%.*s<obstacle id=\"C\" kind=\"column\" x=\"900\" y=\"900\" "
	                    "wide=\"%d\" deep=\"400\"/>%s",
	                    (int)(end - text), text, 300 + seed_below(seed, 300), end);
}

static void check_room(struct arena *arena, const char *text, size_t *lines)
{
	const struct site *site = site_from_text(arena, text);
	const struct placed *placed = placed_from_site(arena, site, rules_for_tests(arena));
	const struct placed_lay *lay = &placed->lays[0];
	assert_near(lay->movement->limit, 7600, 1e-9); /* indoors, on the ground */
	for (size_t p = 0; p < lay->tiling->panel_count; p++)
		for (int along_u = 0; along_u < 2; along_u++) {
			double run = longest_of(&lay->tiling->panels[p].ground, along_u, NULL, 0);
			if (run > lay->movement->limit + 1e-3)
				fail_msg("panel %zu has a run of %.3f\n%s", p, run, text);
		}
	panels_make_up_field(lay, text);
	for (size_t part = 0; part < lay->field->region.count; part++)
		for (int along_u = 0; along_u < 2; along_u++)
			fewer_do_not_serve(lay, part, along_u, text);
	for (size_t i = 0; i < lay->movement->line_count; i++) {
		const struct movement_line *line = &lay->movement->lines[i];
		struct beside beside = tile_beside(arena, lay, line);
		++*lines;
		assert_near(beside.left, line->width / 2, 0.01);
		assert_near(beside.right, line->width / 2, 0.01);
	}
}

static void test_rooms(void **state)
{
	(void)state;
	struct seed seed = seed_start("prop_movement");
	size_t lines = 0;
	for (int i = 0; i < rooms_to_try(); i++) {
		struct arena *arena = arena_new();
		check_room(arena, room_text(arena, &seed, i), &lines);
		arena_free(arena);
	}
	assert_true(lines > (size_t)rooms_to_try());
}

int main(void)
{
	const struct CMUnitTest tests[] = {cmocka_unit_test(test_rooms)};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

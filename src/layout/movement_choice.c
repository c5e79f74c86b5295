#include "layout/movement_choice.h"

#include "geometry/overlay.h"
#include "geometry/tolerance.h"
#include "layout/chords.h"
#include "layout/movement_anchor.h"
#include "pattern/joint_rows.h"

/* What speaks against a line, worst first. */
struct line_cost {
	double barred; /* near a drain, or lengthwise in a doorway */
	double missed; /* less the corners it meets */
	double length;
	double uneven; /* squares of the panels' extents */
};

struct choice {
	struct arena *arena;
	const struct field *field;
	const struct module *module;
	size_t part;
	bool along_u;
	double limit, moved;
	struct chords chords;
	double *places; /* tile joints, before any tile is moved; rising */
	struct line_cost *costs;
	size_t place_count;
	double anchor;    /* the tile here stays; what lies beyond a line from it moves */
	size_t before;    /* lines on the lesser side of the anchor */
	double low, high; /* extents of the part across the lines */
};

static double across(const struct choice *c, struct point p)
{
	return c->along_u ? p.y : p.x;
}

static struct line_cost cost_sum(struct line_cost a, struct line_cost b)
{
	return (struct line_cost){a.barred + b.barred, a.missed + b.missed, a.length + b.length,
	                          a.uneven + b.uneven};
}

static int compare_term(double a, double b)
{
	double difference = nearbyint((a - b) * 1e3);
	return difference < 0 ? -1 : difference > 0;
}

static int cost_compare(struct line_cost a, struct line_cost b)
{
	int order = compare_term(a.barred, b.barred);
	if (!order)
		order = compare_term(a.missed, b.missed);
	if (!order)
		order = compare_term(a.length, b.length);
	return order ? order : compare_term(a.uneven, b.uneven);
}

/* ---- the places and what speaks against each ---- */

static double length_at(const struct choice *c, double place)
{
	struct region ground = {&c->field->region.polygons[c->part], 1};
	struct box box = box_grown(ring_box(ground.polygons[0].outline), TOLERANCE_WHOLE);
	struct point ends[2] = {{place, box.y0}, {place, box.y1}};
	if (c->along_u) {
		ends[0] = (struct point){box.x0, place};
		ends[1] = (struct point){box.x1, place};
	}
	size_t count;
	double length = 0;
	const struct line *runs =
		overlay_clip_line(c->arena, (struct line){ends, 2}, &ground, &count);
	for (size_t i = 0; i < count; i++)
		for (size_t k = 0; k + 1 < runs[i].count; k++)
			length += point_distance(runs[i].points[k], runs[i].points[k + 1]);
	return length;
}

/* A border that the line would run along within one tile, as it must not. */
static bool is_barred_by(const struct choice *c, const struct field_border *border, double place)
{
	double from = across(c, border->from), to = across(c, border->to);
	if (border->kind == SITE_EDGE_DRAIN)
		return place > fmin(from, to) - c->module->tile_long &&
		       place < fmax(from, to) + c->module->tile_long;
	/* A stop line across the field joints' direction: the line would run through the opening
	 * between its jambs, out of the door. */
	return border->kind == SITE_EDGE_STOP && fabs(to - from) > c->module->tile_width &&
	       place > fmin(from, to) && place < fmax(from, to);
}

/* Corners that point into the field, columns' and jambs' among them. */
static bool is_corner_met(const struct choice *c, const struct field_border *before,
                          const struct field_border *after, double place)
{
	struct point d0 = point_sub(before->to, before->from),
		     d1 = point_sub(after->to, after->from);
	bool points_in = point_cross(point_unit(d0), point_unit(d1)) < -TOLERANCE_PARALLEL;
	return points_in && fabs(across(c, before->to) - place) <= c->module->tile_width / 2;
}

static struct line_cost cost_of_place(const struct choice *c, double place)
{
	struct line_cost cost = {.length = length_at(c, place)};
	const struct field_border *borders = c->field->borders;
	for (size_t i = 0; i < c->field->border_count; i++) {
		if (borders[i].part != c->part)
			continue;
		cost.barred += is_barred_by(c, &borders[i], place);
		size_t next = i + 1 < c->field->border_count ? i + 1 : i;
		bool follows = point_distance(borders[i].to, borders[next].from) <= TOLERANCE_SAME;
		cost.missed -= follows && is_corner_met(c, &borders[i], &borders[next], place);
	}
	return cost;
}

/* Every copy of a place in a period that lies in the part. */
static void find_copies(struct choice *c, struct joint_rows rows, double base, size_t *count)
{
	for (double k = floor((c->low - base) / rows.period) - 1;; k++)
		for (size_t i = 0; i < rows.count; i++) {
			double place = base + k * rows.period + rows.places[i];
			if (k * rows.period + base >= c->high - TOLERANCE_SAME)
				return;
			if (place <= c->low + TOLERANCE_SAME || place >= c->high - TOLERANCE_SAME)
				continue;
			c->places[(*count)++] = place;
		}
}

static void find_places(struct choice *c, struct point position, struct joint_rows rows)
{
	struct box box = ring_box(c->field->region.polygons[c->part].outline);
	c->low = c->along_u ? box.y0 : box.x0;
	c->high = c->along_u ? box.y1 : box.x1;
	size_t most = ((size_t)((c->high - c->low) / rows.period) + 3) * rows.count;
	c->places = ARENA_ARRAY(c->arena, double, most);
	c->costs = ARENA_ARRAY(c->arena, struct line_cost, most);
	find_copies(c, rows, across(c, position), &c->place_count);
	for (size_t i = 0; i < c->place_count; i++)
		c->costs[i] = cost_of_place(c, c->places[i]);
}

/* ---- choosing ---- */

/* Best way to have `n` lines, the last of them at each place. */
struct step {
	bool is_reached;
	struct line_cost cost;
	size_t before;
};

/* Where the n-th line (from 1) at a place begins, those between it and the anchor having
 * moved it. */
static double moved_place(const struct choice *c, size_t place, size_t n)
{
	return c->places[place] + ((double)n - 1 - (double)c->before) * c->moved;
}

static bool is_on_its_side(const struct choice *c, size_t place, size_t n)
{
	return (c->places[place] < c->anchor) == (n <= c->before);
}

/* No window is left between two lines. */
static bool serves(const struct choice *c, double before, double after)
{
	double start;
	return !chords_next_window(&c->chords, before, &start) ||
	       start + c->limit >= after - TOLERANCE_SAME;
}

static struct line_cost gap_cost(double from, double to)
{
	/* In metres, so that squares stay small against the rounding of sums. */
	double extent = (to - from) / 1000;
	return (struct line_cost){.uneven = extent * extent};
}

static void reach(struct step *step, struct line_cost cost, size_t before)
{
	if (step->is_reached && cost_compare(cost, step->cost) >= 0)
		return;
	*step = (struct step){true, cost, before};
}

static void first_steps(const struct choice *c, struct step *steps)
{
	for (size_t p = 0; p < c->place_count; p++)
		if (is_on_its_side(c, p, 1) && serves(c, -INFINITY, moved_place(c, p, 1)))
			reach(&steps[p],
			      cost_sum(c->costs[p], gap_cost(c->low, moved_place(c, p, 1))), p);
}

static void next_steps(const struct choice *c, const struct step *from, size_t n, struct step *to)
{
	for (size_t p = 0; p < c->place_count; p++)
		for (size_t q = p + 1; from[p].is_reached && q < c->place_count; q++) {
			double before = moved_place(c, p, n), after = moved_place(c, q, n + 1);
			if (!serves(c, before, after))
				break;
			if (!is_on_its_side(c, q, n + 1))
				continue;
			struct line_cost cost = cost_sum(c->costs[q], gap_cost(before, after));
			reach(&to[q], cost_sum(from[p].cost, cost), p);
		}
}

/* The best last line, after which no window is left; place_count where there is none. */
static size_t best_last(const struct choice *c, const struct step *steps, size_t n,
                        struct line_cost *out_cost)
{
	size_t best = c->place_count;
	for (size_t p = 0; p < c->place_count; p++) {
		double start, place = moved_place(c, p, n);
		if (!steps[p].is_reached || chords_next_window(&c->chords, place, &start))
			continue;
		struct line_cost cost = cost_sum(steps[p].cost, gap_cost(place, c->high));
		if (best == c->place_count || cost_compare(cost, *out_cost) < 0) {
			best = p;
			*out_cost = cost;
		}
	}
	return best;
}

/* The best `n` lines with c->before of them before the anchor, if they beat `least`. */
static void choose_so_many(const struct choice *c, size_t n, struct line_cost *least,
                           struct movement_places *out)
{
	struct step **rows = ARENA_ARRAY(c->arena, struct step *, n + 1);
	for (size_t k = 1; k <= n; k++) {
		rows[k] = ARENA_ARRAY(c->arena, struct step, c->place_count);
		if (k == 1)
			first_steps(c, rows[k]);
		else
			next_steps(c, rows[k - 1], k - 1, rows[k]);
	}
	struct line_cost cost = {0};
	size_t last = best_last(c, rows[n], n, &cost);
	if (last == c->place_count || (out->count && cost_compare(cost, *least) >= 0))
		return;
	*least = cost;
	out->count = n;
	out->before = c->before;
	out->centres = ARENA_ARRAY(c->arena, double, n);
	for (size_t k = n; k > 0; k--) {
		out->centres[k - 1] = moved_place(c, last, k);
		last = rows[k][last].before;
	}
}

/* The fewest lines that serve; of those the best. */
static void choose(struct choice *c, struct movement_places *out)
{
	struct line_cost least = {0};
	for (size_t n = 1; out->count == 0 && n <= c->place_count; n++)
		for (c->before = 0; c->before <= n; c->before++)
			choose_so_many(c, n, &least, out);
}

struct movement_places movement_choose(struct arena *arena, const struct field *field,
                                       const struct module *module, const struct position *position,
                                       size_t part, bool along_u, double limit, double width)
{
	struct choice c = {.arena = arena,
	                   .field = field,
	                   .module = module,
	                   .part = part,
	                   .along_u = along_u,
	                   .limit = limit};
	struct joint_rows rows = joint_rows_of(module, along_u);
	struct movement_places out = {.on_joint = rows.are_straight, .width = width};
	/* Lines along u shorten the runs along v. */
	c.chords = chords_over(arena, &field->region.polygons[part], !along_u, limit);
	if (c.chords.count == 0)
		return out;
	out.moved = c.moved = out.on_joint ? width - module->joint : 0;
	c.anchor = movement_anchor(field, part, along_u);
	find_places(&c, position->parts[part], rows);
	choose(&c, &out);
	out.is_missing = out.count == 0;
	/* A joint on tile joints opens towards the tile it moves. */
	for (size_t i = 0; i < out.count; i++)
		out.centres[i] += out.moved / 2;
	return out;
}

#include "layout/movement_choice.h"

#include "geometry/clip.h"
#include "geometry/line.h"
#include "geometry/tolerance.h"
#include "layout/chords.h"
#include "layout/movement_anchor.h"
#include "layout/movement_beside.h"
#include "pattern/joint_rows.h"

/* What speaks against a line, worst first. */
struct line_cost {
	double barred; /* along a border, beside an open joint, near a drain, out of a door */
	double missed; /* less the corners it meets */
	double length;
	double uneven; /* squares of the panels' extents */
};

struct choice {
	struct arena *arena, *once; /* for as long as the choice, for one step of it */
	const struct field *field;
	const struct module *module;
	size_t part;
	bool along_u;
	double limit, moved;
	struct chords chords;
	double *places; /* tile joints, before any tile is moved; rising */
	struct line_cost *costs;
	size_t place_count;
	size_t beyond;    /* first place beyond the anchor: tile beyond lines from there moves */
	size_t before;    /* lines on the lesser side of the anchor */
	double low, high; /* extents of the part across the lines */
	struct movement_beside beside;
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
	const struct line *runs = clip_line(c->once, (struct line){ends, 2}, &ground, &count);
	return line_length_of_all(runs, count);
}

/* A border that the line would run along within one tile, as it must not. */
static bool is_barred_by(const struct choice *c, const struct field_border *border, double place)
{
	double from = across(c, border->from), to = across(c, border->to);
	if (border->kind == SITE_EDGE_DRAIN)
		return place > fmin(from, to) - c->module->tile_long &&
		       place < fmax(from, to) + c->module->tile_long;
	if (border->is_carried && fabs(to - from) <= c->module->tile_width)
		return place > fmin(from, to) - c->module->tile_width &&
		       place < fmax(from, to) + c->module->tile_width;
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
	const char *met = NULL; /* an obstacle is met once, however many corners it has */
	for (size_t i = 0; i < c->field->border_count; i++) {
		if (borders[i].part != c->part)
			continue;
		cost.barred += is_barred_by(c, &borders[i], place);
		size_t next = i + 1 < c->field->border_count ? i + 1 : i;
		bool follows = point_distance(borders[i].to, borders[next].from) <= TOLERANCE_SAME;
		if (!follows || borders[i].of == met ||
		    !is_corner_met(c, &borders[i], &borders[next], place))
			continue;
		cost.missed--;
		met = borders[i].kind == SITE_EDGE_OBSTACLE ? borders[i].of : NULL;
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
	for (size_t i = 0; i < c->place_count; i++) {
		c->costs[i] = cost_of_place(c, c->places[i]);
		arena_clear(c->once);
	}
	double anchor = movement_anchor(c->field, c->part, c->along_u);
	while (c->beyond < c->place_count && c->places[c->beyond] < anchor)
		c->beyond++;
}

/* ---- which places each line may have ---- */

/* Of the places that the k-th line may have with lines before and after it that serve: the
 * first and the last. */
struct band {
	size_t first, last;
};

/* Where the k-th line (from 1) at a place begins, those between it and the anchor having
 * moved it. */
static double moved_place(const struct choice *c, size_t place, size_t k)
{
	return c->places[place] + ((double)k - 1 - (double)c->before) * c->moved;
}

/* No window is left between two lines. */
static bool serves(const struct choice *c, double before, double after)
{
	double start;
	return !chords_next_window(&c->chords, before, &start) ||
	       start + c->limit >= after - TOLERANCE_SAME;
}

/* The last place on its side of the anchor where no window is left before the k-th line. */
static bool find_last(const struct choice *c, struct band *bands, size_t k)
{
	double before = k > 1 ? moved_place(c, bands[k - 1].last, k - 1) : (double)-INFINITY;
	size_t first = k > c->before ? c->beyond : 0;
	size_t low = first, high = k > c->before ? c->place_count : c->beyond;
	while (low < high) {
		size_t middle = low + (high - low) / 2;
		if (serves(c, before, moved_place(c, middle, k)))
			low = middle + 1;
		else
			high = middle;
	}
	bands[k] = (struct band){first, low - 1};
	return low > first;
}

static bool is_enough(const struct choice *c, const struct band *bands, size_t n, size_t k,
                      size_t place)
{
	double start, from = moved_place(c, place, k);
	if (k == n)
		return !chords_next_window(&c->chords, from, &start);
	return serves(c, from, moved_place(c, bands[k + 1].first, k + 1));
}

/* The first place after which those that follow the k-th line leave no window. */
static bool find_first(const struct choice *c, struct band *bands, size_t n, size_t k)
{
	size_t low = bands[k].first, high = bands[k].last + 1;
	while (low < high) {
		size_t middle = low + (high - low) / 2;
		if (is_enough(c, bands, n, k, middle))
			high = middle;
		else
			low = middle + 1;
	}
	bands[k].first = low;
	return low <= bands[k].last;
}

/* False where `n` lines, c->before of them before the anchor, cannot serve. */
static bool find_bands(const struct choice *c, struct band *bands, size_t n)
{
	for (size_t k = 1; k <= n; k++)
		if (!find_last(c, bands, k))
			return false;
	for (size_t k = n; k > 0; k--)
		if (!find_first(c, bands, n, k))
			return false;
	return true;
}

/* As many lines as are needed wherever they may lie. */
static size_t least_count(const struct choice *c)
{
	size_t count = 0;
	for (double start, place = -INFINITY; chords_next_window(&c->chords, place, &start);
	     place = start + c->limit + TOLERANCE_SAME)
		count++;
	return count;
}

/* ---- choosing ---- */

/* Best way to have `k` lines, the last of them at each place of its band. */
struct step {
	bool is_reached;
	struct line_cost cost;
	size_t before;
};

static struct line_cost gap_cost(double from, double to)
{
	/* In metres, so that squares stay small against the rounding of sums. */
	double extent = (to - from) / 1000;
	return (struct line_cost){.uneven = extent * extent};
}

/* Of the k-th line at a place, and of the gap from the one before it. */
static struct line_cost cost_of_line(const struct choice *c, size_t place, size_t k, double before)
{
	double at = moved_place(c, place, k);
	struct line_cost cost = cost_sum(c->costs[place], gap_cost(before, at));
	cost.barred += (double)movement_beside_count(&c->beside, at + c->moved / 2);
	return cost;
}

static void reach(struct step *step, struct line_cost cost, size_t before)
{
	if (step->is_reached && cost_compare(cost, step->cost) >= 0)
		return;
	*step = (struct step){true, cost, before};
}

static struct step *first_steps(const struct choice *c, struct band band)
{
	struct step *steps = ARENA_ARRAY(c->once, struct step, band.last + 1 - band.first);
	for (size_t p = band.first; p <= band.last; p++)
		reach(&steps[p - band.first], cost_of_line(c, p, 1, c->low), p);
	return steps;
}

/* From the k-th line to the next. */
static struct step *next_steps(const struct choice *c, const struct step *from,
                               const struct band *bands, size_t k)
{
	struct band here = bands[k], next = bands[k + 1];
	struct step *to = ARENA_ARRAY(c->once, struct step, next.last + 1 - next.first);
	for (size_t p = here.first; p <= here.last; p++)
		for (size_t q = p < next.first ? next.first : p + 1;
		     from[p - here.first].is_reached && q <= next.last; q++) {
			double before = moved_place(c, p, k), after = moved_place(c, q, k + 1);
			if (!serves(c, before, after))
				break;
			struct line_cost cost = cost_of_line(c, q, k + 1, before);
			reach(&to[q - next.first], cost_sum(from[p - here.first].cost, cost), p);
		}
	return to;
}

/* The best last line; false where none is reached. */
static bool best_last(const struct choice *c, const struct step *steps, struct band band, size_t n,
                      size_t *out_best, struct line_cost *out_cost)
{
	bool found = false;
	for (size_t p = band.first; p <= band.last; p++) {
		const struct step *step = &steps[p - band.first];
		if (!step->is_reached)
			continue;
		struct line_cost cost =
			cost_sum(step->cost, gap_cost(moved_place(c, p, n), c->high));
		if (found && cost_compare(cost, *out_cost) >= 0)
			continue;
		found = true;
		*out_best = p;
		*out_cost = cost;
	}
	return found;
}

/* The best `n` lines with c->before of them before the anchor, if they beat `least`. */
static void choose_so_many(const struct choice *c, size_t n, struct line_cost *least,
                           struct movement_places *out)
{
	struct band *bands = ARENA_ARRAY(c->once, struct band, n + 1);
	if (!find_bands(c, bands, n))
		return;
	struct step **rows = ARENA_ARRAY(c->once, struct step *, n + 1);
	rows[1] = first_steps(c, bands[1]);
	for (size_t k = 1; k < n; k++)
		rows[k + 1] = next_steps(c, rows[k], bands, k);
	struct line_cost cost = {0};
	size_t place = 0;
	if (!best_last(c, rows[n], bands[n], n, &place, &cost) ||
	    (out->count && cost_compare(cost, *least) >= 0))
		return;
	*least = cost;
	out->count = n;
	out->before = c->before;
	for (size_t k = n; k > 0; k--) {
		out->centres[k - 1] = moved_place(c, place, k);
		place = rows[k][place - bands[k].first].before;
	}
}

/* The fewest lines that serve; of those the best. */
static void choose(struct choice *c, struct arena *arena, struct movement_places *out)
{
	struct line_cost least = {0};
	for (size_t n = least_count(c); out->count == 0 && n <= c->place_count; n++) {
		out->centres = ARENA_ARRAY(arena, double, n);
		for (c->before = 0; c->before <= n; c->before++) {
			choose_so_many(c, n, &least, out);
			arena_clear(c->once);
		}
	}
}

static struct movement_places choose_places(struct choice *c, struct arena *arena,
                                            struct point position, double width, double row)
{
	struct joint_rows rows = joint_rows_of(c->module, c->along_u);
	struct movement_places out = {.on_joint = rows.are_straight, .width = width};
	/* Lines along u shorten the runs along v. */
	c->chords =
		chords_over(c->arena, &c->field->region.polygons[c->part], !c->along_u, c->limit);
	if (c->chords.count == 0)
		return out;
	out.moved = c->moved = out.on_joint ? width - c->module->joint : 0;
	c->beside = movement_beside_of(c->arena, c->field, c->part, c->along_u, width, row);
	find_places(c, position, rows);
	choose(c, arena, &out);
	out.is_missing = out.count == 0;
	/* A joint on tile joints opens towards the tile it moves. */
	for (size_t i = 0; i < out.count; i++)
		out.centres[i] += out.moved / 2;
	return out;
}

struct movement_places movement_choose(struct arena *arena, const struct field *field,
                                       const struct module *module, const struct position *position,
                                       size_t part, bool along_u, double limit, double width,
                                       double row)
{
	struct choice c = {.arena = arena_new(),
	                   .once = arena_new(),
	                   .field = field,
	                   .module = module,
	                   .part = part,
	                   .along_u = along_u,
	                   .limit = limit};
	struct movement_places places = choose_places(&c, arena, position->parts[part], width, row);
	arena_free(c.once);
	arena_free(c.arena);
	return places;
}

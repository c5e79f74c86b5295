#include "drawing/dimension.h"

#include <stdlib.h>

#include "drawing/candidate.h"

/* mm of paper; source: docs/sources.md */
static const double FIRST_LANE = 10;     /* R-D05: outline to first dimension line, >= 10 */
static const double LANE_STEP = 9.5;     /* R-D05: 3/8 in between strings */
static const double OBJECT_GAP = 1.6;    /* R-D07: object to extension line, 1/16 in */
static const double OVERSHOOT = 2;       /* R-D08: 8 x 0.25 */
static const double TICK = 3.2;          /* R-D09: oblique stroke, 1/8 in from end to end */
static const double TEXT_GAP = 1;        /* line to text; common practice */
static const double TEXT_FIT = 1.2;      /* between ticks and text, both sides together */
static const double LEVEL_STEP = 1.5;    /* between levels of staggered values */
static const double ORIGIN_RADIUS = 1.2; /* of a running chain's origin circle */
static const double UNDER_COST = 8;      /* a value belongs over its line: R-D03 */
static const double SPREAD_GAP = 1.6;    /* between values of a crowded running chain */
static const double SPREAD_SLACK = 1e-9; /* values of one group stand exactly a pitch apart */
static const double SPREAD_LED = 0.5;    /* a value moved farther has a leader */
static const double SPREAD_SLOPE = 0.35; /* of the flattest leader, over what keeps texts clear */
static const double UPRIGHT = 0.2588;    /* sin 15: steeper lines have upright values */
/* Values are fixed in all but detail, so they go before every tag. */
enum { DIMENSION_PRIORITY = 1000 };

struct chain {
	struct list *list;
	const struct dimension_chain *data;
	struct paper_point along;   /* the dimension line's direction */
	struct paper_point outward; /* square to it, to the side where values stand */
	bool is_upright, is_level;
	struct paper_point *points, *feet;
};

struct dimension_lanes dimension_lanes(const struct list *list)
{
	double cap = list->style->texts[TEXT_DIMENSION].cap;
	return (struct dimension_lanes){FIRST_LANE,
	                                fmax(LANE_STEP, cap + TEXT_GAP + 2 * LEVEL_STEP)};
}

/* Up the sheet, or left where the line runs up: the side from which a value is read. */
static struct paper_point reading_side(struct paper_point along)
{
	struct paper_point n = {along.y, -along.x};
	bool is_down = n.y > 1e-9 || (fabs(n.y) <= 1e-9 && n.x > 0);
	return is_down ? (struct paper_point){-n.x, -n.y} : n;
}

static struct chain chain_make(struct list *list, const struct view *view,
                               const struct dimension_chain *data)
{
	struct arena *arena = list->arena;
	struct chain c = {.list = list,
	                  .data = data,
	                  .along = view_direction(view, data->direction),
	                  .points = ARENA_ARRAY(arena, struct paper_point, data->count),
	                  .feet = ARENA_ARRAY(arena, struct paper_point, data->count)};
	c.outward = reading_side(c.along);
	c.is_upright = fabs(c.along.x) < UPRIGHT;
	c.is_level = fabs(c.along.y) < UPRIGHT;
	for (size_t i = 0; i < data->count; i++) {
		c.points[i] = view_point(view, data->points[i]);
		struct paper_point d = paper_sub(c.points[i], data->through);
		c.feet[i] = paper_step(data->through, c.along, d.x * c.along.x + d.y * c.along.y);
	}
	return c;
}

/* ---- lines ---- */

static void add_line(struct list *list, struct paper_path *path, struct paper_point a,
                     struct paper_point b)
{
	*path = paper_path_join(list->arena, *path, paper_path_segment(list->arena, a, b));
}

static void add_extension(const struct chain *c, struct paper_path *path, size_t i)
{
	struct paper_point away = paper_sub(c->feet[i], c->points[i]);
	double distance = paper_length(away);
	if (distance <= OBJECT_GAP)
		return;
	away = paper_unit(away);
	add_line(c->list, path, paper_step(c->points[i], away, OBJECT_GAP),
	         paper_step(c->feet[i], away, OVERSHOOT));
}

static void draw_lines(const struct chain *c)
{
	struct paper_path lines = {0}, ticks = {0};
	struct paper_point low = c->feet[0], high = c->feet[0];
	/* A tick leans forward as read: from lower left to upper right. */
	struct paper_point up = reading_side(c->along);
	struct paper_point right = {-up.y, up.x};
	struct paper_point lean = paper_unit(paper_add(right, up));
	for (size_t i = 0; i < c->data->count; i++) {
		struct paper_point d = paper_sub(c->feet[i], low);
		if (d.x * c->along.x + d.y * c->along.y < 0)
			low = c->feet[i];
		d = paper_sub(c->feet[i], high);
		if (d.x * c->along.x + d.y * c->along.y > 0)
			high = c->feet[i];
		if ((i == 0 && c->data->goes_on[0]) ||
		    (i + 1 == c->data->count && c->data->goes_on[1]))
			continue;
		if (c->data->has_extensions)
			add_extension(c, &lines, i);
		add_line(c->list, &ticks, paper_step(c->feet[i], lean, -TICK / 2),
		         paper_step(c->feet[i], lean, TICK / 2));
	}
	add_line(c->list, &lines, low, high);
	list_stroke(c->list, LAYER_DIMENSIONS, PEN_DIMENSION, c->data->element, lines);
	list_stroke(c->list, LAYER_DIMENSIONS, PEN_TICK, c->data->element, ticks);
}

/* ---- values ---- */

enum { PLACE_COUNT = 24 };

struct value {
	const struct chain *chain;
	struct label label;
	struct label_body body;
	struct label_place places[PLACE_COUNT];
	size_t count;
};

static struct value value_make(const struct chain *c, const char *const *text,
                               struct paper_point named)
{
	struct value v = {.chain = c,
	                  .label = {.lines = text,
	                            .line_count = 1,
	                            .role = TEXT_DIMENSION,
	                            .layer = LAYER_DIMENSIONS,
	                            .element = c->data->element,
	                            .where = LABEL_FIXED,
	                            .a = named,
	                            .b = named,
	                            .priority = DIMENSION_PRIORITY}};
	v.body = label_body_of(c->list, &v.label);
	return v;
}

static void add_place(struct value *v, struct paper_point at, bool is_upright, double cost,
                      bool has_leader)
{
	if (v->count < PLACE_COUNT)
		v->places[v->count++] = (struct label_place){at, is_upright, cost, has_leader};
}

static void ask(struct value *v)
{
	v->label.places = v->places;
	v->label.place_count = v->count;
	list_label(v->chain->list, &v->label);
}

/* Middle of a value `level` steps over (negative: under) the line at `on`. */
static struct paper_point level_at(const struct value *v, struct paper_point on, int level)
{
	const struct chain *c = v->chain;
	double half = v->body.height / 2;
	if (!c->is_level && !c->is_upright) /* slanted: the level text's corner keeps clear */
		half = fabs(c->outward.x) * v->body.width / 2 +
		       fabs(c->outward.y) * v->body.height / 2;
	double side = level < 0 ? -1 : 1;
	double steps = fabs((double)level) - 1;
	return paper_step(on, c->outward,
	                  side * (TEXT_GAP + half + steps * (v->body.height + LEVEL_STEP)));
}

/* Enough room between the ticks: over the line, else under it. */
static void add_inside(struct value *v, struct paper_point middle, double room)
{
	const struct chain *c = v->chain;
	static const double shifts[] = {0, 0.5, -0.5, 1, -1};
	for (size_t i = 0; i < sizeof shifts / sizeof *shifts; i++) {
		struct paper_point on = paper_step(middle, c->along, shifts[i] * room / 2);
		add_place(v, level_at(v, on, 1), c->is_upright, fabs(shifts[i]), false);
		add_place(v, level_at(v, on, -1), c->is_upright, UNDER_COST + fabs(shifts[i]),
		          false);
	}
}

/* Past an end of the whole chain, in the row of the other values. */
static void add_past_end(struct value *v, struct paper_point end, double sign)
{
	struct paper_point on =
		paper_step(end, v->chain->along, sign * (v->body.width / 2 + LEVEL_STEP));
	add_place(v, level_at(v, on, 1), v->chain->is_upright, 0, true);
}

/* Beside its place or on a further level, led back to the middle of its member. */
static void add_outside(struct value *v, struct paper_point middle, double length, double cost)
{
	const struct chain *c = v->chain;
	static const struct {
		int level, shift;
		double cost;
	} spots[] = {{-1, 1, 1},   {-1, -1, 1.2}, {2, 0, 1.5}, {2, 1, 2}, {2, -1, 2.2}, {-2, 0, 3},
	             {-2, 1, 3.5}, {-2, -1, 3.7}, {3, 0, 4.5}, {3, 1, 5}, {3, -1, 5.2}, {-3, 0, 6}};
	for (size_t i = 0; i < sizeof spots / sizeof *spots; i++) {
		double aside = spots[i].shift * ((v->body.width + length) / 2 + LEVEL_STEP);
		add_place(v, level_at(v, paper_step(middle, c->along, aside), spots[i].level),
		          c->is_upright, cost + spots[i].cost, true);
	}
}

static void ask_member(const struct chain *c, size_t i)
{
	struct paper_point a = c->feet[i], b = c->feet[i + 1];
	struct paper_point middle = {(a.x + b.x) / 2, (a.y + b.y) / 2};
	struct value v = value_make(c, &c->data->values[i], middle);
	double extent = c->is_level || c->is_upright ? v.body.width : 0;
	double room = paper_distance(a, b) - extent - TEXT_FIT;
	double sign = (b.x - a.x) * c->along.x + (b.y - a.y) * c->along.y < 0 ? -1 : 1;
	if (room >= 0)
		add_inside(&v, middle, room);
	else if (i == 0 && !c->data->goes_on[0])
		add_past_end(&v, a, -sign);
	else if (i + 2 == c->data->count && !c->data->goes_on[1])
		add_past_end(&v, b, sign);
	add_outside(&v, middle, paper_distance(a, b), room >= 0 ? 8 : 0);
	ask(&v);
}

void dimension_chain(struct list *list, const struct view *view, const struct dimension_chain *data)
{
	if (data->count < 2)
		return;
	struct chain c = chain_make(list, view, data);
	draw_lines(&c);
	for (size_t i = 0; i + 1 < data->count; i++)
		if (data->values[i])
			ask_member(&c, i);
}

/* Values of a running chain, in the order of their stations along the line. */
struct station {
	size_t index;  /* of its point */
	double wanted; /* where it is along the line, from the origin */
	double place;  /* where its value stands, so that none touches its neighbour */
};

static int compare_stations(const void *a, const void *b)
{
	const struct station *x = a, *y = b;
	long at_x = lround(x->wanted * 1e6), at_y = lround(y->wanted * 1e6);
	if (at_x != at_y)
		return at_x < at_y ? -1 : 1;
	return (x->index > y->index) - (x->index < y->index);
}

/* Keeps the order and `pitch` between values, and moves each group of crowded ones as little
 * as can be: its middle stays where the stations' middle is. */
static void spread(struct station *stations, size_t count, double pitch)
{
	for (size_t end = 0; end < count; end++) {
		size_t start = end;
		stations[end].place = stations[end].wanted;
		while (start > 0 && stations[start].place < stations[start - 1].place + pitch) {
			double sum = 0;
			start--;
			while (start > 0 && stations[start].place < stations[start - 1].place +
			                                                    pitch + SPREAD_SLACK)
				start--;
			for (size_t i = start; i <= end; i++)
				sum += stations[i].wanted - (double)(i - start) * pitch;
			double first = sum / (double)(end - start + 1);
			for (size_t i = start; i <= end; i++)
				stations[i].place = first + (double)(i - start) * pitch;
		}
	}
}

/* Square to the line, past the ends of the extension lines; level for an upright line. A
 * value that has no room there goes farther out, never past its neighbour. */
static void ask_station(const struct chain *c, const struct station *station, double stand_off)
{
	size_t i = station->index;
	struct paper_point away = paper_sub(c->feet[i], c->points[i]);
	away = paper_length(away) > OBJECT_GAP ? paper_unit(away) : c->outward;
	struct value v = value_make(c, &c->data->values[i - 1], c->feet[i]);
	double aside = station->place - station->wanted;
	bool is_led = fabs(aside) > SPREAD_LED;
	struct paper_point on = paper_step(c->feet[i], c->along, aside);
	double start = OVERSHOOT + stand_off + TEXT_GAP + v.body.width / 2;
	for (int level = 0; level < 4; level++)
		add_place(&v, paper_step(on, away, start + level * (v.body.width + 2 * TEXT_GAP)),
		          !c->is_upright, 4.0 * level, is_led || level > 0);
	ask(&v);
}

static void ask_stations(const struct chain *c)
{
	struct arena *arena = c->list->arena;
	struct station *stations = ARENA_ARRAY(arena, struct station, c->data->count);
	size_t count = 0;
	double height = c->list->style->texts[TEXT_DIMENSION].cap;
	for (size_t i = 1; i < c->data->count; i++) {
		if (!c->data->values[i - 1])
			continue;
		struct paper_point d = paper_sub(c->feet[i], c->feet[0]);
		stations[count++] =
			(struct station){.index = i, .wanted = d.x * c->along.x + d.y * c->along.y};
		struct value v = value_make(c, &c->data->values[i - 1], c->feet[i]);
		height = fmax(height, v.body.height);
	}
	if (count > 0)
		qsort(stations, count, sizeof *stations, compare_stations);
	spread(stations, count, height + SPREAD_GAP);
	/* The row stands off far enough that the flattest leader clears its neighbours. */
	double farthest = 0;
	for (size_t i = 0; i < count; i++)
		farthest = fmax(farthest, fabs(stations[i].place - stations[i].wanted));
	double stand_off = farthest > SPREAD_LED ? OVERSHOOT + SPREAD_SLOPE * farthest : 0;
	for (size_t i = 0; i < count; i++)
		ask_station(c, &stations[i], stand_off);
}

void dimension_origin(struct list *list, struct paper_point at, const char *element)
{
	struct paper_path circle = paper_path_circle(list->arena, at, ORIGIN_RADIUS);
	list_area(list, LAYER_DIMENSIONS, AREA_PAPER, element, circle);
	list_stroke(list, LAYER_DIMENSIONS, PEN_TICK, element, circle);
}

void dimension_running(struct list *list, const struct view *view,
                       const struct dimension_chain *data)
{
	if (data->count < 2)
		return;
	struct chain c = chain_make(list, view, data);
	draw_lines(&c);
	dimension_origin(list, c.feet[0], data->element);
	ask_stations(&c);
}

void dimension_pair(struct list *list, const struct view *view, struct point a, struct point b,
                    double offset, const char *value, const char *element)
{
	struct point direction = point_sub(b, a);
	struct paper_point along = view_direction(view, direction);
	struct paper_point left = {along.y, -along.x};
	struct point points[] = {a, b};
	if (!list_shows(list, view_point(view, a)) || !list_shows(list, view_point(view, b)))
		return;
	dimension_chain(list, view,
	                &(struct dimension_chain){
				.points = points,
				.count = 2,
				.values = &value,
				.direction = direction,
				.through = paper_step(view_point(view, a), left, offset),
				.element = element,
				.has_extensions = true,
			});
}

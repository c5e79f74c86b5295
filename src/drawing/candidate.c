#include "drawing/candidate.h"

/* Frame to text in capital heights. */
static const double pads_x[] = {
	[LABEL_PLAIN] = 0, [LABEL_BOX] = 0.6, [LABEL_ROUND] = 0.7, [LABEL_HEXAGON] = 0.9};
static const double pads_y[] = {
	[LABEL_PLAIN] = 0, [LABEL_BOX] = 0.5, [LABEL_ROUND] = 0.5, [LABEL_HEXAGON] = 0.5};

static const double DEFAULT_REACH = 90; /* mm: the longest leader; R-D14 */
static const double SHOULDER = 2.5, LEADER_GAP = 0.8;
static const double LEADER_COST = 6, LEADER_COST_MM = 0.2;
static const double WANDER_COST = 0.25; /* per mm along a line or from a room's middle */

static bool is_framed(const struct label *label)
{
	return label->frame != LABEL_PLAIN;
}

struct label_body label_body_of(const struct list *list, const struct label *label)
{
	const struct text_style *style = &list->style->texts[label->role];
	struct label_body body = {.cap = label->cap > 0 ? label->cap : style->cap};
	double under = 0, scale = text_scale(list->text, style->weight, body.cap);
	for (size_t i = 0; i < label->line_count; i++) {
		const struct text_run *run = text_shape(list->text, style->weight, label->lines[i]);
		body.width = fmax(body.width, run->advance * scale);
		under = -run->bottom * scale;
	}
	body.pad_x = pads_x[label->frame] * body.cap;
	double pad_y = pads_y[label->frame] * body.cap;
	body.first = pad_y + body.cap;
	body.width += 2 * body.pad_x;
	/* In a frame the capitals stand in the middle, whatever hangs under the line. */
	body.height = body.first + (double)(label->line_count - 1) * text_pitch(body.cap) +
	              fmax(pad_y, under);
	return body;
}

static struct paper_box box_at(const struct label_body *body, struct paper_point middle,
                               bool is_upright)
{
	double half_x = (is_upright ? body->height : body->width) / 2;
	double half_y = (is_upright ? body->width : body->height) / 2;
	return (struct paper_box){middle.x - half_x, middle.y - half_y, middle.x + half_x,
	                          middle.y + half_y};
}

struct maker {
	struct arena *arena;
	const struct label *label;
	const struct label_body *body;
	struct candidates out;
};

static struct candidate *add(struct maker *m, struct paper_box box, bool is_upright, double cost)
{
	struct candidate *c = array_push(m->arena, &m->out);
	*c = (struct candidate){.box = box,
	                        .is_upright = is_upright,
	                        .place_cost = cost,
	                        .cost = cost};
	return c;
}

static double gap_of(const struct maker *m)
{
	return m->label->gap > 0 ? m->label->gap : m->body->cap / 2;
}

/* ---- near places ---- */

static void add_around(struct maker *m)
{
	/* Right above first, as one reads; under and straight left last. */
	static const struct {
		double x, y, cost;
	} sides[] = {{1, -1, 0},  {1, 0, 0.6},  {-1, -1, 0.8}, {0, -1, 1},
	             {1, 1, 1.2}, {-1, 0, 1.6}, {-1, 1, 1.8},  {0, 1, 2}};
	for (int ring = 1; ring <= 3; ring++)
		for (size_t i = 0; i < sizeof sides / sizeof *sides; i++) {
			double gap = gap_of(m) * ring;
			/* On a diagonal the corner, not two sides, keeps the distance. */
			double reach = sides[i].x != 0 && sides[i].y != 0 ? gap * 0.7 : gap;
			struct paper_point middle = {
				m->label->a.x + sides[i].x * (m->body->width / 2 + reach),
				m->label->a.y + sides[i].y * (m->body->height / 2 + reach)};
			add(m, box_at(m->body, middle, false), false,
			    sides[i].cost + 1.5 * (ring - 1));
		}
}

static void add_along(struct maker *m)
{
	static const double stations[] = {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9};
	struct paper_point a = m->label->a, d = paper_sub(m->label->b, a);
	double length = paper_length(d);
	struct paper_point along = paper_unit(d);
	/* The normal that points up the sheet, or left where there is no up. */
	struct paper_point normal = {along.y, -along.x};
	if (normal.y > 1e-9 || (fabs(normal.y) <= 1e-9 && normal.x > 0))
		normal = (struct paper_point){-normal.x, -normal.y};
	/* Within 15 degrees of the sheet's height a text is turned and read from the right;
	 * a tag stays level. */
	bool is_upright = fabs(along.x) < 0.2588 && length > m->body->width && !is_framed(m->label);
	double half_x = (is_upright ? m->body->height : m->body->width) / 2;
	double half_y = (is_upright ? m->body->width : m->body->height) / 2;
	for (size_t i = 0; i < sizeof stations / sizeof *stations; i++)
		for (int sign = 1; sign >= -1; sign -= 2) {
			double clear =
				fabs(normal.x) * half_x + fabs(normal.y) * half_y + gap_of(m);
			struct paper_point on = paper_step(a, d, stations[i]);
			add(m, box_at(m->body, paper_step(on, normal, sign * clear), is_upright),
			    is_upright,
			    fabs(stations[i] - 0.5) * length * WANDER_COST + (sign < 0 ? 0.6 : 0));
		}
}

static void add_inside(struct maker *m)
{
	enum { STEPS = 8 }; /* on each side of the middle */
	struct paper_box room = m->label->room;
	double free_x = (room.x1 - room.x0 - m->body->width) / 2;
	double free_y = (room.y1 - room.y0 - m->body->height) / 2;
	struct paper_point middle = {(room.x0 + room.x1) / 2, (room.y0 + room.y1) / 2};
	if (free_x < 0 || free_y < 0)
		return;
	for (int y = -STEPS; y <= STEPS; y++)
		for (int x = -STEPS; x <= STEPS; x++) {
			struct paper_point off = {free_x * x / STEPS, free_y * y / STEPS};
			add(m, box_at(m->body, paper_add(middle, off), false), false,
			    paper_length(off) * WANDER_COST);
		}
}

/* From the nearest point of the text's border straight to what is named. */
static void lead_straight(struct candidate *c, struct paper_point to)
{
	struct paper_box b = paper_box_grown(c->box, LEADER_GAP / 2);
	c->leader[0] = paper_at(fmin(fmax(to.x, b.x0), b.x1), fmin(fmax(to.y, b.y0), b.y1));
	c->leader[1] = to;
	c->leader_count = 2;
}

static void add_fixed(struct maker *m)
{
	for (size_t i = 0; i < m->label->place_count; i++) {
		const struct label_place *place = &m->label->places[i];
		struct candidate *c = add(m, box_at(m->body, place->at, place->is_upright),
		                          place->is_upright, place->cost);
		if (place->has_leader)
			lead_straight(c, m->label->a);
	}
}

struct candidates candidate_near(struct arena *arena, const struct label *label,
                                 const struct label_body *body)
{
	static void (*const make[])(struct maker *) = {[LABEL_AROUND] = add_around,
	                                               [LABEL_ALONG] = add_along,
	                                               [LABEL_IN] = add_inside,
	                                               [LABEL_FIXED] = add_fixed};
	struct maker m = {arena, label, body, {0}};
	make[label->where](&m);
	return m.out;
}

/* ---- places with a leader ---- */

/* The text beside the elbow, a level shoulder between them, the leader on to `to`. */
static void add_led(struct maker *m, struct paper_point to, struct paper_point direction,
                    double distance, double cost)
{
	struct paper_point elbow = paper_step(to, direction, distance);
	double side = direction.x < 0 ? -1 : 1;
	double gap = is_framed(m->label) ? 0 : LEADER_GAP;
	double near = elbow.x + side * (SHOULDER + gap), far = near + side * m->body->width;
	double middle = is_framed(m->label) ? m->body->height / 2 : m->body->cap / 2;
	struct paper_box box = {fmin(near, far), elbow.y - middle, fmax(near, far),
	                        elbow.y - middle + m->body->height};
	struct candidate *c = add(m, box, false, cost + LEADER_COST + LEADER_COST_MM * distance);
	c->leader[0] = paper_at(near - side * gap, elbow.y);
	c->leader[1] = elbow;
	c->leader[2] = to;
	c->leader_count = 3;
}

/* 45 degrees is the drafter's habit; flat and steep ones cost a little more. */
static const struct {
	double x, y, cost;
} slopes[] = {{0.7071, 0.7071, 0},
              {0.5, 0.8660, 0.4},
              {0.8660, 0.5, 0.4},
              {0.2588, 0.9659, 1},
              {0.9659, 0.2588, 1}};
enum { SLOPE_COUNT = sizeof slopes / sizeof *slopes, RING_COUNT = 4 * SLOPE_COUNT };

/* Every place that a leader of one length has, by slope and quadrant. */
static void add_led_ring(struct maker *m, struct paper_point to, double distance, double cost)
{
	for (size_t j = 0; j < SLOPE_COUNT; j++)
		for (int quadrant = 0; quadrant < 4; quadrant++)
			add_led(m, to,
			        paper_at(quadrant & 1 ? -slopes[j].x : slopes[j].x,
			                 quadrant & 2 ? slopes[j].y : -slopes[j].y),
			        distance, slopes[j].cost + 0.2 * quadrant + cost);
}

/* Rings of places round `station_count` points of what is named. */
static struct maker maker_of_rings(struct arena *arena, const struct label *label,
                                   const struct label_body *body, size_t station_count,
                                   double ring_count)
{
	size_t room = station_count * (size_t)ring_count * RING_COUNT;
	return (struct maker){arena,
	                      label,
	                      body,
	                      {ARENA_ARRAY(arena, struct candidate, room), 0, room}};
}

static double reach_of(const struct label *label)
{
	return label->reach > 0 ? label->reach : DEFAULT_REACH;
}

static struct paper_point tip_at(const struct label *label, double share)
{
	if (label->where == LABEL_AROUND)
		share = 2 * share - 1;
	return paper_step(label->a, paper_sub(label->b, label->a), share);
}

struct candidates candidate_led(struct arena *arena, const struct label *label,
                                const struct label_body *body)
{
	static const double distances[] = {5, 7, 10, 14, 18, 23, 28, 34, 40, 48, 57, 67, 78, 90};
	static const double stations[] = {0.5, 0.3, 0.7, 0.12, 0.88};
	bool is_line = paper_distance(label->a, label->b) > 0;
	size_t station_count = is_line ? sizeof stations / sizeof *stations : 1;
	struct maker m = maker_of_rings(arena, label, body, station_count,
	                                sizeof distances / sizeof *distances);
	for (size_t s = 0; s < station_count; s++)
		for (size_t i = 0; i < sizeof distances / sizeof *distances; i++)
			if (distances[i] <= reach_of(label))
				add_led_ring(&m, tip_at(label, stations[s]), distances[i],
				             0.5 * (double)s);
	return m.out;
}

struct candidates candidate_led_densely(struct arena *arena, const struct label *label,
                                        const struct label_body *body)
{
	static const double STEP = 1.7; /* mm of leader from one place to the next */
	static const double stations[] = {0.5, 0.4, 0.6, 0.2, 0.8};
	bool is_line = paper_distance(label->a, label->b) > 0;
	size_t station_count = is_line ? sizeof stations / sizeof *stations : 1;
	struct maker m = maker_of_rings(arena, label, body, station_count, reach_of(label) / STEP);
	for (size_t s = 0; s < station_count; s++)
		for (double distance = 4; distance <= reach_of(label); distance += STEP)
			add_led_ring(&m, tip_at(label, stations[s]), distance, 0.5 * (double)s);
	return m.out;
}

#include "sheets/wall_label.h"

#include <math.h>

/* Paper mm, own design: clear space between wall and label. */
static const double CLEAR = 2.2;
/* A wall is level or upright on paper where its direction is off by less than this. */
static const double SQUARE = 0.02;
/* Along its own wall a label may wander far before it leaves it. */
static const double WANDER_COST = 0.06;
/* Where along a wall a label may stand, best first: shares of its length. */
static const double STANDS[] = {0.5,  0.46, 0.54, 0.42, 0.58, 0.38, 0.62, 0.34, 0.66, 0.3, 0.7,
                                0.26, 0.74, 0.22, 0.78, 0.18, 0.82, 0.14, 0.86, 0.1,  0.9};
enum { STAND_COUNT = sizeof STANDS / sizeof STANDS[0], ROWS = 2 };
/* Where the wall's own lane is taken, the label stands this much farther out. */
static const double ROW_STEP = 3.4, ROW_COST = 2.5;
/* Inside its room a label covers tile; in another room it misleads. */
static const double INSIDE_COST = 5, ELSEWHERE_COST = 40;
/* From a border to the end of a leader on the tile beside it. */
static const double ON_TILE = 1.6;

static double cap_of(const struct draft *draft)
{
	return draft->style->texts[TEXT_TAG].cap;
}

static double text_height(const struct draft *draft, size_t lines)
{
	return cap_of(draft) + (double)(lines - 1) * text_pitch(cap_of(draft));
}

double wall_label_lane(const struct draft *draft, size_t lines)
{
	return 2 * CLEAR + text_height(draft, lines);
}

static double widest(const struct sheet *sheet, const char *const *lines, size_t count)
{
	double width = 0;
	for (size_t i = 0; i < count; i++)
		width = fmax(width, list_text_width(sheet->list, TEXT_TAG, lines[i]));
	return width;
}

const struct site_room *wall_label_room(const struct sheet *sheet, struct paper_point at)
{
	const struct site *site = sheet->draft->site;
	if (sheet->view.scale <= 0)
		return NULL;
	struct point p = view_floor(&sheet->view, at);
	for (size_t i = 0; i < site->room_count; i++)
		if (ring_holds(site->rooms[i].outline, p))
			return &site->rooms[i];
	return NULL;
}

void wall_label(struct sheet *sheet, const char *element, struct paper_point a,
                struct paper_point b, struct wall_text text)
{
	if (!list_clip_named(sheet->list, &a, &b))
		return;
	struct paper_point along = paper_unit(paper_sub(b, a));
	struct paper_point out = {-along.y, along.x};
	bool upright = fabs(along.x) < SQUARE, level = fabs(along.y) < SQUARE;
	double high = text_height(sheet->draft, text.count) / 2;
	double wide = widest(sheet, text.lines, text.count) / 2;
	double off = CLEAR + (upright || level ? high : wide * fabs(out.x) + high * fabs(out.y));
	struct label_place places[(ROWS + 1) * STAND_COUNT];
	size_t count = (text.stays ? ROWS : ROWS + 1) * STAND_COUNT;
	for (size_t i = 0; i < count; i++) {
		double stand = STANDS[i % STAND_COUNT];
		size_t row = i / STAND_COUNT;
		bool is_inside = row == ROWS;
		struct paper_point on = paper_step(a, paper_sub(b, a), stand);
		struct paper_point at =
			paper_step(on, out, is_inside ? -off : off + (double)row * ROW_STEP);
		double wander = fabs(stand - text.around) * paper_distance(a, b);
		places[i] = (struct label_place){.at = at,
		                                 .is_upright = upright,
		                                 .cost = wander * WANDER_COST};
		places[i].cost += is_inside ? INSIDE_COST : (double)row * ROW_COST;
		/* There it would seem to name a wall of that room. */
		if (!is_inside && !text.stays && wall_label_room(sheet, at))
			places[i].cost += ELSEWHERE_COST;
	}
	/* Of a border with tile on both sides the leader ends in the tile of its own side. */
	if (text.stays)
		a = b = paper_step(paper_step(a, paper_sub(b, a), text.around), out, ON_TILE);
	list_label(sheet->list, &(struct label){.lines = text.lines,
	                                        .line_count = text.count,
	                                        .role = TEXT_TAG,
	                                        .layer = LAYER_LABELS,
	                                        .element = element,
	                                        .where = LABEL_FIXED,
	                                        .a = a,
	                                        .b = b,
	                                        .places = places,
	                                        .place_count = count,
	                                        .priority = text.stays ? 8 : 7,
	                                        .can_lead = true,
	                                        .is_dotted = text.stays,
	                                        .is_clear = true});
}

void wall_line(struct sheet *sheet, const char *element, struct paper_point a, struct paper_point b,
               double around, const char *line)
{
	wall_label(sheet, element, a, b,
	           (struct wall_text){.lines = &line, .count = 1, .around = around});
}

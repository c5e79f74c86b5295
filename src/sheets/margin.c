#include "sheets/margin.h"

#include <stdlib.h>

#include "drawing/dimension.h"
#include "sheets/drawing_scale.h"
#include "sheets/parts.h"

/* Paper mm: ticks at the end of a lane are not cut. */
static const double LANE_END = 2.5;
/* Floor mm: what lies this near to the end of a window is in it. */
static const double SAME_END = 1;

static int compare(const void *a, const void *b)
{
	double p = *(const double *)a, q = *(const double *)b;
	return (p > q) - (p < q);
}

void places_sort(struct places *places, double least)
{
	if (places->at.count == 0)
		return;
	qsort(places->at.items, places->at.count, sizeof *places->at.items, compare);
	double end = places->at.items[places->at.count - 1];
	size_t last = 0;
	for (size_t i = 1; i < places->at.count; i++)
		if (places->at.items[i] - places->at.items[last] >= least)
			places->at.items[++last] = places->at.items[i];
	if (last > 0)
		places->at.items[last] = end;
	places->at.count = last + 1;
}

static bool fits(const struct sheet *sheet, const struct margin *margin, double gain, double scale)
{
	struct paper_point size = view_size(margin->window, 90, scale);
	double width = sheet->drawing.x1 - sheet->drawing.x0 + gain;
	double height = sheet->drawing.y1 - sheet->drawing.y0;
	return size.x + margin->need[SIDE_LEFT] + margin->need[SIDE_RIGHT] <= width &&
	       size.y + margin->need[SIDE_TOP] + margin->need[SIDE_BOTTOM] <= height;
}

/* With a drawing wider by `gain`. */
static double choose_scale(const struct sheet *sheet, const struct margin *margin, double gain)
{
	const struct draft *draft = sheet->draft;
	if (draft->scale > 0)
		return fits(sheet, margin, gain, draft->scale) ? draft->scale : 0;
	for (size_t i = 0;; i++) {
		double scale = drawing_scale_at(draft->site->inches, i);
		if (scale <= 0 || fits(sheet, margin, gain, scale))
			return scale;
	}
}

static double narrow_gain(const struct sheet *sheet)
{
	return sheet->draft->paper->column - sheet->draft->paper->narrow;
}

double margin_scale(const struct sheet *sheet, const struct margin *margin)
{
	return choose_scale(sheet, margin, narrow_gain(sheet));
}

/* At the ends of the floor nothing is cut: doorways and end marks stand outside. */
static struct paper_box clip_at(const struct sheet *sheet, const struct view *view, struct box w)
{
	struct paper_point low = view_point(view, (struct point){w.x0, w.y0});
	struct paper_point high = view_point(view, (struct point){w.x1, w.y1});
	struct paper_box clip = sheet->drawing;
	if (!parts_is_outer(sheet, SIDE_LEFT))
		clip.x0 = low.x;
	if (!parts_is_outer(sheet, SIDE_RIGHT))
		clip.x1 = high.x;
	if (!parts_is_outer(sheet, SIDE_BOTTOM))
		clip.y1 = low.y;
	if (!parts_is_outer(sheet, SIDE_TOP))
		clip.y0 = high.y;
	return clip;
}

static void fit_part(struct sheet *sheet, struct margin *margin, struct view *out_view)
{
	*out_view = parts_view(sheet->parts, sheet->part);
	sheet->scale = out_view->scale;
	sheet->view = *out_view;
	margin->window = *out_view->window;
	struct list_clip clip = {clip_at(sheet, out_view, *out_view->window),
	                         clip_at(sheet, out_view, *out_view->core)};
	list_set_clip(sheet->list, &clip);
}

static void measure_spare(struct sheet *sheet, const struct margin *margin)
{
	struct paper_point size = view_size(margin->window, 90, sheet->scale);
	sheet->spare_wide = sheet->drawing.x1 - sheet->drawing.x0 - size.x -
	                    margin->need[SIDE_LEFT] - margin->need[SIDE_RIGHT];
	sheet->spare_high = sheet->drawing.y1 - sheet->drawing.y0 - size.y -
	                    margin->need[SIDE_TOP] - margin->need[SIDE_BOTTOM];
}

bool margin_fit(struct sheet *sheet, struct margin *margin, struct view *out_view)
{
	if (sheet->parts) {
		fit_part(sheet, margin, out_view);
		return true;
	}
	struct margin *kept = ARENA_NEW(sheet->draft->arena, struct margin);
	*kept = *margin;
	sheet->margin = kept;
	double wider = margin_scale(sheet, margin);
	sheet->scale = choose_scale(sheet, margin, 0);
	sheet->is_cramped = llround(wider * 1000) != llround(sheet->scale * 1000);
	if (sheet->scale <= 0)
		return false;
	measure_spare(sheet, margin);
	struct paper_box box = {sheet->drawing.x0 + margin->need[SIDE_LEFT],
	                        sheet->drawing.y0 + margin->need[SIDE_TOP],
	                        sheet->drawing.x1 - margin->need[SIDE_RIGHT],
	                        sheet->drawing.y1 - margin->need[SIDE_BOTTOM]};
	*out_view = view_make(margin->window, 90, sheet->scale, box);
	sheet->view = *out_view;
	return true;
}

/* The point of the window's edge at a place along it. */
static struct point edge_point(struct box window, enum side side, double at)
{
	switch (side) {
	case SIDE_BOTTOM:
		return (struct point){at, window.y0};
	case SIDE_TOP:
		return (struct point){at, window.y1};
	case SIDE_LEFT:
		return (struct point){window.x0, at};
	default:
		return (struct point){window.x1, at};
	}
}

static struct paper_point outside(const struct view *view, struct box window, enum side side,
                                  double offset)
{
	static const struct paper_point OUT[] = {[SIDE_BOTTOM] = {0, 1},
	                                         [SIDE_RIGHT] = {1, 0},
	                                         [SIDE_TOP] = {0, -1},
	                                         [SIDE_LEFT] = {-1, 0}};
	struct point middle = side_is_level(side)
	                              ? edge_point(window, side, (window.x0 + window.x1) / 2)
	                              : edge_point(window, side, (window.y0 + window.y1) / 2);
	return paper_step(view_point(view, middle), OUT[side], offset);
}

static struct dimension_chain chain_make(struct sheet *sheet, const struct view *view,
                                         struct box window, enum side side, double offset,
                                         const double *at, size_t count, const char *element)
{
	struct arena *arena = sheet->draft->arena;
	struct point *points = ARENA_ARRAY(arena, struct point, count);
	for (size_t i = 0; i < count; i++)
		points[i] = edge_point(window, side, at[i]);
	return (struct dimension_chain){.points = points,
	                                .count = count,
	                                .direction = side_is_level(side) ? (struct point){1, 0}
	                                                                 : (struct point){0, 1},
	                                .through = outside(view, window, side, offset),
	                                .element = element,
	                                .has_extensions = true};
}

/* A lane runs as far as its part does, and beyond that no line of it is drawn. */
static const struct list_clip *begin_lane(struct sheet *sheet, const struct view *view,
                                          enum side side)
{
	const struct list_clip *before = sheet->list->clip;
	struct paper_box lane = sheet->drawing;
	if (!view->window)
		return before;
	struct paper_point low =
		view_point(view, (struct point){view->window->x0, view->window->y0});
	struct paper_point high =
		view_point(view, (struct point){view->window->x1, view->window->y1});
	if (side_is_level(side)) {
		lane.x0 = low.x - LANE_END;
		lane.x1 = high.x + LANE_END;
	} else {
		lane.y0 = high.y - LANE_END;
		lane.y1 = low.y + LANE_END;
	}
	list_set_clip(sheet->list, &(struct list_clip){lane, lane});
	return before;
}

static void end_lane(struct sheet *sheet, const struct list_clip *before)
{
	list_set_clip(sheet->list, before);
}

/* The members of a chain that a part shows something of: the places from..to. */
struct shown {
	size_t from, to;
};

static struct shown members_shown(const struct view *view, enum side side,
                                  const struct places *places)
{
	size_t last = places->at.count - 1;
	const double *at = places->at.items;
	const struct box *core = view->core;
	struct shown shown = {0, last};
	if (!core)
		return shown;
	double low = side_is_level(side) ? core->x0 : core->y0;
	double high = side_is_level(side) ? core->x1 : core->y1;
	while (shown.from < last && at[shown.from + 1] < low + SAME_END)
		shown.from++;
	while (shown.to > 0 && at[shown.to - 1] > high - SAME_END)
		shown.to--;
	return shown;
}

/* A place past the end of the lane, where the chain goes on on another part, is drawn at that
 * end. */
static double kept_in_lane(const struct view *view, enum side side, double at, bool *out_is_past)
{
	const struct box *window = view->window;
	double low = window ? side_is_level(side) ? window->x0 : window->y0 : at;
	double high = window ? side_is_level(side) ? window->x1 : window->y1 : at;
	double end = LANE_END * view->scale;
	*out_is_past = at < low - SAME_END || at > high + SAME_END;
	return *out_is_past ? fmax(low - end, fmin(at, high + end)) : at;
}

void margin_chain(struct sheet *sheet, const struct view *view, struct box window, enum side side,
                  double offset, const struct places *places, const char *element)
{
	const struct draft *draft = sheet->draft;
	if (places->at.count < 2)
		return;
	struct shown shown = members_shown(view, side, places);
	if (shown.to <= shown.from)
		return;
	const double *at = places->at.items;
	size_t count = shown.to - shown.from + 1;
	double *drawn = ARENA_ARRAY(draft->arena, double, count);
	const char **values = ARENA_ARRAY(draft->arena, const char *, count);
	bool is_past[2], is_inner;
	for (size_t i = 0; i < count; i++) {
		size_t k = shown.from + i;
		bool *out_past = i == 0 ? &is_past[0] : i + 1 == count ? &is_past[1] : &is_inner;
		drawn[i] = kept_in_lane(view, side, at[k], out_past);
		if (i + 1 < count)
			values[i] =
				draft_length(draft, draft_rounded(draft, at[k + 1] - at[0]) -
			                                    draft_rounded(draft, at[k] - at[0]));
	}
	struct dimension_chain chain =
		chain_make(sheet, view, window, side, offset, drawn, count, element);
	chain.values = values;
	chain.goes_on[0] = is_past[0];
	chain.goes_on[1] = is_past[1];
	const struct list_clip *before = begin_lane(sheet, view, side);
	dimension_chain(sheet->list, view, &chain);
	end_lane(sheet, before);
}

/* The places on one side of the origin, nearest first, with the origin before them. */
static void run_one_way(struct sheet *sheet, const struct view *view, struct box window,
                        enum side side, double offset, double origin, const struct places *places,
                        bool up, const char *element)
{
	const struct draft *draft = sheet->draft;
	size_t all = places->at.count, count = 1;
	double *at = ARENA_ARRAY(draft->arena, double, all + 1);
	const char **values = ARENA_ARRAY(draft->arena, const char *, all + 1);
	at[0] = origin;
	for (size_t i = 0; i < all; i++) {
		double place = places->at.items[up ? i : all - 1 - i];
		if ((up ? place - origin : origin - place) <= 0)
			continue;
		values[count - 1] = draft_length(draft, fabs(place - origin));
		at[count++] = place;
	}
	if (count < 2)
		return;
	struct dimension_chain chain =
		chain_make(sheet, view, window, side, offset, at, count, element);
	chain.values = values;
	dimension_running(sheet->list, view, &chain);
}

void margin_running(struct sheet *sheet, const struct view *view, struct box window, enum side side,
                    double offset, double origin, const struct places *places, const char *element)
{
	const struct list_clip *before = begin_lane(sheet, view, side);
	run_one_way(sheet, view, window, side, offset, origin, places, true, element);
	run_one_way(sheet, view, window, side, offset, origin, places, false, element);
	end_lane(sheet, before);
}

#include "drawing/symbol.h"

/* mm of paper, common practice of legible marks: nothing under 1.2 mm across, so that half
 * of it still shows. */
static const double STEP_SIZE = 3.2, READING_RADIUS = 1.8, TARGET_RADIUS = 2.2;
static const double BAR_HEIGHT = 1.8;
static const double FILL_STEP = 3, FILL_BAR = 2.6;
static const double ARROW_HEAD = 4, ARROW_HALF = 1.5;

static struct paper_point across_of(struct paper_point along)
{
	return (struct paper_point){-along.y, along.x};
}

/* a + x along + y across */
static struct paper_point at_axes(struct paper_point a, struct paper_point along, double x,
                                  double y)
{
	return paper_step(paper_step(a, along, x), across_of(along), y);
}

static struct paper_path triangle(struct arena *arena, struct paper_point a, struct paper_point b,
                                  struct paper_point c)
{
	return paper_path_line(arena, (struct paper_point[]){a, b, c}, 3, PAPER_CLOSED);
}

void symbol_north(struct list *list, struct paper_point centre, double radius,
                  struct paper_point north, const char *letter)
{
	struct arena *arena = list->arena;
	struct paper_point tip = paper_step(centre, north, radius);
	struct paper_point foot = paper_step(centre, north, -radius * 0.7);
	struct paper_point notch = paper_step(centre, north, -radius * 0.4);
	struct paper_point left = at_axes(foot, north, 0, -radius * 0.5);
	struct paper_point right = at_axes(foot, north, 0, radius * 0.5);
	struct paper_point outline[] = {tip, right, notch, left};
	list_area(list, LAYER_SHEET, AREA_INK, NULL, triangle(arena, tip, notch, left));
	list_stroke(list, LAYER_SHEET, PEN_SYMBOL, NULL,
	            paper_path_line(arena, outline, 4, PAPER_CLOSED));
	double cap = list->style->texts[TEXT_STRONG].cap;
	struct paper_point middle = paper_step(tip, north, cap);
	list_text(list, LAYER_SHEET, TEXT_STRONG, NULL, paper_at(middle.x, middle.y + cap / 2),
	          ALIGN_MIDDLE, letter);
}

void symbol_scale_bar(struct list *list, struct paper_point left, double floor_step, double scale,
                      int count, const char *const *marks)
{
	struct arena *arena = list->arena;
	double step = floor_step / scale, cap = list->style->texts[TEXT_TABLE].cap;
	struct paper_path filled = {0};
	for (int i = 0; i <= count; i++) {
		double x = left.x + i * step;
		list_text(list, LAYER_SHEET, TEXT_TABLE, NULL,
		          paper_at(x, left.y + BAR_HEIGHT + 1.2 + cap), ALIGN_MIDDLE, marks[i]);
		if (i < count && i % 2 == 0)
			filled = paper_path_join(
				arena, filled,
				paper_path_box(arena, (struct paper_box){x, left.y, x + step,
			                                                 left.y + BAR_HEIGHT}));
	}
	list_area(list, LAYER_SHEET, AREA_INK, NULL, filled);
	list_stroke(list, LAYER_SHEET, PEN_SYMBOL, NULL,
	            paper_path_box(arena, (struct paper_box){left.x, left.y, left.x + count * step,
	                                                     left.y + BAR_HEIGHT}));
}

void symbol_arrow(struct list *list, enum layer layer, const char *element, struct paper_point at,
                  struct paper_point direction, double length)
{
	struct arena *arena = list->arena;
	struct paper_point tip = paper_step(at, direction, length);
	list_stroke(list, layer, PEN_SYMBOL_HEAVY, element,
	            paper_path_segment(arena, at, paper_step(tip, direction, -ARROW_HEAD / 2)));
	list_area(list, layer, AREA_INK, element,
	          triangle(arena, tip, at_axes(tip, direction, -ARROW_HEAD, -ARROW_HALF),
	                   at_axes(tip, direction, -ARROW_HEAD, ARROW_HALF)));
}

/* A quarter of a disc from direction `from` to `to`. */
static struct paper_path wedge(struct arena *arena, struct paper_point centre, double radius,
                               struct paper_point from, struct paper_point to)
{
	const double handle = 0.5523 * radius;
	struct paper_point a = paper_step(centre, from, radius);
	struct paper_point b = paper_step(centre, to, radius);
	struct paper_point points[] = {
		centre, centre, a,     a, paper_step(a, to, handle), paper_step(b, from, handle), b,
		b,      centre, centre};
	return paper_path_line(arena, points, 10, PAPER_RING);
}

struct paper_point symbol_control_end(struct list *list, const char *element, struct paper_point at,
                                      struct paper_point outward)
{
	struct arena *arena = list->arena;
	struct paper_point centre = paper_step(at, outward, TARGET_RADIUS);
	struct paper_point side = across_of(outward),
			   back = paper_step(paper_at(0, 0), outward, -1);
	struct paper_path circle = paper_path_circle(arena, centre, TARGET_RADIUS);
	list_area(list, LAYER_CONTROL, AREA_PAPER, element, circle);
	list_area(list, LAYER_CONTROL, AREA_INK, element,
	          paper_path_join(arena, wedge(arena, centre, TARGET_RADIUS, outward, side),
	                          wedge(arena, centre, TARGET_RADIUS, back,
	                                paper_step(paper_at(0, 0), side, -1))));
	list_stroke(list, LAYER_CONTROL, PEN_SYMBOL, element, circle);
	return centre;
}

void symbol_step(struct list *list, const char *element, struct paper_point at,
                 struct paper_point low_side)
{
	struct arena *arena = list->arena;
	double half = STEP_SIZE / 2;
	struct paper_point low[] = {at_axes(at, low_side, 0, -half),
	                            at_axes(at, low_side, half, -half),
	                            at_axes(at, low_side, half, half),
	                            at_axes(at, low_side, 0, half)};
	struct paper_point all[] = {at_axes(at, low_side, -half, -half), low[1], low[2],
	                            at_axes(at, low_side, -half, half)};
	list_area(list, LAYER_CRACKS, AREA_PAPER, element,
	          paper_path_line(arena, all, 4, PAPER_CLOSED));
	list_area(list, LAYER_CRACKS, AREA_INK, element,
	          paper_path_line(arena, low, 4, PAPER_CLOSED));
	list_stroke(list, LAYER_CRACKS, PEN_SYMBOL, element,
	            paper_path_line(arena, all, 4, PAPER_CLOSED));
}

void symbol_fill(struct list *list, const char *element, struct paper_path crack)
{
	struct arena *arena = list->arena;
	struct paper_path bars = {0};
	for (size_t i = 0; i < crack.count; i++) {
		const struct paper_line *line = &crack.lines[i];
		double to_next = FILL_STEP / 2;
		for (size_t k = 0; k + 1 < line->count; k++) {
			struct paper_point a = line->points[k];
			struct paper_point along = paper_sub(line->points[k + 1], a);
			double length = paper_length(along), at = to_next;
			along = paper_unit(along);
			for (; at <= length; at += FILL_STEP)
				bars = paper_path_join(
					arena, bars,
					paper_path_segment(arena,
				                           at_axes(a, along, at, -FILL_BAR / 2),
				                           at_axes(a, along, at, FILL_BAR / 2)));
			to_next = at - length;
		}
	}
	if (bars.count > 0)
		list_stroke(list, LAYER_CRACKS, PEN_SYMBOL, element, bars);
}

void symbol_reading(struct list *list, const char *element, struct paper_point at, bool fails)
{
	struct arena *arena = list->arena;
	double r = READING_RADIUS;
	struct paper_path circle = paper_path_circle(arena, at, r);
	struct paper_path cross = paper_path_join(
		arena,
		paper_path_segment(arena, paper_at(at.x - r, at.y), paper_at(at.x + r, at.y)),
		paper_path_segment(arena, paper_at(at.x, at.y - r), paper_at(at.x, at.y + r)));
	list_area(list, LAYER_SLAB, fails ? AREA_INK : AREA_PAPER, element, circle);
	list_stroke(list, LAYER_SLAB, PEN_SYMBOL, element,
	            fails ? circle : paper_path_join(arena, circle, cross));
}

void symbol_swatch_area(struct list *list, struct paper_box box, enum area area, enum pen outline)
{
	struct paper_path path = paper_path_box(list->arena, box);
	list_area(list, LAYER_SHEET, area, NULL, path);
	list_stroke(list, LAYER_SHEET, outline, NULL, path);
}

static double dash_sum(const struct pen_style *pen, int first)
{
	double sum = 0;
	for (int i = first; i < pen->dash_count; i++)
		sum += pen->dash[i];
	return sum;
}

/* The strokes of a broken line from x0 to x1, what follows its first dash in the middle: a
 * swatch is shorter than the period of most. None is longer than the first dash, so each is
 * drawn whole. */
static struct paper_path centred_strokes(struct arena *arena, const struct pen_style *pen,
                                         struct paper_box box)
{
	double y = (box.y0 + box.y1) / 2, period = dash_sum(pen, 0);
	double x = (box.x0 + box.x1 - dash_sum(pen, 1)) / 2 - pen->dash[0];
	struct paper_path path = {0};
	for (x -= period * ceil((x - box.x0) / period); x < box.x1;)
		for (int i = 0; i < pen->dash_count; x += pen->dash[i++]) {
			double from = fmax(x, box.x0), to = fmin(x + pen->dash[i], box.x1);
			if (i % 2 == 0 && from < to)
				path = paper_path_join(arena, path,
				                       paper_path_segment(arena, paper_at(from, y),
				                                          paper_at(to, y)));
		}
	return path;
}

void symbol_swatch_pen(struct list *list, struct paper_box box, enum pen pen)
{
	const struct pen_style *style = &list->style->pens[pen];
	double y = (box.y0 + box.y1) / 2;
	struct paper_path path =
		style->dash_count > 0
			? centred_strokes(list->arena, style, box)
			: paper_path_segment(list->arena, paper_at(box.x0, y), paper_at(box.x1, y));
	list_stroke(list, LAYER_SHEET, pen, NULL, path);
}

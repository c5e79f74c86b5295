#include "drawing/symbol.h"

/* mm of paper, common practice of legible marks: nothing under 1.2 mm across, so that half
 * of it still shows. */
static const double STEP_SIZE = 3.2, READING_RADIUS = 1.8, TARGET_RADIUS = 2.2;
static const double FIRST_TILE_SIZE = 5, BAR_HEIGHT = 1.8, TRIANGLE = 7;
static const double ARROW_HEAD = 4, ARROW_HALF = 1.5;
/* An arc of 120 degrees on a chord: handles along and away from it, in chords. */
static const double BULGE_ALONG = 0.2222, BULGE_OUT = 0.3849;

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

void symbol_first_tile(struct list *list, const char *element, struct paper_point at,
                       struct paper_point along, struct paper_point across)
{
	struct paper_path corner = triangle(list->arena, at, paper_step(at, along, FIRST_TILE_SIZE),
	                                    paper_step(at, across, FIRST_TILE_SIZE));
	list_area(list, LAYER_CONTROL, AREA_FIRST_TILE, element, corner);
	list_stroke(list, LAYER_CONTROL, PEN_SYMBOL, element, corner);
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

void symbol_control_end(struct list *list, const char *element, struct paper_point at,
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

void symbol_end_bar(struct list *list, enum layer layer, enum pen pen, const char *element,
                    struct paper_point at, struct paper_point along, double length)
{
	list_stroke(list, layer, pen, element,
	            paper_path_segment(list->arena, at_axes(at, along, 0, -length / 2),
	                               at_axes(at, along, 0, length / 2)));
}

void symbol_revision(struct list *list, struct paper_point centre, const char *letter)
{
	/* An equal-sided triangle about its middle. */
	double height = TRIANGLE * 0.8660, cap = list->style->texts[TEXT_TABLE_HEAD].cap;
	struct paper_path shape =
		triangle(list->arena, paper_at(centre.x, centre.y - height * 2 / 3),
	                 paper_at(centre.x + TRIANGLE / 2, centre.y + height / 3),
	                 paper_at(centre.x - TRIANGLE / 2, centre.y + height / 3));
	list_area(list, LAYER_CHANGES, AREA_PAPER, NULL, shape);
	list_stroke(list, LAYER_CHANGES, PEN_SYMBOL_HEAVY, NULL, shape);
	list_text(list, LAYER_CHANGES, TEXT_TABLE_HEAD, NULL,
	          paper_at(centre.x, centre.y + cap / 2), ALIGN_MIDDLE, letter);
}

void symbol_tick_box(struct list *list, struct paper_point upper_left, double size)
{
	struct paper_box box = {upper_left.x, upper_left.y, upper_left.x + size,
	                        upper_left.y + size};
	list_stroke(list, LAYER_SHEET, PEN_SYMBOL, NULL, paper_path_box(list->arena, box));
}

/* Bulges from a to b, outwards to the left as one walks (clockwise round a box). */
static size_t add_bulges(struct paper_point *points, size_t count, struct paper_point a,
                         struct paper_point b, double chord)
{
	double length = paper_distance(a, b);
	double pieces = fmax(1, round(length / chord));
	struct paper_point along = paper_unit(paper_sub(b, a));
	struct paper_point out = {along.y, -along.x};
	double c = length / pieces;
	for (double i = 0; i < pieces; i++) {
		struct paper_point from = paper_step(a, along, i * c);
		struct paper_point to = paper_step(a, along, (i + 1) * c);
		points[count++] =
			paper_step(paper_step(from, along, BULGE_ALONG * c), out, BULGE_OUT * c);
		points[count++] =
			paper_step(paper_step(to, along, -BULGE_ALONG * c), out, BULGE_OUT * c);
		points[count++] = to;
	}
	return count;
}

void symbol_cloud(struct list *list, const char *element, struct paper_box b, double chord)
{
	struct paper_point corners[] = {{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}};
	double around = 2 * (b.x1 - b.x0 + b.y1 - b.y0);
	size_t room = (size_t)ceil(around / chord) * 3 + 16;
	struct paper_point *points = ARENA_ARRAY(list->arena, struct paper_point, room);
	size_t count = 1;
	points[0] = corners[0];
	for (int i = 0; i < 4; i++)
		count = add_bulges(points, count, corners[i], corners[(i + 1) % 4], chord);
	list_stroke(list, LAYER_CHANGES, PEN_CLOUD, element,
	            paper_path_line(list->arena, points, count, PAPER_RING));
}

void symbol_swatch_area(struct list *list, struct paper_box box, enum area area, enum pen outline)
{
	struct paper_path path = paper_path_box(list->arena, box);
	list_area(list, LAYER_SHEET, area, NULL, path);
	list_stroke(list, LAYER_SHEET, outline, NULL, path);
}

void symbol_swatch_pen(struct list *list, struct paper_box box, enum pen pen)
{
	double y = (box.y0 + box.y1) / 2;
	list_stroke(list, LAYER_SHEET, pen, NULL,
	            paper_path_segment(list->arena, paper_at(box.x0, y), paper_at(box.x1, y)));
}

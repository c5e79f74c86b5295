#include "sheets/section.h"

#include <stdlib.h>

#include "drawing/occupancy.h"
#include "geometry/tolerance.h"

/* Paper mm, own design. */
static const double TITLE = 9, BREAK = 4, BREAK_OVER = 1.5, BREAK_TOOTH = 1.6, ROW_GAP = 2.2;
static const double CALL_GAP = 7, CALL_CLEAR = 1, CALL_DOT = 0.6;
/* As dimensions of plans are drawn (dimension.c). */
static const double MEASURE_TICK = 2.2, MEASURE_GAP = 0.8, MEASURE_OVER = 1.5;
/* Floor mm: teeth of a crack as drawn. */
static const double TOOTH_DEEP = 7, TOOTH_WIDE = 1.2;

static const enum layer LAYERS[AREA_COUNT] = {
	[AREA_CONCRETE] = LAYER_SLAB,     [AREA_MORTAR] = LAYER_TILE,
	[AREA_OBSTACLE] = LAYER_SLAB,     [AREA_SHADE] = LAYER_SLAB,
	[AREA_MEMBRANE] = LAYER_MEMBRANE, [AREA_BOND_COAT] = LAYER_TILE,
	[AREA_TILE_SECTION] = LAYER_TILE, [AREA_INK] = LAYER_TILE,
	[AREA_SEALANT] = LAYER_JOINTS,    [AREA_BACKER] = LAYER_JOINTS,
};

static void add_part(struct section *section, struct section_part part)
{
	for (size_t i = 0; i < section->span_count; i++) {
		struct section_part seen = part;
		seen.box.x0 = fmax(part.box.x0, section->spans[i].from);
		seen.box.x1 = fmin(part.box.x1, section->spans[i].to);
		if (seen.box.x0 < seen.box.x1 && seen.box.y0 < seen.box.y1)
			*array_push(section->draft->arena, &section->parts) = seen;
	}
}

void section_part(struct section *section, enum area area, double x0, double y0, double x1,
                  double y1)
{
	add_part(section, (struct section_part){area, {x0, y0, x1, y1}, false});
}

void section_dot(struct section *section, enum area area, double x0, double y0, double x1,
                 double y1)
{
	add_part(section, (struct section_part){area, {x0, y0, x1, y1}, true});
}

void section_rod(struct section *section, double x0, double y0, double x1, double y1)
{
	section_dot(section, AREA_BACKER, x0, y0, x1, y1);
}

struct point section_crack(struct section *section, double x)
{
	struct arena *arena = section->draft->arena;
	size_t count = (size_t)(section->depth / TOOTH_DEEP) + 1;
	struct point *points = ARENA_ARRAY(arena, struct point, count);
	for (size_t i = 0; i < count; i++)
		points[i] = (struct point){x + (i % 2 ? TOOTH_WIDE : -TOOTH_WIDE),
		                           -TOOTH_DEEP * (double)i};
	*array_push(arena, &section->cracks) = (struct line){points, count};
	return points[1];
}

void section_measure(struct section *section, double from, double to, double y)
{
	*array_push(section->draft->arena, &section->measures) =
		(struct section_measure){from, to, y};
}

void section_call(struct section *section, double x, double y, const char *text)
{
	*array_push(section->draft->arena, &section->calls) = (struct section_call){text, {x, y}};
}

/* ---- from the floor to the paper ---- */

struct place {
	const struct section *section;
	struct paper_point corner; /* upper left */
	double scale;
};

static double drawn_width(const struct section *section, double scale)
{
	double width = 0;
	for (size_t i = 0; i < section->span_count; i++)
		width += (section->spans[i].to - section->spans[i].from) / scale + (i ? BREAK : 0);
	return width;
}

static double paper_x(const struct place *place, double x)
{
	const struct section *section = place->section;
	double at = place->corner.x;
	for (size_t i = 0; i < section->span_count; i++) {
		const struct section_span *span = &section->spans[i];
		if (x <= span->to || i + 1 == section->span_count)
			return at + (fmax(x, span->from) - span->from) / place->scale;
		at += (span->to - span->from) / place->scale + BREAK;
	}
	return at;
}

static struct paper_point paper_of(const struct place *place, struct point p)
{
	return paper_at(paper_x(place, p.x),
	                place->corner.y + (place->section->height - p.y) / place->scale);
}

static struct paper_box paper_box_of(const struct place *place, struct box box)
{
	struct paper_point upper = paper_of(place, (struct point){box.x0, box.y1});
	struct paper_point lower = paper_of(place, (struct point){box.x1, box.y0});
	return (struct paper_box){upper.x, upper.y, lower.x, lower.y};
}

static bool is_cut_off(const struct section *section, double x)
{
	for (size_t i = 0; i < section->span_count; i++)
		if (fabs(x - section->spans[i].from) < TOLERANCE_SAME ||
		    fabs(x - section->spans[i].to) < TOLERANCE_SAME)
			return true;
	return false;
}

static struct paper_path side(struct arena *arena, double x0, double y0, double x1, double y1)
{
	return paper_path_segment(arena, paper_at(x0, y0), paper_at(x1, y1));
}

/* The edges of a part; not those where only the drawing ends. */
static struct paper_path edges_of(const struct place *place, const struct section_part *part)
{
	const struct section *section = place->section;
	struct arena *arena = section->draft->arena;
	struct paper_box b = paper_box_of(place, part->box);
	struct paper_path path = side(arena, b.x0, b.y0, b.x1, b.y0);
	if (part->box.y0 > -section->depth)
		path = paper_path_join(arena, path, side(arena, b.x0, b.y1, b.x1, b.y1));
	if (!is_cut_off(section, part->box.x0))
		path = paper_path_join(arena, path, side(arena, b.x0, b.y0, b.x0, b.y1));
	if (!is_cut_off(section, part->box.x1))
		path = paper_path_join(arena, path, side(arena, b.x1, b.y0, b.x1, b.y1));
	return path;
}

static enum pen pen_of(enum area area)
{
	if (area == AREA_MEMBRANE)
		return PEN_STRIP_SEAM;
	return area == AREA_CONCRETE || area == AREA_TILE_SECTION ? PEN_SECTION : PEN_SEEN;
}

static void draw_part(struct sheet *sheet, const struct place *place,
                      const struct section_part *part)
{
	struct arena *arena = sheet->draft->arena;
	struct paper_box box = paper_box_of(place, part->box);
	const char *element = place->section->element;
	double radius = fmin(box.x1 - box.x0, box.y1 - box.y0) / 2;
	struct paper_path shape =
		part->is_round ? paper_path_round(arena, box, radius) : paper_path_box(arena, box);
	list_area(sheet->list, LAYERS[part->area], part->area, element, shape);
	list_stroke(sheet->list, LAYERS[part->area], pen_of(part->area), element,
	            part->is_round ? shape : edges_of(place, part));
}

static void draw_crack(struct sheet *sheet, const struct place *place, struct line crack)
{
	struct arena *arena = sheet->draft->arena;
	struct paper_point *points = ARENA_ARRAY(arena, struct paper_point, crack.count);
	for (size_t i = 0; i < crack.count; i++)
		points[i] = paper_of(place, crack.points[i]);
	list_stroke(sheet->list, LAYER_CRACKS, PEN_CRACK, place->section->element,
	            paper_path_line(arena, points, crack.count, PAPER_OPEN));
}

static void draw_measure(struct sheet *sheet, const struct place *place,
                         const struct section_measure *m)
{
	struct arena *arena = sheet->draft->arena;
	const char *element = place->section->element;
	struct paper_point ends[] = {paper_of(place, (struct point){m->from, m->y}),
	                             paper_of(place, (struct point){m->to, m->y})};
	struct paper_path lines = side(arena, ends[0].x, ends[0].y, ends[1].x, ends[1].y),
			  ticks = {0};
	for (int i = 0; i < 2; i++) {
		double x = ends[i].x, y = ends[i].y, half = MEASURE_TICK / 2;
		double surface = paper_of(place, (struct point){0, 0}).y;
		lines = paper_path_join(arena, lines,
		                        side(arena, x, surface + MEASURE_GAP, x, y + MEASURE_OVER));
		ticks = paper_path_join(arena, ticks,
		                        side(arena, x - half, y + half, x + half, y - half));
	}
	list_stroke(sheet->list, LAYER_DIMENSIONS, PEN_DIMENSION, element, lines);
	list_stroke(sheet->list, LAYER_DIMENSIONS, PEN_TICK, element, ticks);
}

/* A line across the whole section with a tooth in it: here the drawing ends, not the floor. */
static void draw_break(struct sheet *sheet, double x, double top, double bottom)
{
	double middle = (top + bottom) / 2, tooth = BREAK_TOOTH;
	struct paper_point points[] = {
		{x, top - BREAK_OVER},
		{x, middle - tooth},
		{x - tooth, middle - tooth / 2},
		{x + tooth, middle + tooth / 2},
		{x, middle + tooth},
		{x, bottom + BREAK_OVER},
	};
	list_stroke(sheet->list, LAYER_SLAB, PEN_SEEN, NULL,
	            paper_path_line(sheet->draft->arena, points, sizeof points / sizeof *points,
	                            PAPER_OPEN));
}

static void draw_breaks(struct sheet *sheet, const struct place *place)
{
	const struct section *section = place->section;
	double top = place->corner.y;
	double bottom = top + (section->height + section->depth) / place->scale;
	double x = place->corner.x;
	for (size_t i = 0; i < section->span_count; i++) {
		draw_break(sheet, x, top, bottom);
		x += (section->spans[i].to - section->spans[i].from) / place->scale;
		draw_break(sheet, x, top, bottom);
		x += BREAK;
	}
}

/* ---- names ---- */

static int highest_first(const void *a, const void *b)
{
	const struct section_call *x = a, *y = b;
	if (x->at.y > y->at.y || x->at.y < y->at.y)
		return x->at.y > y->at.y ? -1 : 1;
	return x->at.x > y->at.x ? -1 : x->at.x < y->at.x;
}

static double row_height(const struct section *section)
{
	return section->draft->style->texts[TEXT_DIMENSION].cap + ROW_GAP;
}

static double rows_height(const struct section *section)
{
	return (double)section->calls.count * row_height(section) - ROW_GAP;
}

/* The names stand as far up as what they name, in the mean: that much the section (or,
 * negative, their column) is set down. */
static double set_down(const struct section *section, double scale)
{
	double sum = 0;
	for (size_t i = 0; i < section->calls.count; i++)
		sum += section->height - section->calls.items[i].at.y;
	double mean = section->calls.count ? sum / (double)section->calls.count / scale : 0;
	return rows_height(section) / 2 - mean;
}

/* Names in the rows of `at` and under it; the end of the leader of the one in row i. */
static struct paper_point row_end(const struct section *section, struct paper_point at, size_t i)
{
	double cap = section->draft->style->texts[TEXT_DIMENSION].cap;
	return paper_at(at.x - CALL_CLEAR, at.y + cap / 2 + (double)i * row_height(section));
}

/* Two names whose leaders cross change places: each time the leaders become shorter. */
static void untangle(const struct section *section, const struct place *place,
                     struct paper_point at)
{
	struct section_call *calls = section->calls.items;
	for (bool is_moved = true; is_moved;) {
		is_moved = false;
		for (size_t i = 0; i < section->calls.count; i++)
			for (size_t k = i + 1; k < section->calls.count; k++) {
				if (!occupancy_is_crossing(row_end(section, at, i),
				                           paper_of(place, calls[i].at),
				                           row_end(section, at, k),
				                           paper_of(place, calls[k].at)))
					continue;
				struct section_call call = calls[i];
				calls[i] = calls[k];
				calls[k] = call;
				is_moved = true;
			}
	}
}

static void draw_calls(struct sheet *sheet, const struct place *place, struct paper_point at)
{
	const struct section *section = place->section;
	struct arena *arena = sheet->draft->arena;
	double cap = sheet->draft->style->texts[TEXT_DIMENSION].cap;
	double y = at.y + cap;
	qsort(section->calls.items, section->calls.count, sizeof *section->calls.items,
	      highest_first);
	untangle(section, place, at);
	for (size_t i = 0; i < section->calls.count; i++, y += row_height(section)) {
		const struct section_call *call = &section->calls.items[i];
		struct paper_point to = paper_of(place, call->at);
		struct paper_point from = row_end(section, at, i);
		list_text(sheet->list, LAYER_LABELS, TEXT_DIMENSION, section->element,
		          paper_at(at.x, y), ALIGN_START, call->text);
		list_stroke(sheet->list, LAYER_LABELS, PEN_LEADER, section->element,
		            paper_path_segment(arena, from, to));
		list_area(sheet->list, LAYER_LABELS, AREA_INK, section->element,
		          paper_path_circle(arena, to, CALL_DOT));
	}
}

static double widest_call(const struct section *section, struct list *list)
{
	double widest = 0;
	for (size_t i = 0; i < section->calls.count; i++)
		widest = fmax(widest,
		              list_text_width(list, TEXT_DIMENSION, section->calls.items[i].text));
	return widest;
}

struct paper_point section_size(const struct section *section, struct list *list, double scale)
{
	double down = set_down(section, scale);
	double drawn = (section->height + section->depth) / scale + BREAK_OVER;
	double height = fmax(drawn + fmax(down, 0), rows_height(section) + fmax(-down, 0));
	double width = drawn_width(section, scale) + CALL_GAP + widest_call(section, list);
	double title = list_text_width(list, TEXT_STRONG, section->title);
	return paper_at(fmax(width, title), TITLE + height);
}

void section_draw(struct sheet *sheet, const struct section *section, double scale,
                  struct paper_point at)
{
	double down = set_down(section, scale), cap = sheet->draft->style->texts[TEXT_STRONG].cap;
	struct place place = {section, paper_at(at.x + BREAK_TOOTH, at.y + TITLE + fmax(down, 0)),
	                      scale};
	list_text(sheet->list, LAYER_NOTES, TEXT_STRONG, section->element,
	          paper_at(at.x, at.y + cap), ALIGN_START, section->title);
	for (size_t i = 0; i < section->parts.count; i++)
		draw_part(sheet, &place, &section->parts.items[i]);
	for (size_t i = 0; i < section->cracks.count; i++)
		draw_crack(sheet, &place, section->cracks.items[i]);
	for (size_t i = 0; i < section->measures.count; i++)
		draw_measure(sheet, &place, &section->measures.items[i]);
	draw_breaks(sheet, &place);
	draw_calls(sheet, &place,
	           paper_at(place.corner.x + drawn_width(section, scale) + CALL_GAP,
	                    at.y + TITLE + fmax(-down, 0)));
}

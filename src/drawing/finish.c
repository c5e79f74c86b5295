#include "drawing/finish.h"

#include <stdlib.h>
#include <string.h>

#include "drawing/solver.h"
#include "drawing/trim.h"

/* What covering a mm of a line by a text costs, by layer: high where a crew must not lose
 * the line, low where it repeats anyway. */
static const double layer_weights[LAYER_COUNT] = {
	[LAYER_SHEET] = 20,  [LAYER_SLAB] = 4,       [LAYER_MEMBRANE] = 2, [LAYER_TILE] = 0.12,
	[LAYER_CUTS] = 0.1,  [LAYER_CRACKS] = 5,     [LAYER_HOLDS] = 4,    [LAYER_JOINTS] = 5,
	[LAYER_CONTROL] = 4, [LAYER_DIMENSIONS] = 3, [LAYER_LABELS] = 20,  [LAYER_NOTES] = 20,
	[LAYER_CHANGES] = 2,
};
/* Of hatch: on an obstacle or a hold a text would seem its name. */
static const double HATCH_WEIGHT = 0.12, HATCH_OWN_WEIGHT = 4;
/* Of a strip: its own name may stand on it, another strip's would mislead. */
static const double HATCH_STRIP_WEIGHT = 0.3;
/* Of a wall or an obstacle: a mm of its line under a text. */
static const double WALL_COVER = 8;
/* Solid ink is rated as level lines so far apart, mm. */
static const double SOLID_PITCH = 1;

/* Leader's arrow: length in capital heights of its label, and length to width. */
static const double ARROW = 0.7, ARROW_SLENDER = 3, DOT_RADIUS = 0.6;
/* On a short leader the arrow takes no more than this share of it. */
static const double ARROW_SHARE = 0.6;
/* A text that had to stand on heavier lines than this breaks them: mm of weight 1. */
static const double HEAVY_COVER = 3;
static const double CLEAR_MARGIN = 0.2;

/* ---- what is there ---- */

static struct mark_weight alike(double weight)
{
	return (struct mark_weight){weight, weight};
}

static void add_path_marks(struct occupancy *o, struct paper_path path, struct mark_weight weight)
{
	for (size_t i = 0; i < path.count; i++) {
		struct paper_line line = path.lines[i];
		size_t last = line.kind == PAPER_CLOSED ? line.count : line.count - 1;
		for (size_t j = 0; j < last; j++)
			occupancy_add(o, line.points[j], line.points[(j + 1) % line.count], weight);
	}
}

/* The first tile: a text on it would hide where it lies. */
static void add_solid_marks(struct occupancy *o, struct paper_box box)
{
	for (double y = box.y0 + SOLID_PITCH / 2; y < box.y1; y += SOLID_PITCH)
		occupancy_add(o, paper_at(box.x0, y), paper_at(box.x1, y), alike(HATCH_OWN_WEIGHT));
}

static bool is_reserved(const struct op *op)
{
	return op->kind == OP_TEXT || (op->kind == OP_FILL && op->layer == LAYER_SHEET) ||
	       (op->kind == OP_FILL && op->role.area == AREA_INK);
}

static double hatch_weight(enum area area)
{
	if (area == AREA_STRIP || area == AREA_STRIP_PENDING)
		return HATCH_STRIP_WEIGHT;
	return area == AREA_OBSTACLE || area == AREA_HOLD ? HATCH_OWN_WEIGHT : HATCH_WEIGHT;
}

/* A match line is no less than the frame: a text across it would stand on two sheets. One across
 * a wall, or the edge of what stands in the room, would hide where the floor ends; a leader may
 * go out through it. */
static struct mark_weight stroke_weight(const struct op *op)
{
	if (op->role.pen == PEN_WALL || op->role.pen == PEN_OBSTACLE)
		return (struct mark_weight){WALL_COVER, layer_weights[op->layer]};
	return alike(layer_weights[op->role.pen == PEN_MATCH ? LAYER_SHEET : op->layer]);
}

struct occupancy *list_occupied(const struct list *list)
{
	struct occupancy *o = occupancy_new(list->arena, list->width, list->height);
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *op = &list->ops.items[i];
		if (is_reserved(op))
			occupancy_block(o, op->box);
		else if (op->kind == OP_STROKE)
			add_path_marks(o, paper_path_flat(list->arena, op->path),
			               stroke_weight(op));
		else if (op->kind == OP_FILL && op->role.area == AREA_FIRST_TILE)
			add_solid_marks(o, op->box);
		else if (op->kind == OP_HATCH)
			add_path_marks(o, op->path, alike(hatch_weight(op->role.area)));
	}
	add_path_marks(o, list->clouds, alike(layer_weights[LAYER_CHANGES]));
	return o;
}

/* ---- a placed label becomes ops ---- */

static void draw_leader(struct list *list, const struct label *label, const struct label_body *body,
                        const struct candidate *c)
{
	struct arena *arena = list->arena;
	struct paper_point tip = c->leader[c->leader_count - 1];
	struct paper_point back = paper_unit(paper_sub(c->leader[c->leader_count - 2], tip));
	list_stroke(list, label->layer, PEN_LEADER, label->element,
	            paper_path_line(arena, c->leader, (size_t)c->leader_count, PAPER_OPEN));
	if (label->is_dotted) {
		list_area(list, label->layer, AREA_INK, label->element,
		          paper_path_circle(arena, tip, DOT_RADIUS));
		return;
	}
	double reach = paper_distance(c->leader[c->leader_count - 2], tip);
	double length = fmin(ARROW * body->cap, ARROW_SHARE * reach),
	       half = length / ARROW_SLENDER / 2;
	struct paper_point root = paper_step(tip, back, length);
	struct paper_point aside = {-back.y, back.x};
	struct paper_point head[] = {tip, paper_step(root, aside, half),
	                             paper_step(root, aside, -half)};
	list_area(list, label->layer, AREA_INK, label->element,
	          paper_path_line(arena, head, 3, PAPER_CLOSED));
}

static struct paper_path hexagon(struct arena *arena, struct paper_box b)
{
	double half = (b.y1 - b.y0) / 2, middle = (b.y0 + b.y1) / 2, tip = half / 2;
	struct paper_point corners[] = {{b.x0, middle}, {b.x0 + tip, b.y0}, {b.x1 - tip, b.y0},
	                                {b.x1, middle}, {b.x1 - tip, b.y1}, {b.x0 + tip, b.y1}};
	return paper_path_line(arena, corners, 6, PAPER_CLOSED);
}

static void draw_frame(struct list *list, const struct label *label, struct paper_box box,
                       bool is_clear)
{
	struct arena *arena = list->arena;
	struct paper_path path = {0};
	switch (label->frame) {
	case LABEL_PLAIN:
		break;
	case LABEL_BOX:
		path = paper_path_box(arena, box);
		break;
	case LABEL_ROUND:
		path = paper_path_round(arena, box, fmin(box.x1 - box.x0, box.y1 - box.y0) / 2);
		break;
	case LABEL_HEXAGON:
		path = hexagon(arena, box);
		break;
	}
	if (path.count == 0 && is_clear)
		box = paper_box_grown(box, CLEAR_MARGIN);
	/* A framed tag is read against white, whatever it stands on. */
	if (is_clear || path.count > 0)
		list_area(list, label->layer, AREA_PAPER, label->element,
		          path.count > 0 ? path : paper_path_box(arena, box));
	list_stroke(list, label->layer, PEN_TAG, label->element, path);
}

static void draw_lines(struct list *list, const struct label *label, const struct label_body *body,
                       const struct candidate *c)
{
	/* Lines beside a leader start at one edge; others stand under one middle. */
	bool is_middle = c->leader_count == 0 || label->frame != LABEL_PLAIN;
	struct text_place place = {body->cap, is_middle ? ALIGN_MIDDLE : ALIGN_START,
	                           c->is_upright};
	struct paper_box box = c->box;
	for (size_t i = 0; i < label->line_count; i++) {
		double down = body->first + (double)i * text_pitch(body->cap);
		struct paper_point at = {is_middle ? (box.x0 + box.x1) / 2 : box.x0 + body->pad_x,
		                         box.y0 + down};
		if (c->is_upright)
			at = paper_at(box.x0 + down, is_middle ? (box.y0 + box.y1) / 2 : box.y1);
		list_text_at(list, label->layer, label->role, label->element, at, place,
		             label->lines[i]);
	}
}

static void draw_label(struct list *list, const struct occupancy *o,
                       const struct solver_label *placed)
{
	const struct label *label = placed->label;
	struct paper_box box = placed->chosen->box;
	if (placed->chosen->leader_count > 0)
		draw_leader(list, label, &placed->body, placed->chosen);
	draw_frame(list, label, box,
	           label->is_clear || occupancy_cover(o, box, HEAVY_COVER) > HEAVY_COVER);
	draw_lines(list, label, &placed->body, placed->chosen);
	if (label->link)
		list_link(list, box, label->link);
}

/* ---- order ---- */

/* Counting sort. */
void list_sort(struct list *list)
{
	struct op *sorted = ARENA_ARRAY(list->arena, struct op, list->ops.count);
	size_t next = 0;
	for (int layer = 0; layer < LAYER_COUNT; layer++)
		for (size_t i = 0; i < list->ops.count; i++)
			if (list->ops.items[i].layer == (enum layer)layer)
				sorted[next++] = list->ops.items[i];
	list->ops.items = sorted;
	list->ops.room = next;
}

struct label_report list_finish(struct list *list, struct paper_box within)
{
	struct label_report report = {0};
	const struct occupancy *o = list_occupied(list);
	const struct solver_label *placed = solver_place(list->arena, list, o, within);
	const struct label **missing =
		ARENA_ARRAY(list->arena, const struct label *, list->labels.count);
	for (size_t i = 0; i < list->labels.count; i++) {
		if (!placed[i].chosen) {
			missing[report.unplaced++] = placed[i].label;
			continue;
		}
		report.placed++;
		report.small += placed[i].is_small;
		report.tags += placed[i].label->can_lead;
		report.led += placed[i].chosen->leader_count > 0;
		report.badly += placed[i].label->can_lead && solver_stands_badly(&placed[i]);
		draw_label(list, o, &placed[i]);
	}
	report.missing = missing;
	trim_under_text(list);
	list_sort(list);
	list->is_finished = true;
	return report;
}

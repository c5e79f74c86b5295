#include "drawing/list.h"

#include <string.h>

#include "drawing/clip.h"
#include "drawing/hatch.h"

/* mm: finer than Cairo's grid of a PDF. */
static const double SAME = 0.001;

struct list *list_new(struct arena *arena, const struct style *style, struct text_engine *text,
                      double width, double height)
{
	struct list *list = ARENA_NEW(arena, struct list);
	*list = (struct list){
		.arena = arena, .style = style, .text = text, .width = width, .height = height};
	return list;
}

void list_set_clip(struct list *list, const struct list_clip *clip)
{
	struct list_clip *copy = clip ? ARENA_NEW(list->arena, struct list_clip) : NULL;
	if (copy)
		*copy = *clip;
	list->clip = copy;
}

static bool is_inside(struct paper_box box, struct paper_point p)
{
	return p.x >= box.x0 && p.x <= box.x1 && p.y >= box.y0 && p.y <= box.y1;
}

bool list_shows(const struct list *list, struct paper_point p)
{
	return !list->clip || is_inside(list->clip->shown, p);
}

bool list_clip_named(const struct list *list, struct paper_point *a, struct paper_point *b)
{
	struct paper_point from = *a, along = paper_sub(*b, *a);
	double t0, t1;
	if (!list->clip)
		return true;
	if (paper_length(along) <= 0)
		return is_inside(list->clip->named, from);
	if (!paper_box_clip(list->clip->named, *a, *b, &t0, &t1))
		return false;
	*a = paper_step(from, along, t0);
	*b = paper_step(from, along, t1);
	return true;
}

static const char *keep(struct list *list, const char *text)
{
	return text ? arena_strdup(list->arena, text) : NULL;
}

static struct op *add_op(struct list *list, enum op_kind kind, enum layer layer,
                         const char *element)
{
	struct op *op = array_push(list->arena, &list->ops);
	*op = (struct op){.kind = kind,
	                  .layer = layer,
	                  .element = keep(list, element),
	                  .box = paper_box_empty()};
	return op;
}

static bool is_level_or_upright(struct paper_point a, struct paper_point b)
{
	return fabs(a.x - b.x) < SAME || fabs(a.y - b.y) < SAME;
}

/* Where dashes begin on a rectangle is its own matter in a PDF, which Cairo has draw it from the
 * upper left corner to the right: so it is written, for all canvases. */
static void begin_at_corner(struct paper_line *line)
{
	struct paper_point *p = line->points;
	if (line->kind != PAPER_CLOSED || line->count != 4)
		return;
	for (int i = 0; i < 4; i++)
		if (!is_level_or_upright(p[i], p[(i + 1) % 4]))
			return;
	struct paper_box b = paper_path_box_of((struct paper_path){line, 1});
	p[0] = paper_at(b.x0, b.y0);
	p[1] = paper_at(b.x1, b.y0);
	p[2] = paper_at(b.x1, b.y1);
	p[3] = paper_at(b.x0, b.y1);
}

void list_stroke(struct list *list, enum layer layer, enum pen pen, const char *element,
                 struct paper_path path)
{
	if (list->clip)
		path = clip_stroke(list->arena, path, list->clip->shown);
	if (path.count == 0)
		return;
	struct op *op = add_op(list, OP_STROKE, layer, element);
	op->role.pen = pen;
	op->path = paper_path_copy(list->arena, path);
	op->box = paper_box_grown(paper_path_box_of(path), list->style->pens[pen].width / 2);
	for (size_t i = 0; i < path.count && list->style->pens[pen].dash_count > 0; i++)
		begin_at_corner(&op->path.lines[i]);
}

void list_area(struct list *list, enum layer layer, enum area area, const char *element,
               struct paper_path path)
{
	const struct area_style *style = &list->style->areas[area];
	if (list->clip)
		path = clip_area(list->arena, path, list->clip->shown);
	if (path.count == 0)
		return;
	if (style->has_fill) {
		struct op *op = add_op(list, OP_FILL, layer, element);
		op->role.area = area;
		op->path = paper_path_copy(list->arena, path);
		op->box = paper_path_box_of(path);
	}
	struct paper_path lines = hatch_cut(list->arena, style, path);
	if (lines.count > 0) {
		struct op *op = add_op(list, OP_HATCH, layer, element);
		op->role.area = area;
		op->path = lines;
		op->box = paper_box_grown(paper_path_box_of(lines), style->width / 2);
	}
}

/* The box of a run: at least from the baseline to the height of a capital. */
static struct paper_box run_box(const struct list *list, const struct text_run *run,
                                struct paper_point at, double cap, bool is_upright)
{
	double scale = text_scale(list->text, run->weight, cap);
	double up = fmax(cap, run->top * scale), down = -run->bottom * scale;
	double left = fmin(0, run->left * scale);
	double right = fmax(run->advance, run->right) * scale;
	if (is_upright)
		return (struct paper_box){at.x - up, at.y - right, at.x + down, at.y - left};
	return (struct paper_box){at.x + left, at.y - up, at.x + right, at.y + down};
}

struct paper_box list_text_at(struct list *list, enum layer layer, enum text_role role,
                              const char *element, struct paper_point at, struct text_place place,
                              const char *text)
{
	static const double before[] = {[ALIGN_START] = 0, [ALIGN_MIDDLE] = 0.5, [ALIGN_END] = 1};
	const struct text_style *style = &list->style->texts[role];
	double cap = place.cap > 0 ? place.cap : style->cap;
	const struct text_run *run = text_shape(list->text, style->weight, text);
	double back =
		before[place.align] * run->advance * text_scale(list->text, style->weight, cap);
	struct paper_point start =
		place.is_upright ? paper_at(at.x, at.y + back) : paper_at(at.x - back, at.y);
	struct paper_box box = run_box(list, run, start, cap, place.is_upright);
	if (list->clip && !paper_box_inside(box, list->clip->shown))
		return box;
	struct op *op = add_op(list, OP_TEXT, layer, element);
	op->role.text = role;
	op->run = run;
	op->text = run->text;
	op->cap = cap;
	op->at = start;
	op->is_upright = place.is_upright;
	op->box = box;
	return box;
}

struct paper_box list_text(struct list *list, enum layer layer, enum text_role role,
                           const char *element, struct paper_point at, enum text_align align,
                           const char *text)
{
	return list_text_at(list, layer, role, element, at, (struct text_place){.align = align},
	                    text);
}

double list_paragraph(struct list *list, enum layer layer, enum text_role role,
                      struct paper_point at, double width, const char *text)
{
	const struct text_style *style = &list->style->texts[role];
	struct text_lines wrapped =
		text_wrap(list->text, list->arena, style->weight, style->cap, width, text);
	double y = at.y + style->cap;
	for (size_t i = 0; i < wrapped.count; i++, y += text_pitch(style->cap))
		list_text(list, layer, role, NULL, paper_at(at.x, y), ALIGN_START,
		          wrapped.lines[i]);
	if (wrapped.count == 0)
		return at.y;
	return y - text_pitch(style->cap) + text_descent(list->text, style->weight, style->cap);
}

double list_text_width(struct list *list, enum text_role role, const char *text)
{
	const struct text_style *style = &list->style->texts[role];
	return text_width(list->text, style->weight, style->cap, text);
}

void list_link(struct list *list, struct paper_box box, const char *target)
{
	struct op *op = add_op(list, OP_LINK, LAYER_SHEET, NULL);
	op->box = box;
	op->text = keep(list, target);
}

void list_anchor(struct list *list, struct paper_point at, const char *name)
{
	struct op *op = add_op(list, OP_ANCHOR, LAYER_SHEET, NULL);
	op->at = at;
	op->text = keep(list, name);
}

/* Named where its point is seen; its leader ends there alone unless all of its run is. */
static bool clip_point(const struct list *list, struct label *label)
{
	struct paper_point far = paper_step(label->a, paper_sub(label->b, label->a), -1);
	if (!is_inside(list->clip->named, label->a))
		return false;
	if (!is_inside(list->clip->named, label->b) || !is_inside(list->clip->named, far))
		label->b = label->a;
	return true;
}

/* What a label names, cut to the clip; false: nothing of it is left. */
static bool clip_label(const struct list *list, struct label *label)
{
	if (!list->clip)
		return true;
	if (label->where == LABEL_IN) {
		struct paper_box room = label->room, clip = list->clip->named;
		if (!paper_box_meets(room, clip))
			return false;
		label->room = (struct paper_box){fmax(room.x0, clip.x0), fmax(room.y0, clip.y0),
		                                 fmin(room.x1, clip.x1), fmin(room.y1, clip.y1)};
		return true;
	}
	if (label->where == LABEL_AROUND)
		return clip_point(list, label);
	return list_clip_named(list, &label->a, &label->b);
}

void list_label(struct list *list, const struct label *label)
{
	struct label cut = *label;
	if (!clip_label(list, &cut))
		return;
	struct label *copy = array_push(list->arena, &list->labels);
	*copy = cut;
	const char **lines = ARENA_ARRAY(list->arena, const char *, label->line_count);
	for (size_t i = 0; i < label->line_count; i++)
		lines[i] = keep(list, label->lines[i]);
	copy->lines = lines;
	copy->element = keep(list, label->element);
	copy->link = keep(list, label->link);
	struct label_place *places =
		ARENA_ARRAY(list->arena, struct label_place, label->place_count);
	if (label->place_count > 0)
		memcpy(places, label->places, label->place_count * sizeof *places);
	copy->places = places;
}

struct paper_box list_extents(const struct list *list)
{
	struct paper_box box = paper_box_empty();
	for (size_t i = 0; i < list->ops.count; i++)
		if (!paper_box_is_empty(list->ops.items[i].box))
			box = paper_box_join(box, list->ops.items[i].box);
	return box;
}

struct list_counters list_count(const struct list *list)
{
	struct list_counters count = {0};
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *op = &list->ops.items[i];
		count.strokes += op->kind == OP_STROKE;
		count.fills += op->kind == OP_FILL;
		count.hatches += op->kind == OP_HATCH;
		count.texts += op->kind == OP_TEXT;
		for (size_t j = 0; j < op->path.count; j++)
			count.segments += op->path.lines[j].count;
	}
	return count;
}

/* A sheet as SVG, written from the list itself: Cairo's SVG has neither layers nor text,
 * and ids that differ from run to run.
 * Units in the file: 1/100 mm. */
#include <string.h>

#include "drawing/canvas.h"

/* Coordinates are whole thousandths of a mm, printed as hundredths with one place. */
static const double STEPS_PER_MM = 1000;

struct svg {
	struct arena *arena;
	struct strbuf out;
	const struct list *list;
	const char *prefix;
	bool *has_glyph[TEXT_WEIGHT_COUNT]; /* by glyph index: defined */
	size_t glyph_room[TEXT_WEIGHT_COUNT];
};

/* ---- numbers and words ---- */

static long steps(double mm)
{
	return lround(mm * STEPS_PER_MM);
}

static void add_steps(struct strbuf *out, long value)
{
	unsigned long size = value < 0 ? 0ul - (unsigned long)value : (unsigned long)value;
	if (value < 0)
		strbuf_add_char(out, '-');
	strbuf_printf(out, "%lu", size / 10);
	if (size % 10)
		strbuf_printf(out, ".%lu", size % 10);
}

/* A number after another one: a minus sign parts them as well as a blank. */
static void add_next(struct strbuf *out, long value)
{
	if (value >= 0)
		strbuf_add_char(out, ' ');
	add_steps(out, value);
}

static void add_mm(struct strbuf *out, double mm)
{
	add_steps(out, steps(mm));
}

/* ---- head: sizes, words about the sheet, looks of the roles, glyphs ---- */

static void add_root(struct svg *svg, const struct page *page)
{
	struct strbuf *out = &svg->out;
	strbuf_add(out, "<svg xmlns=\"http://www.w3.org/2000/svg\" "
	                "xmlns:xlink=\"http://www.w3.org/1999/xlink\" width=\"");
	add_steps(out, steps(svg->list->width) / 100);
	strbuf_add(out, "mm\" height=\"");
	add_steps(out, steps(svg->list->height) / 100);
	strbuf_add(out, "mm\" viewBox=\"0 0 ");
	add_mm(out, svg->list->width);
	strbuf_add_char(out, ' ');
	add_mm(out, svg->list->height);
	strbuf_printf(out, "\" role=\"img\" lang=\"%s\" aria-labelledby=\"%stitle %sabout\">\n",
	              page->language, svg->prefix, svg->prefix);
	strbuf_printf(out, "<title id=\"%stitle\">", svg->prefix);
	strbuf_add_escaped(out, page->title);
	strbuf_printf(out, "</title>\n<desc id=\"%sabout\">", svg->prefix);
	strbuf_add_escaped(out, page->about);
	strbuf_add(out, "</desc>\n");
}

static void add_colour(struct strbuf *out, struct colour c)
{
	strbuf_printf(out, "#%02x%02x%02x", c.red, c.green, c.blue);
}

static void add_pen_look(struct svg *svg, enum pen role)
{
	const struct pen_style *pen = &svg->list->style->pens[role];
	struct strbuf *out = &svg->out;
	strbuf_printf(out, ".%s{stroke:", pen_name(role));
	add_colour(out, pen->colour);
	strbuf_add(out, ";stroke-width:");
	add_mm(out, pen->width);
	for (int i = 0; i < pen->dash_count; i++) {
		strbuf_add(out, i ? " " : ";stroke-dasharray:");
		add_mm(out, pen->dash[i]);
	}
	if (pen->is_round)
		strbuf_add(out, ";stroke-linecap:round;stroke-linejoin:round");
	strbuf_add(out, "}\n");
	if (pen->core > 0) {
		strbuf_printf(out, ".%s-core{stroke:", pen_name(role));
		add_colour(out, svg->list->style->paper);
		strbuf_add(out, ";stroke-width:");
		add_mm(out, pen->core);
		strbuf_add(out, "}\n");
	}
}

static void add_area_look(struct svg *svg, enum area role)
{
	const struct area_style *area = &svg->list->style->areas[role];
	struct strbuf *out = &svg->out;
	if (area->has_fill) {
		strbuf_printf(out, ".a-%s{fill:", area_name(role));
		add_colour(out, area->fill);
		strbuf_add(out, ";stroke:none;fill-rule:evenodd}\n");
	}
	if (area->hatch != HATCH_NONE) {
		strbuf_printf(out, ".h-%s{stroke:", area_name(role));
		add_colour(out, area->colour);
		strbuf_add(out, ";stroke-width:");
		add_mm(out, area->width);
		strbuf_add(out, area->hatch == HATCH_DOTS ? ";stroke-linecap:round}\n" : "}\n");
	}
}

static void add_text_look(struct svg *svg, enum text_role role)
{
	strbuf_printf(&svg->out, ".t-%s{stroke:none;fill:", text_role_name(role));
	add_colour(&svg->out, svg->list->style->texts[role].colour);
	strbuf_add(&svg->out, "}\n");
}

/* Only the roles the sheet uses. */
static void add_looks(struct svg *svg)
{
	bool pens[PEN_COUNT] = {0}, areas[AREA_COUNT] = {0}, texts[TEXT_ROLE_COUNT] = {0};
	for (size_t i = 0; i < svg->list->ops.count; i++) {
		const struct op *op = &svg->list->ops.items[i];
		if (op->kind == OP_STROKE)
			pens[op->role.pen] = true;
		else if (op->kind == OP_FILL || op->kind == OP_HATCH)
			areas[op->role.area] = true;
		else if (op->kind == OP_TEXT)
			texts[op->role.text] = true;
	}
	/* The words over the outlines: there for search and selection, not for the eye. */
	strbuf_add(&svg->out,
	           "<style>\npath{fill:none;stroke-miterlimit:10}\n"
	           ".words{fill:none;stroke:none;font-family:\"DejaVu Sans Condensed\","
	           "\"DejaVu Sans\",sans-serif;white-space:pre}\n.bold{font-weight:bold}\n");
	for (int i = 0; i < PEN_COUNT; i++)
		if (pens[i])
			add_pen_look(svg, (enum pen)i);
	for (int i = 0; i < AREA_COUNT; i++)
		if (areas[i])
			add_area_look(svg, (enum area)i);
	for (int i = 0; i < TEXT_ROLE_COUNT; i++)
		if (texts[i])
			add_text_look(svg, (enum text_role)i);
	strbuf_add(&svg->out, "</style>\n");
}

static bool is_new_glyph(struct svg *svg, enum text_weight weight, unsigned glyph)
{
	if (glyph >= svg->glyph_room[weight]) {
		size_t room = (glyph + 256) * (size_t)2;
		bool *grown = ARENA_ARRAY(svg->arena, bool, room);
		if (svg->glyph_room[weight] > 0)
			memcpy(grown, svg->has_glyph[weight], svg->glyph_room[weight]);
		svg->has_glyph[weight] = grown;
		svg->glyph_room[weight] = room;
	}
	bool is_new = !svg->has_glyph[weight][glyph];
	svg->has_glyph[weight][glyph] = true;
	return is_new;
}

static const char weight_letters[TEXT_WEIGHT_COUNT] = {[TEXT_REGULAR] = 'r', [TEXT_BOLD] = 'b'};

static void add_glyphs(struct svg *svg)
{
	strbuf_add(&svg->out, "<defs>\n");
	for (size_t i = 0; i < svg->list->ops.count; i++) {
		const struct text_run *run = svg->list->ops.items[i].run;
		for (size_t j = 0; run && j < run->glyph_count; j++) {
			unsigned glyph = run->glyphs[j].index;
			if (!is_new_glyph(svg, run->weight, glyph))
				continue;
			strbuf_printf(&svg->out, "<path id=\"%s%c%u\" style=\"fill:inherit\" d=\"",
			              svg->prefix, weight_letters[run->weight], glyph);
			text_outline_svg(svg->list->text, run->weight, glyph, &svg->out);
			strbuf_add(&svg->out, "\"/>\n");
		}
	}
	strbuf_add(&svg->out, "</defs>\n");
}

/* ---- paths ---- */

struct step {
	long x, y;
};

static struct step step_at(struct paper_point p)
{
	return (struct step){steps(p.x), steps(p.y)};
}

/* From `from` to `to`, relative, in the shortest form. */
static void add_straight(struct strbuf *out, struct step from, struct step to)
{
	if (to.y == from.y) {
		strbuf_add_char(out, 'h');
		add_steps(out, to.x - from.x);
	} else if (to.x == from.x) {
		strbuf_add_char(out, 'v');
		add_steps(out, to.y - from.y);
	} else {
		strbuf_add_char(out, 'l');
		add_steps(out, to.x - from.x);
		add_next(out, to.y - from.y);
	}
}

/* Digits and signs that a number takes, with a blank where no sign parts it from the one before. */
static int width_of(long value, bool is_next)
{
	unsigned long size = value < 0 ? 0ul - (unsigned long)value : (unsigned long)value;
	int width = (value < 0) + (size % 10 ? 2 : 0) + (is_next && value >= 0) + 1;
	for (size /= 100; size > 0; size /= 10)
		width++;
	return width;
}

/* To `to`, from the beginning of the path or from its last point, whichever is shorter. */
static void add_move(struct strbuf *out, const struct step *from, struct step to)
{
	if (from && width_of(to.x - from->x, false) + width_of(to.y - from->y, true) <
	                    width_of(to.x, false) + width_of(to.y, true)) {
		strbuf_add_char(out, 'm');
		to = (struct step){to.x - from->x, to.y - from->y};
	} else {
		strbuf_add_char(out, 'M');
	}
	add_steps(out, to.x);
	add_next(out, to.y);
}

/* `from`: the last point of the path so far; NULL: there is none. Gives the last point after. */
static struct step add_line(struct strbuf *out, struct paper_line line, const struct step *last)
{
	bool is_curved = line.kind == PAPER_CURVE || line.kind == PAPER_RING;
	struct step first = step_at(line.points[0]), from = first;
	add_move(out, last, first);
	for (size_t i = 1; i < line.count; i++) {
		struct step to = step_at(line.points[i]);
		if (!is_curved) {
			add_straight(out, from, to);
			from = to;
			continue;
		}
		if (i % 3 == 1)
			strbuf_add_char(out, 'c');
		else
			strbuf_add_char(out, ' ');
		add_steps(out, to.x - from.x);
		add_next(out, to.y - from.y);
		if (i % 3 == 0)
			from = to;
	}
	if (line.kind != PAPER_CLOSED && line.kind != PAPER_RING)
		return from;
	strbuf_add_char(out, 'z');
	return first;
}

static void add_lines(struct strbuf *out, struct paper_path path)
{
	struct step last;
	bool is_begun = false;
	for (size_t i = 0; i < path.count; i++) {
		if (path.lines[i].count == 0)
			continue;
		last = add_line(out, path.lines[i], is_begun ? &last : NULL);
		is_begun = true;
	}
}

static void add_path(struct svg *svg, const char *before, const char *name, const char *after,
                     struct paper_path path)
{
	strbuf_printf(&svg->out, "<path class=\"%s%s%s\" d=\"", before, name, after);
	add_lines(&svg->out, path);
	strbuf_add(&svg->out, "\"/>\n");
}

/* ---- text ---- */

static void add_matrix(struct svg *svg, const struct op *op, double scale)
{
	/* Six places of a hundredth: a long line of text is right to 1/1000 mm. */
	long factor = lround(scale * 100 * 1e6);
	strbuf_add(&svg->out, "translate(");
	add_mm(&svg->out, op->at.x);
	add_next(&svg->out, steps(op->at.y));
	strbuf_printf(&svg->out, ")%s scale(%ld.%06ld)", op->is_upright ? " rotate(-90)" : "",
	              factor / 1000000, factor % 1000000);
}

static void add_outlines(struct svg *svg, const struct op *op)
{
	const struct text_run *run = op->run;
	strbuf_printf(&svg->out, "<g class=\"t-%s\" transform=\"", text_role_name(op->role.text));
	add_matrix(svg, op, text_scale(svg->list->text, run->weight, op->cap));
	strbuf_add(&svg->out, "\">");
	for (size_t i = 0; i < run->glyph_count; i++) {
		const struct text_glyph *glyph = &run->glyphs[i];
		strbuf_printf(&svg->out, "<use xlink:href=\"#%s%c%u\"", svg->prefix,
		              weight_letters[run->weight], glyph->index);
		if (glyph->x)
			strbuf_printf(&svg->out, " x=\"%d\"", glyph->x);
		if (glyph->y)
			strbuf_printf(&svg->out, " y=\"%d\"", -glyph->y);
		strbuf_add(&svg->out, "/>");
	}
	strbuf_add(&svg->out, "</g>\n");
}

static void add_words(struct svg *svg, const struct op *op)
{
	double em = op->cap * text_em(svg->list->text, op->run->weight);
	double length = op->run->advance * text_scale(svg->list->text, op->run->weight, op->cap);
	strbuf_printf(&svg->out, "<text class=\"words%s\" ",
	              op->run->weight == TEXT_BOLD ? " bold" : "");
	if (op->is_upright) {
		strbuf_add(&svg->out, "transform=\"translate(");
		add_mm(&svg->out, op->at.x);
		add_next(&svg->out, steps(op->at.y));
		strbuf_add(&svg->out, ") rotate(-90)\"");
	} else {
		strbuf_add(&svg->out, "x=\"");
		add_mm(&svg->out, op->at.x);
		strbuf_add(&svg->out, "\" y=\"");
		add_mm(&svg->out, op->at.y);
		strbuf_add_char(&svg->out, '"');
	}
	strbuf_add(&svg->out, " font-size=\"");
	add_mm(&svg->out, em);
	strbuf_add(&svg->out, "\" textLength=\"");
	add_mm(&svg->out, length);
	strbuf_add(&svg->out, "\" lengthAdjust=\"spacingAndGlyphs\">");
	strbuf_add_escaped(&svg->out, op->text);
	strbuf_add(&svg->out, "</text>\n");
}

/* ---- ops, in groups of layer and element ---- */

static void add_op(struct svg *svg, const struct op *op)
{
	switch (op->kind) {
	case OP_STROKE:
		add_path(svg, "", pen_name(op->role.pen), "", op->path);
		if (svg->list->style->pens[op->role.pen].core > 0)
			add_path(svg, "", pen_name(op->role.pen), "-core", op->path);
		break;
	case OP_FILL:
		add_path(svg, "a-", area_name(op->role.area), "", op->path);
		break;
	case OP_HATCH:
		add_path(svg, "h-", area_name(op->role.area), "", op->path);
		break;
	case OP_TEXT:
		if (op->run->glyph_count == 0)
			break;
		add_outlines(svg, op);
		add_words(svg, op);
		break;
	case OP_LINK:
	case OP_ANCHOR:
		break; /* a sheet alone has nowhere to lead to */
	}
}

static bool is_drawn(const struct op *op)
{
	return op->kind != OP_LINK && op->kind != OP_ANCHOR;
}

static bool is_same_element(const char *a, const char *b)
{
	return a == b || (a && b && strcmp(a, b) == 0);
}

static void open_element(struct svg *svg, const char *element)
{
	if (!element)
		return;
	strbuf_add(&svg->out, "<g data-id=\"");
	strbuf_add_escaped(&svg->out, element);
	strbuf_add(&svg->out, "\">\n");
}

static void close_element(struct svg *svg, const char *element)
{
	if (element)
		strbuf_add(&svg->out, "</g>\n");
}

static void open_layer(struct svg *svg, enum layer layer)
{
	const char *name = layer_name(layer);
	strbuf_printf(&svg->out, "<g id=\"%s%s\"", svg->prefix, name);
	if (*svg->prefix)
		strbuf_printf(&svg->out, " data-layer=\"%s\"", name);
	strbuf_add(&svg->out, ">\n");
}

static void add_layer(struct svg *svg, enum layer layer)
{
	const struct list *list = svg->list;
	const char *element = NULL;
	bool is_open = false;
	for (size_t i = 0; i < list->ops.count; i++) {
		const struct op *op = &list->ops.items[i];
		if (op->layer != layer || !is_drawn(op))
			continue;
		if (!is_open)
			open_layer(svg, layer);
		is_open = true;
		if (!is_same_element(element, op->element)) {
			close_element(svg, element);
			element = op->element;
			open_element(svg, element);
		}
		add_op(svg, op);
	}
	close_element(svg, element);
	if (is_open)
		strbuf_add(&svg->out, "</g>\n");
}

struct bytes canvas_svg(struct arena *arena, const struct page *page)
{
	struct svg svg = {.arena = arena,
	                  .out = strbuf_in(arena),
	                  .list = page->list,
	                  .prefix = page->id_prefix ? page->id_prefix : ""};
	add_root(&svg, page);
	add_looks(&svg);
	add_glyphs(&svg);
	strbuf_add(&svg.out, "<path fill-rule=\"nonzero\" style=\"fill:");
	add_colour(&svg.out, page->list->style->paper);
	strbuf_add(&svg.out, "\" d=\"");
	add_lines(&svg.out, paper_path_box(arena, (struct paper_box){0, 0, page->list->width,
	                                                             page->list->height}));
	strbuf_add(&svg.out, "\"/>\n");
	for (int i = 0; i < LAYER_COUNT; i++)
		add_layer(&svg, (enum layer)i);
	strbuf_add(&svg.out, "</svg>\n");
	return strbuf_bytes(&svg.out);
}

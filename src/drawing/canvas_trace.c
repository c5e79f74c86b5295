/* A sheet as text: one op a line, in drawing order, numbers to 1/1000 mm. */
#include "drawing/canvas.h"

static void add_mm(struct strbuf *out, double mm)
{
	long um = lround(mm * 1000);
	unsigned long size = um < 0 ? 0ul - (unsigned long)um : (unsigned long)um;
	strbuf_printf(out, "%s%lu.%03lu", um < 0 ? "-" : "", size / 1000, size % 1000);
}

static void add_point(struct strbuf *out, struct paper_point p)
{
	strbuf_add_char(out, ' ');
	add_mm(out, p.x);
	strbuf_add_char(out, ',');
	add_mm(out, p.y);
}

static void add_path(struct strbuf *out, struct paper_path path)
{
	static const char *const verbs[] = {[PAPER_OPEN] = " open",
	                                    [PAPER_CLOSED] = " closed",
	                                    [PAPER_CURVE] = " curve",
	                                    [PAPER_RING] = " ring"};
	for (size_t i = 0; i < path.count; i++) {
		strbuf_add(out, verbs[path.lines[i].kind]);
		for (size_t j = 0; j < path.lines[i].count; j++)
			add_point(out, path.lines[i].points[j]);
	}
}

static void add_op(struct strbuf *out, const struct op *op)
{
	strbuf_printf(out, "%s %s", layer_name(op->layer), op->element ? op->element : "-");
	switch (op->kind) {
	case OP_STROKE:
		strbuf_printf(out, " stroke %s", pen_name(op->role.pen));
		break;
	case OP_FILL:
		strbuf_printf(out, " fill %s", area_name(op->role.area));
		break;
	case OP_HATCH:
		strbuf_printf(out, " hatch %s", area_name(op->role.area));
		break;
	case OP_TEXT:
		strbuf_printf(out, " text %s %s ", text_role_name(op->role.text),
		              op->is_upright ? "upright" : "level");
		add_mm(out, op->cap);
		add_point(out, op->at);
		strbuf_printf(out, " \"%s\"", op->text);
		break;
	case OP_LINK:
		strbuf_printf(out, " link \"%s\"", op->text);
		add_point(out, paper_at(op->box.x0, op->box.y0));
		add_point(out, paper_at(op->box.x1, op->box.y1));
		break;
	case OP_ANCHOR:
		strbuf_printf(out, " anchor \"%s\"", op->text);
		add_point(out, op->at);
		break;
	}
	add_path(out, op->path);
	strbuf_add_char(out, '\n');
}

struct bytes canvas_trace(struct arena *arena, const struct page *page)
{
	struct strbuf out = strbuf_in(arena);
	strbuf_printf(&out, "sheet %s", page->name);
	add_point(&out, paper_at(page->list->width, page->list->height));
	strbuf_printf(&out, " \"%s\"\n", page->title);
	for (size_t i = 0; i < page->list->ops.count; i++)
		add_op(&out, &page->list->ops.items[i]);
	return strbuf_bytes(&out);
}

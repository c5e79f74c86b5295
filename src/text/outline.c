/* Outlines of glyphs as SVG path data: whole font units, so plain integers. */
#include "text/face_ft.h"

#include FT_OUTLINE_H

struct pencil {
	struct strbuf *out;
	int is_open;
};

static void add_points(struct pencil *pencil, char verb, const FT_Vector *const *points, int count)
{
	strbuf_add_char(pencil->out, verb);
	for (int i = 0; i < count; i++)
		strbuf_printf(pencil->out, i ? " %ld %ld" : "%ld %ld", points[i]->x, -points[i]->y);
}

static int move_to(const FT_Vector *to, void *data)
{
	struct pencil *pencil = data;
	if (pencil->is_open)
		strbuf_add_char(pencil->out, 'z');
	pencil->is_open = 1;
	add_points(pencil, 'M', &to, 1);
	return 0;
}

static int line_to(const FT_Vector *to, void *data)
{
	add_points(data, 'L', &to, 1);
	return 0;
}

static int conic_to(const FT_Vector *control, const FT_Vector *to, void *data)
{
	add_points(data, 'Q', (const FT_Vector *const[]){control, to}, 2);
	return 0;
}

static int cubic_to(const FT_Vector *c1, const FT_Vector *c2, const FT_Vector *to, void *data)
{
	add_points(data, 'C', (const FT_Vector *const[]){c1, c2, to}, 3);
	return 0;
}

void text_outline_svg(struct text_engine *engine, enum text_weight weight, unsigned glyph,
                      struct strbuf *out)
{
	static const FT_Outline_Funcs verbs = {move_to, line_to, conic_to, cubic_to, 0, 0};
	FT_Face face = text_engine_face(engine, weight)->outline;
	struct pencil pencil = {out, 0};
	if (FT_Load_Glyph(face, glyph, FT_LOAD_NO_SCALE) ||
	    FT_Outline_Decompose(&face->glyph->outline, &verbs, &pencil))
		return;
	if (pencil.is_open)
		strbuf_add_char(out, 'z');
}

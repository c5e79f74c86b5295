/* face_ft.h - one font file opened for shaping (HarfBuzz), outlines (FreeType) and drawing
 * (Cairo). Private to text/ and drawing/canvas_*.c: the face measured is the face drawn.
 * Units: font units. The font comes from memory; no font configuration of the machine is
 * read. Owns: released by face_close, save that Cairo may keep its part until exit. */
#ifndef TEXT_FACE_FT_H
#define TEXT_FACE_FT_H
#include <cairo.h>
#include <ft2build.h>
#include FT_FREETYPE_H
#include <hb.h>

#include "base/check.h"
#include "base/status.h"
#include "base/strbuf.h"
#include "text/measure.h"

struct face {
	FT_Face outline;
	hb_font_t *shaper;
	cairo_font_face_t *drawer;
	int upem;
	int cap;     /* height of H */
	int descent; /* depth of g, positive */
};

CHECK_USED enum status face_open(struct face *, struct bytes font);
void face_close(struct face *);

const struct face *text_engine_face(const struct text_engine *, enum text_weight);

#endif

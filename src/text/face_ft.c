#include "text/face_ft.h"

#include <cairo-ft.h>
#include <limits.h>
#include <stdlib.h>

/* Cairo keeps a face in its caches after our last reference, so FreeType's part is given
 * back by Cairo, when it lets go. */
static const cairo_user_data_key_t outline_key;

static void close_outline(void *face)
{
	FT_Face outline = face;
	FT_Library library = outline->glyph->library;
	FT_Done_Face(outline);
	FT_Done_FreeType(library);
}

static enum status open_outline(struct face *face, struct bytes font)
{
	FT_Library library;
	if (FT_Init_FreeType(&library))
		return STATUS_LIBRARY;
	if (font.length > LONG_MAX ||
	    FT_New_Memory_Face(library, font.data, (FT_Long)font.length, 0, &face->outline)) {
		FT_Done_FreeType(library);
		return STATUS_LIBRARY;
	}
	face->upem = face->outline->units_per_EM;
	return STATUS_OK;
}

static enum status open_drawer(struct face *face)
{
	face->drawer =
		cairo_ft_font_face_create_for_ft_face(face->outline, FT_LOAD_NO_HINTING |
	                                                                     FT_LOAD_NO_AUTOHINT |
	                                                                     FT_LOAD_NO_BITMAP);
	if (cairo_font_face_set_user_data(face->drawer, &outline_key, face->outline,
	                                  close_outline) == CAIRO_STATUS_SUCCESS)
		return STATUS_OK;
	cairo_font_face_destroy(face->drawer);
	close_outline(face->outline);
	return STATUS_LIBRARY;
}

static enum status open_shaper(struct face *face, struct bytes font)
{
	if (font.length > UINT_MAX)
		return STATUS_LIBRARY;
	hb_blob_t *blob = hb_blob_create(font.data, (unsigned)font.length, HB_MEMORY_MODE_READONLY,
	                                 NULL, NULL);
	hb_face_t *table = hb_face_create(blob, 0);
	face->shaper = hb_font_create(table);
	hb_font_set_scale(face->shaper, face->upem, face->upem);
	hb_face_destroy(table);
	hb_blob_destroy(blob);
	return STATUS_OK;
}

static hb_glyph_extents_t extents_of(const struct face *face, hb_codepoint_t sign)
{
	hb_glyph_extents_t extents = {0};
	hb_codepoint_t glyph;
	if (hb_font_get_nominal_glyph(face->shaper, sign, &glyph))
		hb_font_get_glyph_extents(face->shaper, glyph, &extents);
	return extents;
}

static enum status measure_face(struct face *face)
{
	hb_glyph_extents_t capital = extents_of(face, 'H');
	hb_glyph_extents_t low = extents_of(face, 'g');
	face->cap = capital.y_bearing;
	face->descent = -(low.y_bearing + low.height);
	return face->cap > 0 && face->descent > 0 ? STATUS_OK : STATUS_LIBRARY;
}

enum status face_open(struct face *face, struct bytes font)
{
	*face = (struct face){0};
	enum status status = open_outline(face, font);
	if (status)
		return status;
	status = open_drawer(face);
	if (status)
		return status;
	status = open_shaper(face, font);
	if (!status)
		status = measure_face(face);
	if (status)
		face_close(face);
	return status;
}

void face_close(struct face *face)
{
	if (face->shaper)
		hb_font_destroy(face->shaper);
	cairo_font_face_destroy(face->drawer);
	*face = (struct face){0};
}

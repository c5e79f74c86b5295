/* measure.h - text shaped and measured with the very font that draws it.
 * Units: mm on paper. A text's size is the height of its capitals (ISO 3098), found in
 * the font itself. Widths come from the font's own integer units, so they are the same
 * on every machine; nothing is hinted or rounded to pixels.
 * Owns: an engine owns its faces and a cache of shaped runs; runs live as long as it does.
 * Fails: a text with a sign the font has not is reported, never drawn as a box. */
#ifndef TEXT_MEASURE_H
#define TEXT_MEASURE_H
#include <stdbool.h>

#include "base/arena.h"
#include "base/check.h"
#include "base/status.h"
#include "base/strbuf.h"

enum text_weight { TEXT_REGULAR, TEXT_BOLD, TEXT_WEIGHT_COUNT };

struct text_engine; /* one a job; nothing global */

/* `fonts[weight]`: the bytes of each font file, borrowed for the engine's life.
 * STATUS_LIBRARY where they are no font. The engine is released with the arena. */
CHECK_USED enum status text_engine_new(struct arena *, const struct bytes fonts[TEXT_WEIGHT_COUNT],
                                       struct text_engine **out_engine);
/* The same from the fonts embedded in the program. */
CHECK_USED enum status text_engine_embedded(struct arena *, struct text_engine **out_engine);

/* One glyph of a run: `x` is its pen position in font units from the run's start,
 * `first`/`length` the bytes of the text it stands for (length 0: part of the former). */
struct text_glyph {
	unsigned index;
	int x, y;
	unsigned first, length;
};

/* A shaped line of text, free of size: everything in font units. */
struct text_run {
	const char *text;
	enum text_weight weight;
	const struct text_glyph *glyphs;
	size_t glyph_count;
	int advance;     /* of the whole line */
	int top, bottom; /* of its ink over the baseline; bottom is negative under it */
	int left, right; /* of its ink from the start */
	size_t missing;  /* signs the font has not */
};

/* Shapes one line (no line breaks in `text`), or finds it in the cache. */
const struct text_run *text_shape(struct text_engine *, enum text_weight, const char *text);

/* mm per font unit at a capital height. */
double text_scale(const struct text_engine *, enum text_weight, double cap);
/* Font size (em) per capital height. */
double text_em(const struct text_engine *, enum text_weight);
/* Advance width of `text` at a capital height. */
double text_width(struct text_engine *, enum text_weight, double cap, const char *text);
/* Depth of the lowest descender under the baseline; for boxes that must hold any text. */
double text_descent(const struct text_engine *, enum text_weight, double cap);
/* Baseline to baseline: 1.7 capital heights, between ISO 3098's 1.5 and 1.9. */
double text_pitch(double cap);

/* The signs seen so far that the font has not, as UTF-8 with blanks between; NULL when
 * all were found. Ask before an output is published. */
const char *text_missing(const struct text_engine *);

/* Breaks `text` at blanks (and at line feeds) into lines of at most `width`; a single longer
 * word breaks between its signs, a line has one at least. Lines live in the arena. */
struct text_lines {
	const char **lines;
	size_t count;
};
struct text_lines text_wrap(struct text_engine *, struct arena *, enum text_weight, double cap,
                            double width, const char *text);

/* Appends the outline of a glyph as SVG path data in font units, y down. */
void text_outline_svg(struct text_engine *, enum text_weight, unsigned glyph, struct strbuf *);

#endif

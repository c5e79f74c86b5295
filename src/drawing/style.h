/* style.h - how every role looks: data of styles/NAME.style.
 * Units: mm of paper. Owns: the style lives in the arena it was read into.
 * Fails: each fault of a file is reported with its line, all in one run; a role that
 * neither the file nor the style it is `like` names is an error, so a style is complete.
 *
 *   like = paper                          # optional: start from an embedded style
 *   [colours]  spot = #b3261e
 *   [pens]     strip = 0.35 spot dash 12 3    # width; dashes in widths; round; core 0.5
 *   [areas]    hold = lines 45 pitch 2.0 width 0.25 spot     # and: fill NAME, gap, dash
 *   [texts]    dimension = 3.5 regular ink */
#ifndef DRAWING_STYLE_H
#define DRAWING_STYLE_H
#include <stdbool.h>
#include <stdint.h>

#include "base/diag.h"
#include "base/status.h"
#include "base/strbuf.h"
#include "drawing/pen.h"
#include "text/measure.h"

struct colour {
	uint8_t red, green, blue;
};

enum { STYLE_DASHES = 8 };

struct pen_style {
	double width;
	double dash[STYLE_DASHES]; /* mm: stroke, gap, ... */
	int dash_count;            /* 0: unbroken */
	bool is_round;             /* round ends and bends */
	double core;               /* > 0: a white line of this width inside (double line) */
	struct colour colour;
};

enum hatch_kind {
	HATCH_NONE,
	HATCH_LINES,  /* parallel at `angle` */
	HATCH_CROSS,  /* both at `angle` and square to it */
	HATCH_DASHES, /* parallel, broken, every other row stepped by half */
	HATCH_DOTS,   /* on a stepped grid */
	HATCH_WAVES,
	HATCH_PAIRS, /* two lines, a wider gap, two lines */
	HATCH_KIND_COUNT
};

struct area_style {
	bool has_fill;
	struct colour fill;
	enum hatch_kind hatch;
	double width;     /* of the hatch lines; diameter of dots */
	double pitch;     /* centre to centre of rows */
	int angle_deg;    /* anticlockwise from the sheet's right; multiple of 15 */
	double dash, gap; /* HATCH_DASHES; gap between two lines of a pair in HATCH_PAIRS */
	struct colour colour;
};

struct text_style {
	double cap;
	enum text_weight weight;
	struct colour colour;
};

struct style {
	const char *name;
	struct colour paper;
	struct pen_style pens[PEN_COUNT];
	struct area_style areas[AREA_COUNT];
	struct text_style texts[TEXT_ROLE_COUNT];
};

/* Reads the text of a style file; `diags->file` names it in messages. */
CHECK_USED enum status style_parse(struct arena *, struct bytes text, const char *name,
                                   struct diag_list *, struct style *out_style);
/* A style by the name it is embedded under (`paper`); STATUS_INPUT with the list of names
 * in `diags`, on the `line` that asks for it, where there is none. */
CHECK_USED enum status style_embedded(struct arena *, const char *name, int line,
                                      struct diag_list *, struct style *out_style);

#endif

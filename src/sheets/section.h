/* section.h - a cut through the floor at a joint, true to scale, and what its parts are called.
 * Units: floor mm; x across the joint, y up from the surface of the slab. Owns: the draft's
 * arena. What lies between two spans is left out and a break drawn there; names stand beside
 * the section, the highest first. */
#ifndef SHEETS_SECTION_H
#define SHEETS_SECTION_H
#include "base/array.h"
#include "geometry/region.h"
#include "sheets/sheet.h"

struct section_span {
	double from, to;
};

struct section_part {
	enum area area;
	struct box box;
	bool is_round; /* a rod, pressed into its joint */
};

struct section_call {
	const char *text;
	struct point at; /* what it names */
};

/* A dimension line; a call on it says what it measures. */
struct section_measure {
	double from, to, y;
};

struct section {
	const struct draft *draft;
	const char *title;
	const char *element; /* the joint it is drawn from */
	const char *joints;  /* tags of all that are built so */
	struct section_span spans[2];
	size_t span_count;
	double depth, height;                /* drawn below and above the surface of the slab */
	ARRAY_OF(struct section_part) parts; /* from the bottom of the drawing to its top */
	ARRAY_OF(struct line) cracks;
	ARRAY_OF(struct section_measure) measures;
	ARRAY_OF(struct section_call) calls;
};

/* Parts outside the spans are cut off; one of no size is left out. */
void section_part(struct section *, enum area, double x0, double y0, double x1, double y1);
/* A round part, a wire. */
void section_dot(struct section *, enum area, double x0, double y0, double x1, double y1);
void section_rod(struct section *, double x0, double y0, double x1, double y1);
/* A crack down from the slab's surface at `x`; gives a point of it to name. */
struct point section_crack(struct section *, double x);
void section_measure(struct section *, double from, double to, double y);
void section_call(struct section *, double x, double y, const char *text);

/* Room on paper that it needs at a scale, names and title too. */
struct paper_point section_size(const struct section *, struct list *, double scale);
void section_draw(struct sheet *, const struct section *, double scale, struct paper_point at);

#endif

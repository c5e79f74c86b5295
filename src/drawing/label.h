/* label.h - labels asked for, and the solver that finds each its place on the sheet.
 * Units: paper mm. Source: docs/sources.md R-D14.
 * A request says what it names (a point, or a stretch of line) and where it may stand; the
 * solver knows every fixed mark of the list, tries all candidates, and takes a leader where
 * none is free near by.
 * Invariants: no two texts of a sheet overlap, ever; text is level or upright; the result
 * depends on the requests alone (total order: priority, then order of asking). */
#ifndef DRAWING_LABEL_H
#define DRAWING_LABEL_H
#include <stdbool.h>
#include <stddef.h>

#include "drawing/paper.h"
#include "drawing/pen.h"

enum label_frame {
	LABEL_PLAIN,
	LABEL_BOX,
	LABEL_ROUND,   /* box with half-round ends */
	LABEL_HEXAGON, /* box with pointed ends */
};

/* Where the text may stand beside what it names. */
enum label_where {
	LABEL_AROUND, /* the eight places round the point `a`; a leader may end elsewhere between
	                 b and the point as far on the other side of a */
	LABEL_ALONG,  /* beside the line a-b, near its middle first */
	LABEL_IN,     /* inside `room`, centre first (names of rooms, areas) */
	LABEL_FIXED,  /* the given `places` only, best first */
};

struct label_place {
	struct paper_point at; /* middle of the text's box */
	bool is_upright;
	double cost;     /* added to the solver's own, about mm of wandering */
	bool has_leader; /* draw a leader from the text to `a` */
};

struct label {
	const char *const *lines; /* copied when asked for */
	size_t line_count;
	enum text_role role;
	double cap; /* 0: the role's */
	enum layer layer;
	const char *element;
	const char *link; /* PDF: leads to this sheet, anchor or element; NULL: nowhere */
	enum label_frame frame;
	enum label_where where;
	struct paper_point a, b;          /* what is named: point a, or line a-b */
	struct paper_box room;            /* LABEL_IN */
	const struct label_place *places; /* LABEL_FIXED; copied */
	size_t place_count;
	double gap;     /* between mark and text; 0: half a capital height */
	int priority;   /* higher is placed sooner */
	bool can_lead;  /* may stand away, with a leader to a (or the middle of a-b) */
	double reach;   /* longest leader; 0: 90 mm */
	bool is_dotted; /* the leader ends in a dot (on an area), not an arrow */
	bool is_clear;  /* takes away hatch and joints under it (white box) */
};

struct label_report {
	size_t placed, led, unplaced;
	size_t small; /* of the placed ones those in the list's small height */
	size_t tags;  /* of the placed ones those that may have a leader */
	size_t badly; /* of the tags those that cover, cross or wander much */
	const struct label *const *missing; /* the unplaced ones */
};

#endif

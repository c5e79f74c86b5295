/* list.h - the drawing list of one sheet: what is drawn, before anything is drawn.
 * Units: paper mm (paper.h; floor geometry comes through view.h). Owns: everything added
 * is copied to the list's arena; element ids and link targets too.
 * Order: by layer, within a layer by adding; labels (label.h) are added as requests and
 * turned into ops by list_finish (finish.h). A finished list is const and can be replayed
 * to any canvas (canvas.h) any number of times.
 * One op holds many lines: draw a whole course or all joints of a panel with one call. */
#ifndef DRAWING_LIST_H
#define DRAWING_LIST_H
#include "drawing/label.h"
#include "drawing/paper.h"
#include "drawing/pen.h"
#include "drawing/style.h"
#include "text/measure.h"

enum op_kind {
	OP_STROKE, /* path with role.pen */
	OP_FILL,   /* path filled (even-odd) with the fill colour of role.area */
	OP_HATCH,  /* path stroked with the hatch line of role.area */
	OP_TEXT,
	OP_LINK,   /* `box` leads to the sheet, anchor or element `text` */
	OP_ANCHOR, /* the point `at` can be linked to as `text` */
};

struct op {
	enum op_kind kind;
	enum layer layer;
	const char *element; /* plan or derived id; NULL: belongs to the sheet */
	union {
		enum pen pen;
		enum area area;
		enum text_role text;
	} role;
	struct paper_path path;     /* STROKE, FILL, HATCH */
	struct paper_box box;       /* extents with line width; LINK: where it can be pressed */
	const struct text_run *run; /* TEXT */
	const char *text;           /* TEXT: its words; LINK, ANCHOR: the target's name */
	double cap;                 /* TEXT */
	struct paper_point at;      /* TEXT: start of the baseline; ANCHOR */
	bool is_upright;            /* TEXT: reads upwards, from the right edge of the sheet */
};

/* What is shown of a view that goes on past its sheet, and what of that is named. */
struct list_clip {
	struct paper_box shown, named;
};

struct list {
	struct arena *arena;
	const struct style *style;
	struct text_engine *text;
	double width, height; /* of the trimmed sheet */
	double small_cap; /* of labels that find no room in their own height; 0: none is smaller */
	const struct list_clip *clip;  /* what is added is cut to it; NULL: to nothing */
	ARRAY_OF(struct op) ops;       /* after list_finish: by layer */
	ARRAY_OF(struct label) labels; /* requests not yet placed */
	bool is_finished;
	/* Where clouds will run, when all labels are placed: labels keep off. */
	struct paper_path clouds;
};

struct list *list_new(struct arena *, const struct style *, struct text_engine *, double width,
                      double height);

void list_stroke(struct list *, enum layer, enum pen, const char *element, struct paper_path);
/* Fills and hatches as the style has it for `role`. */
void list_area(struct list *, enum layer, enum area, const char *element, struct paper_path);

enum text_align { ALIGN_START, ALIGN_MIDDLE, ALIGN_END };
/* One line of text with its baseline at `at`, in the role's height and weight; gives the
 * box of the text. Fixed: it is where it is, and labels keep off it. */
struct paper_box list_text(struct list *, enum layer, enum text_role, const char *element,
                           struct paper_point at, enum text_align, const char *text);
/* The same at another capital height, and upright (reading upwards) where asked. */
struct text_place {
	double cap; /* 0: the role's */
	enum text_align align;
	bool is_upright;
};
struct paper_box list_text_at(struct list *, enum layer, enum text_role, const char *element,
                              struct paper_point at, struct text_place, const char *text);
/* Wraps to `width`, first baseline one capital height under `at`; gives the y under the
 * last line (its baseline plus the role's descent). */
double list_paragraph(struct list *, enum layer, enum text_role, struct paper_point at,
                      double width, const char *text);
double list_text_width(struct list *, enum text_role, const char *text);

void list_link(struct list *, struct paper_box, const char *target);
void list_anchor(struct list *, struct paper_point, const char *name);

/* From now on, until the next call, what is added is cut (NULL: to nothing): lines and areas
 * at the edge of what is shown; a text that is not wholly inside is left out, and a label
 * unless what it names is where things are named. */
void list_set_clip(struct list *, const struct list_clip *);
/* False: the clip leaves out what is there. */
bool list_shows(const struct list *, struct paper_point);
/* The part of a-b that is named here; false: none of it. */
bool list_clip_named(const struct list *, struct paper_point *a, struct paper_point *b);

/* Asks for a label; placed by list_finish. */
void list_label(struct list *, const struct label *);

struct paper_box list_extents(const struct list *); /* of all ops */
/* Strokes, fills, hatches and texts in the list: the work a canvas will have. */
struct list_counters {
	size_t strokes, fills, hatches, texts, segments;
};
struct list_counters list_count(const struct list *);

#endif

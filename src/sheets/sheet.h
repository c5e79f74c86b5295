/* sheet.h - one sheet: its frame, the places where things stand on it, its drawing list.
 * Units: paper mm. Owns: everything lives in the draft's arena.
 * Layout, own design after ISO 5457 and ISO 9431 (docs/sources.md S03, S04, S14): the
 * drawing at the left, a column of text at the right that ends in revisions and title
 * block, and under the drawing a band with scale bar, legend and the reviewer's box. */
#ifndef SHEETS_SHEET_H
#define SHEETS_SHEET_H
#include "drawing/list.h"
#include "drawing/view.h"
#include "sheets/draft.h"

/* What a legend can explain; a sheet lists what it used. */
enum legend_mark {
	LEGEND_FIRST_TILE,
	LEGEND_CONTROL,
	LEGEND_ORIGIN,
	LEGEND_OPEN_EDGE,
	LEGEND_CUT_TILE,
	LEGEND_STRIP,
	LEGEND_STRIP_PENDING,
	LEGEND_SOFT_JOINT,
	LEGEND_SOFT_PENDING,
	LEGEND_CARRIED_JOINT,
	LEGEND_FIELD_JOINT,
	LEGEND_PERIMETER_SEALED,
	LEGEND_COVER,
	LEGEND_CRACK,
	LEGEND_CRACK_UNDER,
	LEGEND_CRACK_FILL,
	LEGEND_CRACK_STEP,
	LEGEND_CRACK_PENDING,
	LEGEND_SLAB_JOINT,
	LEGEND_HOLD,
	LEGEND_HOLD_LINE,
	LEGEND_OBSTACLE,
	LEGEND_NOT_TILED,
	LEGEND_READING,
	LEGEND_CHANGE,
	LEGEND_COUNT
};

struct notes;
struct table;
struct details;
struct margin;
struct parts;

/* A sheet in the list of the set's sheets: what it is called, its number, what the list says. */
struct contents_row {
	const char *name, *number, *text;
};

struct sheet {
	const struct draft *draft;
	struct list *list;
	const char *name;         /* install-bay */
	const char *title;        /* Install: Stall bay */
	const char *subject;      /* what a screen reader says of it */
	struct paper_box frame;   /* the drawing space */
	struct paper_box drawing; /* where the view and its dimensions go */
	struct paper_box column;  /* text, from the top; what is left of it */
	struct paper_box foot;    /* more text, under the drawing; as a rule empty */
	struct paper_box band;
	double block; /* where the title block begins, under the column */
	size_t number, count;
	double scale;              /* of its main view; printed */
	struct view view;          /* the same; scale 0: there is none */
	const struct parts *parts; /* of the view this sheet shows one of; NULL: all of it */
	size_t part;
	const struct margin *margin;   /* of its view, which may be divided; NULL: no view */
	double spare_wide, spare_high; /* of the drawing, at its scale */
	bool is_squeezed;              /* its notes did not fit in their full height */
	bool is_cramped;               /* a narrow column of text would give it a larger scale */
	bool is_section;               /* cuts through the floor: no north */
	bool is_index;                 /* a key plan beside north, and no scale */
	bool is_open;                  /* no column of text: the drawing reaches over the block */
	const char *missing;           /* labels that found no room on the drawing; NULL: none */
	struct notes *rest;            /* notes that go on on a further sheet; NULL: none */
	struct table *more;            /* a table that goes on on a further sheet; NULL: none */
	struct details *details;       /* sections that go on on a further sheet; NULL: none */
	const struct contents_row *contents; /* of each sheet of the set */
	size_t contents_count;
	unsigned long used;   /* set of legend_mark; on the first sheet those of the whole set */
	unsigned long untold; /* of them, those that its legend leaves to the first sheet */
};

/* Whether what a sheet shows found room on its paper. */
enum sheet_fit { SHEET_FITS, SHEET_TOO_LARGE };

struct sheet *sheet_new(const struct draft *, const char *name, const char *title,
                        const char *subject);
void sheet_use(struct sheet *, enum legend_mark);
/* True where its legend tells of the mark. */
bool sheet_uses(const struct sheet *, enum legend_mark);
/* The grid field that holds a point of the sheet: C4. */
const char *sheet_zone(const struct draft *, struct paper_point);
/* Frame, grid references and the rule beside the column. */
void sheet_draw_frame(struct sheet *);
/* Of a sheet without a view: what stands in the band stands at the end of the column, and the
 * drawing's place is as high as the sheet. */
void sheet_release_band(struct sheet *);
/* Of such a sheet, before its frame: the drawing takes the column's place too, down to the band. */
void sheet_open(struct sheet *);

#endif

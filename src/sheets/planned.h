/* planned.h - one sheet of the set: tried as the style has it, in parts where its view is too
 * large or its labels crowd, and with smaller texts where nothing else helps.
 * Units: paper mm. Owns: the draft's arena. */
#ifndef SHEETS_PLANNED_H
#define SHEETS_PLANNED_H
#include "sheets/sheet.h"

/* One sort of sheet; those of a room are all of one sort. */
struct sheet_kind {
	const char *name;
	const char *title;   /* key of its title */
	const char *subject; /* key of the sentence that describes it */
	bool is_per_room;
	bool explains_all;                      /* its legend has the marks of the whole set */
	enum sheet_fit (*draw)(struct sheet *); /* NULL: not built yet, or of a room */
};

/* What a sheet tells of its set, as far as it is known when the sheet is drawn. */
struct set_facts {
	const struct draft *draft;
	const char *const *contents; /* name and title of each sheet */
	size_t contents_count;
	size_t drawn, count; /* sheets before this one, and all of them */
	unsigned long used;  /* marks of all sheets */
};

struct division;

/* A sheet to be drawn. */
struct planned {
	const struct sheet_kind *kind;
	const struct site_room *room; /* NULL: of the whole floor */
	const char *name;
	const struct division *division; /* of its view; NULL: not decided yet */
};

struct planned_sheets {
	struct sheet **items; /* one, or one for each part */
	size_t count;
	bool is_too_large; /* it fits in no way */
};

/* An empty sheet with its frame and numbers. */
struct sheet *planned_begin(const struct set_facts *, const struct draft *, const char *name,
                            const char *title, const char *subject);
const char *planned_title(const struct draft *, const struct planned *);
/* How many parts its view was divided into; 0: it was not. */
size_t planned_part_count(const struct planned *);
/* Draws all its parts; how it is divided is decided the first time. */
struct planned_sheets planned_draw(const struct set_facts *, struct planned *);

#endif

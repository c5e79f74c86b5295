/* planned.h - one sheet of the set: tried as the style has it, in parts where its view is too
 * large or its labels crowd, and with smaller texts where nothing else helps.
 * Units: paper mm. Owns: the draft's arena. */
#ifndef SHEETS_PLANNED_H
#define SHEETS_PLANNED_H
#include "base/array.h"
#include "sheets/sheet.h"

/* No set has more sheets. Source: limits of the floor description. */
enum { SHEETS_MOST = 400 };

/* One sort of sheet; those of a room are all of one sort. */
struct sheet_kind {
	const char *name;
	const char *title;   /* key of its title */
	const char *subject; /* key of the sentence that describes it */
	bool is_per_room;
	bool explains_all;                      /* its legend has the marks of the whole set */
	enum sheet_fit (*draw)(struct sheet *); /* NULL: of a room */
	unsigned shows;                         /* what of a change is seen on it: THING_BITs */
};

/* What a sheet tells of its set beside its number. */
struct set_facts {
	const struct draft *draft;
	const struct contents_row *contents;
	size_t contents_count;
	unsigned long used; /* marks of all other sheets */
	size_t left;        /* how many more sheets the set may have */
};

/* A sheet to be drawn. */
struct planned {
	const struct sheet_kind *kind;
	const struct site_room *room; /* NULL: of the whole floor */
	const char *name;
	ARRAY_OF(struct sheet *) sheets; /* drawn of it, with those that go on */
	size_t part_count;               /* how many of them show a part of its view */
};

struct planned_sheets {
	struct sheet **items; /* one, or one for each part */
	size_t count;
	bool is_too_large; /* it fits in no way */
};

/* An empty sheet with its frame. */
struct sheet *planned_begin(const struct draft *, const char *name, const char *title,
                            const char *subject);
/* The same for a table alone, which then is set larger and takes the column's place too, if
 * all of it fits so. */
struct sheet *planned_table(const struct draft *, const char *name, const char *title,
                            const char *subject, struct table *);
const char *planned_title(const struct draft *, const struct planned *);
/* True where something that has changed is to be seen on a sheet of it; on the first of several
 * parts, where the notes of all are, always. */
bool planned_is_changed(const struct draft *, const struct planned *, const struct sheet *);
/* Draws all its parts, but their title blocks. */
struct planned_sheets planned_draw(const struct set_facts *, const struct planned *);

#endif

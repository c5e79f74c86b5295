/* notes.h - the text beside a drawing: gathered first, then set in the largest heights that
 * fit the sheet's column; what fits in none goes on on a further sheet.
 * Units: paper mm. Owns: the draft's arena.
 */
#ifndef SHEETS_NOTES_H
#define SHEETS_NOTES_H
#include "sheets/sheet.h"

/* Findings are a schedule: where the sheet is short of room they alone are set smaller. */
enum note_group { NOTE_WORK, NOTE_CORNER, NOTE_MATERIAL, NOTE_FINDING, NOTE_CAUTION };
enum note_kind { NOTE_HEADING, NOTE_ITEM, NOTE_HALF, NOTE_WARNING, NOTE_SWATCH, NOTE_ANSWER };

struct note {
	enum note_kind kind;
	enum note_group group;
	const char *mark; /* hangs at the left of an item: a number, a dash, the id of an element */
	const char *text;
	const char *link; /* of NOTE_ITEM: the sheet or element that it leads to; NULL: nowhere */
	enum legend_mark swatch; /* of NOTE_SWATCH */
};

struct notes {
	struct sheet *sheet;
	ARRAY_OF(struct note) list;
	size_t next; /* the first that is not set yet */
};

void notes_heading(struct notes *, enum note_group, const char *key);
/* A heading of its own words. */
void notes_title(struct notes *, enum note_group, const char *text);
void notes_item(struct notes *, enum note_group, const char *mark, const char *text);
/* The item added last leads to that sheet or element. */
void notes_lead(struct notes *, const char *target);
/* A short item of one line: two of them share a row. */
void notes_half(struct notes *, enum note_group, const char *mark, const char *text);
/* Lines to answer on: what, by whom, when. */
void notes_answer(struct notes *);
/* A box with a heavy border: what must not be missed. */
void notes_warning(struct notes *, const char *text);
/* What the drawing had no room for, where there is such a thing. */
void notes_missing(struct notes *);
/* False: the sheet shows a further part, the first part's notes hold for it too, and that is
 * what it says. */
bool notes_of_parts(struct notes *);
/* The legend, where the sheet's band has no room for it; and then without what the drawing says
 * by itself: the first sheet, whose legend is whole, has that too. */
void notes_legend(struct notes *);
void notes_legend_whole(struct notes *);
/* Sets what fits in sheet->column; what is left becomes sheet->rest. */
void notes_draw(struct notes *);
/* Sets what is left of another sheet's notes in what is left of this one's column; true: all. */
bool notes_carry(struct sheet *, struct notes *rest);
/* Sets what is left of another sheet's notes all over this one; false: not one of them fits. */
bool notes_continue(struct sheet *, struct notes *rest);

/* For a note that is one of several without order. */
#define NOTE_DASH "\xe2\x80\x93"

#endif

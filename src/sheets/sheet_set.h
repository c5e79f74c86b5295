/* sheet_set.h - all sheets of one run: which, in what order, numbered, ready to be replayed.
 * Owns: everything lives in the draft's arena.
 * Fails: a sheet that does not fit its paper, words that the font lacks: an error each in
 * `diags`, and STATUS_INPUT. Nothing is written. */
#ifndef SHEETS_SHEET_SET_H
#define SHEETS_SHEET_SET_H
#include "drawing/canvas.h"
#include "sheets/sheet.h"

struct sheet_set {
	struct document document;
	struct page *pages;
	size_t page_count;
};

/* `wanted`: names of sheets, as --sheet has them; count 0: all. `on_sheet` is told the name
 * of each sheet before it is drawn; NULL: nobody is. */
CHECK_USED enum status sheet_set_draw(const struct draft *, const char *const *wanted,
                                      size_t wanted_count, void (*on_sheet)(const char *name),
                                      struct diag_list *, struct sheet_set *out_set);
/* Checks a name of --sheet; reports an unknown one, and where nothing is compared the sheet of
 * changes. */
CHECK_USED enum status sheet_set_check(const struct site *, bool compares, const char *name,
                                       struct diag_list *);

#endif

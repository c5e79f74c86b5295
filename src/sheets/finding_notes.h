/* finding_notes.h - what the rules say, as notes on the sheet that shows what it is about.
 * Each finding stands on one sheet, what is asked on `read-first` as well. */
#ifndef SHEETS_FINDING_NOTES_H
#define SHEETS_FINDING_NOTES_H
#include "sheets/notes.h"

/* Of the joints that are built, and all others. */
enum findings_of { FINDINGS_OF_SLAB, FINDINGS_OF_JOINTS };

/* Under their heading; where there are none, the sheet of the slab says so. */
void finding_notes_add(struct notes *, enum findings_of);

#endif

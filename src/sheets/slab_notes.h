/* slab_notes.h - the text beside the slab: slabs and their age, findings, cautions. */
#ifndef SHEETS_SLAB_NOTES_H
#define SHEETS_SLAB_NOTES_H
#include "sheets/sheet.h"

/* False: they do not fit the sheet. */
bool slab_notes(struct sheet *);

#endif

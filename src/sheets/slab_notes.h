/* slab_notes.h - the text beside the slab: slabs and their age, findings, cautions. */
#ifndef SHEETS_SLAB_NOTES_H
#define SHEETS_SLAB_NOTES_H
#include "sheets/sheet.h"

void slab_notes(struct sheet *);

#endif

/* install_notes.h - the text beside the crew's drawing: order of work, materials, cautions. */
#ifndef SHEETS_INSTALL_NOTES_H
#define SHEETS_INSTALL_NOTES_H
#include "sheets/sheet.h"

/* `lay` is NULL for a room that is not tiled. */
void install_notes(struct sheet *, const struct site_room *, const struct placed_lay *lay);

#endif

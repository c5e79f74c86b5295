/* install_notes.h - the text beside the crew's drawing: order of work, materials, cautions. */
#ifndef SHEETS_INSTALL_NOTES_H
#define SHEETS_INSTALL_NOTES_H
#include "sheets/notes.h"

/* `lay` is NULL for a room that is not tiled. */
void install_notes(struct sheet *, const struct site_room *, const struct placed_lay *lay);

/* The order of work in a room, numbered from 1. */
void install_steps(struct notes *, const struct site_room *, const struct placed_lay *,
                   enum note_group);

#endif

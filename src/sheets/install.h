/* install.h - the crew's sheet of one room: with it alone they can lay the room. */
#ifndef SHEETS_INSTALL_H
#define SHEETS_INSTALL_H
#include "sheets/sheet.h"

enum sheet_fit install_draw(struct sheet *, const struct site_room *);

#endif
